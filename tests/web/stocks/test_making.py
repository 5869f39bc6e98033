"""Making a stock, step by step: nothing typed is lost, nothing is written twice."""

from datetime import timedelta
from uuid import uuid4

import pypdfium2
import pytest
from django.test import Client

from shadewright.records.models import Dye, JarLine
from shadewright.workflows.jars import jar
from shadewright.workflows.making import go_to_step
from shadewright.workflows.makings import Making, making
from shadewright.workflows.shelf import shelf
from shadewright.workflows.stamps import today
from tests.web.benches import small_bench
from tests.web.pages_read import read
from tests.web.sample import HOSTILE
from tests.web.stocks.stepping import at, made_up, send, slate_begun, weighed

STEPS = ("lay_out", "weigh", "paste", "dissolve", "look", "cool", "make_up", "label")

pytestmark = pytest.mark.django_db


@pytest.fixture
def begun() -> Making:
    return slate_begun(small_bench())


def test_a_step_shows_its_title_its_caution_and_one_way_on(
    client: Client, begun: Making
) -> None:
    page = read(client.get(at(begun)))
    assert "Slate stock, 500 ml at 1 %" in page.text
    assert "Step 1 of 8" in page.text
    assert "Before the jar is opened" in page.text
    assert "N95/FFP2 or better" in page.text
    assert "All is laid out" in page.text
    assert '<body class="guided">' in page.source
    assert page.source.count("button first") == 1
    assert "Back" not in page.text


def test_the_safety_data_sheet_stands_by_the_caution(
    client: Client, begun: Making
) -> None:
    assert "Safety data sheet" not in read(client.get(at(begun))).text
    Dye.objects.update(data_sheet_link="https://example.org/slate.pdf")
    assert "https://example.org/slate.pdf" in read(client.get(at(begun))).links


def test_from_the_jar_to_the_bottle(client: Client, begun: Making) -> None:
    page = made_up(client, begun)
    assert "Step 8 of 8" in page.text
    assert "The label will say 1 %" in page.text
    done = send(
        client, begun, "label", place="top shelf", discard_by="", notes="cloudy"
    )
    (bottle,) = shelf()
    assert bottle.code in done.text
    assert f"/bottles/{bottle.code}/label.pdf" in done.links
    assert f"/bottles/{bottle.code}/" in done.links
    assert bottle.strength_percent == pytest.approx(1.0)  # 5.2 g in 520 ml
    assert bottle.place == "top shelf"


def test_a_little_over_is_told_with_the_volume_that_is_exact(
    client: Client, begun: Making
) -> None:
    send(client, begun, "lay_out")
    live = read(client.get(at(begun), {"powder_g": "5,2 g"}))
    assert "1.04 %" in live.text
    assert "It is 0.2 g over. Nothing needs mending" in live.text
    assert "For 1 % exactly, make up to 520 ml." in live.text
    assert live.value("powder_g") == "5,2 g"
    assert making(begun.id).powder_g is None
    short = read(client.get(at(begun), {"powder_g": "4.8"}))
    assert "It is 0.2 g short." in short.text
    assert "make up to 480 ml" in short.text


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("5", "That is as planned."),
        ("50", "That is far from the plan"),
        ("", "Type what the scale shows"),
        ("five", "Powder is written as a weight"),
        ("0", "Powder must be above 0"),
        ("900", "at most 50 %"),
        (HOSTILE, "Powder is written as"),
    ],
)
def test_the_outcome_follows_what_is_typed(
    client: Client, begun: Making, typed: str, words: str
) -> None:
    send(client, begun, "lay_out")
    page = read(client.get(at(begun), {"powder_g": typed}))
    assert page.status == 200
    assert words in page.text
    assert HOSTILE not in page.source


def test_past_the_mark_and_short_of_it(client: Client, begun: Making) -> None:
    made_up(client, begun)
    send(client, begun, "label", go="make_up")
    weak = read(client.get(at(begun), {"final_ml": "540"}))
    assert "0.963 %" in weak.text
    assert "it would take 0.2 g of powder more" in weak.text
    strong = read(client.get(at(begun), {"final_ml": "500"}))
    assert "For 1 % exactly, add 20 ml of water." in strong.text
    assert "far from the plan" in read(client.get(at(begun), {"final_ml": "52"})).text


