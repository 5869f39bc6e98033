"""The page of a measuring tool: what it is worth, its jobs, its checks."""

import re

import pytest
from django.test import Client
from playwright.sync_api import Page
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import MeasuringTool, ToolCheck
from shadewright.workflows.tools import tool_now
from shadewright.workflows.usual_tools import usual_tools
from tests.browser import axe, goes_sideways
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines")


@pytest.fixture
def scale() -> int:
    return MeasuringTool.objects.create(
        name="Bench scale", kind="balance", size=2000, readability=0.1
    ).pk


@pytest.fixture
def cylinder() -> int:
    return MeasuringTool.objects.create(
        name="Small cylinder", kind="cylinder", size=50, tool_class="B"
    ).pk


def plain(page: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", page).replace("\u00a0", " ").split())


def shown(client: Client, address: str) -> str:
    return plain(client.get(address).content.decode())


def sent(client: Client, address: str, **fields: str) -> str:
    answer = client.post(address, fields, follow=True)
    return plain(answer.content.decode())


def test_a_cylinder_says_what_it_is_worth(client: Client, cylinder: int) -> None:
    page = shown(client, f"/tools/{cylinder}/")
    assert "50 ml ± 1 ml, 2 %" in page
    assert "5 ml ± 1 ml, 20 %" in page
    assert "It is within 2 % from 50 ml up." in page
    assert "By ISO 4788, class B (from memory), for new ware at 20 °C." in page
    assert (
        "Not for powder: it measures a volume, as a spoon does. A spoon holds" in page
    )


def test_an_unchecked_scale_says_so(client: Client, scale: int) -> None:
    page = shown(client, f"/tools/{scale}/")
    assert "it is taken to be off by two steps, 0.2 g" in page
    assert "1 g ± 0.22 g, 22 %" in page
    assert "None yet." in page


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"kind": "balance"}, "Write down its smallest step"),
        ({"kind": "jug"}, "Write down the largest that it measures"),
        ({"kind": "thermometer"}, "Nothing is reckoned with its readings yet."),
        ({"kind": "jug", "size": 500}, "It is nowhere within 2 %."),
        ({"kind": "cylinder", "size": 400}, "row of 500 ml"),
        ({"kind": "flask", "size": 100, "own_error": 0.1}, "By its own sheet"),
        (
            {"kind": "balance", "readability": 1, "own_error": 0.5},
            "By its own sheet, 0.5 g, beside the rounding",
        ),
    ],
)
def test_what_is_known_decides_what_is_said(
    client: Client, fields: dict[str, object], words: str
) -> None:
    tool = MeasuringTool.objects.create(name="It", **fields)
    assert words in shown(client, f"/tools/{tool.pk}/")
    assert client.get("/tools/").status_code == 200


def test_a_check_weight_is_suggested_written_and_undone(
    client: Client, scale: int
) -> None:
    page = client.get(f"/tools/{scale}/").content.decode()
    assert 'name="nominal_g" value="100"' in page
    assert 'name="tolerance_g" value="0.05"' in page
    deed = "11111111-1111-4111-8111-111111111111"
    said = sent(
        client,
        f"/tools/{scale}/check/",
        deed=deed,
        nominal_g="100",
        tolerance_g="0,05",
        first_g="100,3",
        second_g="100.3",
        third_g="",
        note="after the move",
    )
    assert "Bench scale checked" in said
    assert "Shows 0.3 g too much at 100 g." in said
    assert "100.3 g, 100.3 g. after the move" in said
    assert "So it is taken to be off by up to 0.4 g there." in said
    assert "By your own checks below." in said
    assert tool_now(scale).is_checked
    sent(client, f"/undo/{deed}/")
    assert not tool_now(scale).is_checked


def test_weighed_water_is_written(client: Client, scale: int, cylinder: int) -> None:
    page = client.get(f"/tools/{cylinder}/").content.decode()
    assert f'<option value="{scale}" selected>Bench scale</option>' in page
    said = sent(
        client,
        f"/tools/{cylinder}/check/",
        deed="11111111-1111-4111-8111-111111111112",
        nominal_ml="50",
        temperature_c="20",
        scale_id=str(scale),
        first_g="49.5",
    )
    assert "The mark of 50 ml holds 49.64 ml." in said  # 49.5 g · 1.0029 ml/g
    assert "Bench scale: 49.5 g" in said


