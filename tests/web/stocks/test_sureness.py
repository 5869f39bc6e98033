"""Making a stock: its tools are chosen, and how sure it is stands beside it."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import MeasuringTool
from shadewright.workflows.making import start_making
from shadewright.workflows.makings import Making, making
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.usual_tools import set_usual_tools
from tests.web.benches import Bench, small_bench
from tests.web.pages_read import read
from tests.web.stocks.stepping import at, send, slate_begun, weighed

pytestmark = pytest.mark.django_db

NEW = "/stocks/new/"


@pytest.fixture
def bench() -> Bench:
    return small_bench()


@pytest.fixture
def scale() -> int:
    return MeasuringTool.objects.create(
        name="Small scale", kind="balance", readability=0.1, own_error=0.0
    ).pk


@pytest.fixture
def cylinder() -> int:
    return MeasuringTool.objects.create(
        name="Half-litre cylinder", kind="cylinder", size=500, tool_class="B"
    ).pk


def plan(client: Client, bench: Bench, **asked: str) -> str:
    return read(client.get(NEW, {"dye": str(bench.dye), **asked})).text


def test_without_a_tool_the_plan_says_what_is_not_known(
    client: Client, bench: Bench
) -> None:
    text = plan(client, bench)
    assert "How sure is not known: what the powder was weighed on; what it" in text
    assert "±" not in text


@pytest.mark.by_hand
def test_with_the_usual_tools_the_plan_says_how_sure_it_will_be(
    client: Client, bench: Bench, scale: int, cylinder: int
) -> None:
    """0.1/√6 of 5 g and 5/√3 of 500 ml: 0.82 % and 0.58 %, twice their root 2 %."""
    set_usual_tools(powder_scale=scale, fill_tool=cylinder)
    text = plan(client, bench)
    assert "1 % ± 0.019 tight" in text
    assert "Mostly: reading the scale, powder." in text
    assert "not known" not in text
    chosen = plan(client, bench, scale="", ware="")
    assert "How sure is not known" in chosen


def test_a_coarse_weighing_is_met_with_a_larger_batch(
    client: Client, bench: Bench, scale: int
) -> None:
    asked = {"scale": str(scale), "volume_ml": "100"}
    text = plan(client, bench, **asked)
    assert "This weighing alone: ± 8 %. Make 200 ml instead: ± 4 %" in text
    assert "Left out: what it was made up in." in text
    assert "instead" not in plan(client, bench, **asked | {"volume_ml": "8000"})


def test_what_was_used_last_is_offered_next(
    client: Client, bench: Bench, scale: int, cylinder: int
) -> None:
    made = {
        "act": "made",
        "dye": str(bench.dye),
        "jar": str(bench.jar),
        "strength_percent": "1",
        "volume_ml": "500",
        "powder_g": "5.2",
        "final_ml": "500",
        "scale": str(scale),
        "ware": str(cylinder),
        "deed": str(uuid4()),
    }
    client.post(NEW, made)
    (bottle,) = shelf()
    assert bottle.u_strength_rel == pytest.approx(0.0097, abs=5e-5)
    page = read(client.get(NEW, {"dye": str(bench.other_dye)}))
    assert f'<option value="{scale}" selected>Small scale</option>' in page.source
    assert f'<option value="{cylinder}" selected>' in page.source


def test_the_tool_can_be_changed_at_the_step_and_the_label_knows(
    client: Client, bench: Bench, scale: int, cylinder: int
) -> None:
    begun = slate_begun(bench)
    live = read(client.get(at(begun), {"powder_g": "5.2", "scale": str(scale)}))
    assert "Left out" not in live.text  # the first step is not the weighing
    weighed(client, begun)
    send(client, begun, "weigh", powder_g="5.2", scale=str(scale))
    for step in ("paste", "dissolve", "look", "cool"):
        send(client, begun, step)
    typed = {"final_ml": "500", "ware": str(cylinder)}
    page = read(client.get(at(begun), typed))
    assert "The label will say 1.04 % ± 0.02 tight" in page.text
    send(client, begun, "make_up", is_cold="on", **typed)
    done = send(client, begun, "label")
    assert "1.04 % ± 0.02 tight" in done.text
    assert "What it is made of" in done.text


@pytest.mark.parametrize("tool", ["999999", "x", "²", "-1", "9" * 40])
def test_a_tool_that_is_none_is_refused_by_its_field(
    client: Client, bench: Bench, tool: str
) -> None:
    begun = slate_begun(bench)
    send(client, begun, "lay_out")
    refused = send(client, begun, "weigh", powder_g="5.2", scale=tool)
    assert refused.status == 422
    assert "Weighed on must be one of those offered" in refused.text
    assert read(client.get(at(begun), {"powder_g": "5.2", "scale": tool})).status == 200


def by_weight(bench: Bench, scale: int) -> Making:
    return start_making(
        dye_id=bench.dye,
        jar_id=bench.jar,
        volume_ml=500.0,
        strength_percent=1.0,
        stamp=stamp_now(by=None),
        scale_id=scale,
        ware_id=scale,
    )


@pytest.mark.by_hand
def test_by_weight_grams_are_asked_for_and_turned_into_millilitres(
    client: Client, bench: Bench, scale: int
) -> None:
    """500 × 0.9982 + 5.2 = 504.3 g; 524.3 g less 5.2 g over 0.9982 are 520 ml."""
    begun = by_weight(bench, scale)
    weighed(client, begun)
    for step in ("paste", "dissolve", "look", "cool"):
        send(client, begun, step)
    page = read(client.get(at(begun), {"filled_g": "524.3"}))
    assert "504.3 g" in page.text
    assert "Tared with the empty bottle, Small scale" in page.text
    assert "That is 520 ml: the label will say 1 %" in page.text
    assert "It is cold" not in page.text
    send(client, begun, "make_up", filled_g="524.3", water="rain")
    send(client, begun, "label")
    (bottle,) = shelf()
    assert bottle.volume_ml == pytest.approx(520.0, abs=0.1)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("", "What the scale really shows is missing"),
        ("2", "tared with the empty vessel"),
        ("-5", "above 0"),
        ("x", "a weight such as"),
    ],
)
def test_a_weight_that_cannot_be_is_refused_and_stays(
    client: Client, bench: Bench, scale: int, typed: str, says: str
) -> None:
    begun = by_weight(bench, scale)
    weighed(client, begun)
    for step in ("paste", "dissolve", "look", "cool"):
        send(client, begun, step)
    refused = send(client, begun, "make_up", filled_g=typed)
    assert refused.status == 422
    assert says in refused.text
    assert f'value="{typed}"' in refused.source or not typed


def test_the_plan_of_a_stock_by_weight_says_what_it_weighs(
    client: Client, bench: Bench, scale: int
) -> None:
    text = plan(client, bench, ware=str(scale))
    assert "to 504.1 g on the scale, which is 500 ml" in text


def test_a_tool_can_be_taken_back_at_its_step(
    client: Client, bench: Bench, scale: int
) -> None:
    begun = by_weight(bench, scale)
    send(client, begun, "lay_out")
    live = read(client.get(at(begun), {"powder_g": "5", "scale": ""}))
    assert "Left out: what the powder was weighed on." in live.text
    send(client, begun, "weigh", powder_g="5", scale="")
    spread = making(begun.id).spread
    assert spread is not None
    assert spread.lacks == ("what the powder was weighed on",)