def test_the_weight_goes_with_every_later_step(client: Client, begun: Making) -> None:
    page = weighed(client, begun)
    assert "Wet it to a paste" in page.text
    assert "Weighed 5.2 g." in page.text
    assert "For 1 % exactly, make up to 520 ml." in page.text


def test_back_and_forth_loses_nothing(client: Client, begun: Making) -> None:
    made_up(client, begun)
    soon = (today() + timedelta(days=60)).isoformat()
    send(
        client, begun, "label", go="back", place="door", discard_by=soon, notes=HOSTILE
    )
    page = read(client.get(at(begun)))
    assert page.value("final_ml") == "520"
    assert page.value("water") == "rain"
    page = send(client, begun, "make_up", final_ml="510", is_cold="on", go="weigh")
    assert page.value("powder_g") == "5.2"
    assert making(begun.id).final_ml == 510.0
    page = send(client, begun, "weigh", powder_g="5.2", go="label")
    assert page.value("place") == "door"
    assert page.value("discard_by") == soon
    assert HOSTILE in page.text
    assert HOSTILE not in page.source


def test_back_keeps_a_weight_that_can_be_kept(client: Client, begun: Making) -> None:
    send(client, begun, "lay_out")
    page = send(client, begun, "weigh", powder_g="5.2", go="back")
    assert "Step 1 of 8" in page.text
    assert making(begun.id).powder_g == 5.2
    send(client, begun, "lay_out")
    page = send(client, begun, "weigh", powder_g="a spoon", go="back")
    assert "Step 1 of 8" in page.text
    assert making(begun.id).powder_g == 5.2


def test_the_same_tap_twice_is_written_once(client: Client, begun: Making) -> None:
    send(client, begun, "lay_out")
    send(client, begun, "lay_out")
    assert making(begun.id).step.key == "weigh"
    form = {"step": "weigh", "deed": str(uuid4()), "go": "next", "powder_g": "5.2"}
    client.post(at(begun), form)
    client.post(at(begun), form)
    assert jar(begun.stock.jar_id or 0).left_g == pytest.approx(94.8)
    assert JarLine.objects.count() == 3  # two jars received, one weighing
    made_up(client, begun)
    finish = {"step": "label", "deed": str(uuid4()), "go": "next"}
    client.post(at(begun), finish)
    again = read(client.post(at(begun), finish))
    assert len(shelf()) == 1
    assert shelf()[0].code in again.text


def test_weighing_anew_moves_only_the_difference(client: Client, begun: Making) -> None:
    weighed(client, begun, "5.2")
    send(client, begun, "paste", go="back")
    send(client, begun, "weigh", powder_g="6")
    assert jar(begun.stock.jar_id or 0).left_g == pytest.approx(94.0)


def test_every_step_can_be_opened_again(client: Client, begun: Making) -> None:
    made_up(client, begun)
    for place, key in enumerate(STEPS, start=1):
        go_to_step(making_id=begun.id, key=key)
        page = read(client.get(at(begun)))
        assert page.status == 200
        assert f"Step {place} of 8" in page.text
        assert page.source.count("button first") == 1


def test_the_mixing_sheet_has_the_same_steps(client: Client, begun: Making) -> None:
    page = read(client.get(at(begun)))
    address = f"{at(begun)}sheet.pdf"
    assert address in page.links
    sheet = client.get(address)
    assert sheet.headers["Content-Type"] == "application/pdf"
    words = words_of(sheet.content)
    places = [words.find(step.title) for step in begun.steps]
    assert -1 not in places
    assert places == sorted(places)


def words_of(pdf: bytes) -> str:
    document = pypdfium2.PdfDocument(pdf)
    pages = (page.get_textpage().get_text_range() for page in document)
    return " ".join(" ".join(pages).split())