@pytest.mark.parametrize(
    ("fields", "sentence"),
    [
        ({"first_g": ""}, "First reading is missing."),
        ({"first_g": "10"}, "A reading must be near 100 g; got 10 g."),
        ({"third_g": "10"}, "A reading must be near 100 g; got 10 g."),
        ({"nominal_g": "3 kg"}, "Check weight must be above 0 g and at most 2000 g"),
        ({"tolerance_g": "-1"}, "It may be off by must be from 0"),
        ({"first_g": "heavy"}, "First reading is written as a weight"),
    ],
)
def test_a_check_that_cannot_be_stays_as_it_was_typed(
    client: Client, scale: int, fields: dict[str, str], sentence: str
) -> None:
    typed = {
        "deed": "11111111-1111-4111-8111-111111111113",
        "nominal_g": "100",
        "tolerance_g": "0.05",
        "first_g": "100",
        "note": HOSTILE,
    }
    answer = client.post(f"/tools/{scale}/check/", {**typed, **fields})
    assert answer.status_code == 422
    text = answer.content.decode()
    assert sentence in plain(text).replace("above 0 and", "above 0 g and")
    assert HOSTILE not in text
    assert not ToolCheck.objects.exists()


def test_jobs_are_given_and_taken_with_one_tap(
    client: Client, scale: int, cylinder: int
) -> None:
    for job in ("powder", "yarn", "dose"):
        sent(client, f"/tools/{scale}/use/{job}/")
    said = sent(client, f"/tools/{cylinder}/use/fill/")
    assert "Small cylinder is for stock from now on" in said
    usual = usual_tools()
    assert usual.powder_scale == usual.yarn_scale == usual.dose_tool
    assert usual.doses_by_weight
    assert "now Bench scale" in said
    listed = shown(client, "/tools/")
    assert "Bench scale powder yarn doses" in listed
    assert "Small cylinder stock" in listed
    sent(client, f"/tools/{scale}/leave/dose/")
    assert usual_tools().dose_tool is None
    assert client.post(f"/tools/{scale}/use/soup/").status_code == 404


def test_a_cylinder_weighs_no_powder(client: Client, cylinder: int) -> None:
    answer = client.post(f"/tools/{cylinder}/use/powder/")
    assert answer.status_code == 422
    assert "weigh powder on a scale" in plain(answer.content.decode())
    assert usual_tools().powder_scale is None


def test_the_list_says_what_each_is_worth(
    client: Client, scale: int, cylinder: int
) -> None:
    page = shown(client, "/tools/?sort=worth")
    assert f"{tool_now(scale).name} Scale 2000 g 0.1 g ± 0.22 g" in page
    assert (
        f"{tool_now(cylinder).name} Measuring cylinder 50 ml – ± 1 ml in 50 ml" in page
    )


def test_a_spoon_is_refused_with_its_reason(client: Client) -> None:
    page = shown(client, "/tools/new/")
    assert "Spoon Not here. A spoon holds a different weight of each dye" in page


def test_a_checked_tool_stays_what_it_is(client: Client, scale: int) -> None:
    typed = {"name": "Bench scale", "kind": "jug", "size": "2000"}
    ToolCheck.objects.create(
        tool_id=scale,
        deed="11111111-1111-4111-8111-111111111114",
        nominal=100.0,
        readings=[100.0],
    )
    answer = client.post(f"/tools/{scale}/edit/", typed)
    assert answer.status_code == 422
    assert "The kind stays" in plain(answer.content.decode())


def test_a_standard_written_in_full_still_counts(client: Client) -> None:
    tool = MeasuringTool.objects.create(
        name="Tall", kind="cylinder", size=500, standard="ASTM E1272"
    )
    page = client.get(f"/tools/{tool.pk}/edit/").content.decode()
    assert '<option value="ASTM" selected>' in page


@pytest.mark.parametrize(
    ("kind", "typed", "value", "words"),
    [
        ("balance", "0.5 kg", 500.0, "500 g"),
        ("syringe", "20", 20.0, "20 ml"),
        ("thermometer", "212 F", 100.0, "100 °C"),
    ],
)
def test_a_tool_measures_in_its_own_unit(
    client: Client, kind: str, typed: str, value: float, words: str
) -> None:
    tool = {"name": "One", "kind": kind, "size": typed}
    page = client.post("/tools/new/", tool, follow=True).content.decode()
    assert MeasuringTool.objects.get().size == pytest.approx(value)
    assert words in page.replace("\u00a0", " ")


def test_only_glassware_has_a_class(client: Client) -> None:
    answer = client.post(
        "/tools/new/", {"name": "Jug", "kind": "jug", "tool_class": "B"}
    )
    assert answer.status_code == 422
    assert "Only a cylinder, a flask or a pipette has a class" in (
        answer.content.decode()
    )


def test_it_reads_well(live_server: LiveServer, page: Page, scale: int) -> None:
    page.goto(f"{live_server.url}/tools/{scale}/")
    assert axe(page) == []
    assert goes_sideways(page) == 0
