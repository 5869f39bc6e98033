"""The plan says what each dose is measured with, and how sure that makes it."""

from uuid import uuid4

import pytest
from django.test import Client

from shadewright.records.models import Bath, MeasuringTool
from shadewright.records.models.catalogue import ToolKind
from shadewright.workflows.stamps import today
from shadewright.workflows.usual_tools import set_usual_tools
from tests.web.dyeing import Dyeing, dyeing_things
from tests.web.pages_read import Answer, read

PLAN = "/baths/new/"


@pytest.fixture
def things(ines: object) -> Dyeing:
    del ines
    return dyeing_things()


def scale() -> int:
    return MeasuringTool.objects.create(
        name="Kitchen scale", kind=ToolKind.BALANCE, readability=0.1
    ).pk


def syringe() -> int:
    return MeasuringTool.objects.create(
        name="Big syringe", kind=ToolKind.SYRINGE, size=20
    ).pk


def live(client: Client, things: Dyeing, **typed: str | int) -> Answer:
    """Ask as htmx does while somebody types."""
    said: dict[str, str | int] = {
        "version": things.recipe(),
        "base": things.base,
        "fibre_g": "97",
        **typed,
    }
    return read(client.get(PLAN, said, headers={"HX-Request": "true"}))


def test_without_tools_the_plan_leads_to_them(client: Client, things: Dyeing) -> None:
    page = live(client, things)
    assert "Add your tools" in page.text
    assert "/tools/" in page.links
    assert "Left out: what Slate is measured with" in page.text


def test_a_dose_stands_in_ml_and_g_with_its_spread(
    client: Client, things: Dyeing
) -> None:
    scale()
    set_usual_tools(dose_tool=syringe())
    page = live(client, things)
    assert f"58.2 ml of {things.slate_bottle} or 58.7 g" in page.text
    assert "0.6 % ±" in page.text
    assert "As usual: Big syringe" in page.text
    assert "Mostly: strength as labelled: a guess." in page.text
    assert "What it is made of" in page.text
    assert "Left out" not in page.text


def test_by_weight_the_grams_come_first(client: Client, things: Dyeing) -> None:
    scale()
    syringe()
    page = live(client, things, dosing="weight")
    assert f"58.7 g of {things.slate_bottle} or 58.2 ml" in page.text
    assert "Best here: Kitchen scale" in page.text
    # the syringe is no way to weigh a dose
    assert "Slate is weighed on Best here: Kitchen scale Kitchen scale" in page.text


def test_what_is_chosen_is_kept(client: Client, things: Dyeing) -> None:
    on, big = scale(), syringe()
    sent = {
        "act": "keep",
        "deed": str(uuid4()),
        "version": str(things.recipe()),
        "base": str(things.base),
        "fibre_g": "97",
        "dyed_on": f"{today():%Y-%m-%d}",
        "yarn_scale": str(on),
        "dosing": "volume",
        "tool-1": str(big),
        "tool-2": "nonsense",
    }
    client.post(PLAN, sent)
    bath = Bath.objects.get()
    assert (bath.yarn_scale_id, bath.is_by_weight) == (on, False)
    assert [dose.tool_id for dose in bath.doses.all()] == [big, big]
    again = read(client.get(PLAN, {"again": bath.number}))
    assert '<option value="volume" selected>' in again.source
    assert f'<option value="{on}" selected>' in again.source


def test_a_tool_that_is_not_offered_is_refused(client: Client, things: Dyeing) -> None:
    page = live(client, things, yarn_scale="77")
    assert "Not like this" in page.text


def test_the_bath_s_page_says_how_deep_and_how_sure(
    client: Client, things: Dyeing
) -> None:
    scale()
    set_usual_tools(dose_tool=syringe())
    number = things.bath(things.recipe())
    page = read(client.get(f"/baths/{number}/"))
    assert "How deep, and how sure" in page.text
    assert "Slate as planned 0.6 % ±" in page.text
    deed = str(uuid4())
    sent = {"key": deed, "act": "missed", "step": "dose-1"}
    client.post(f"/bench/{number}/tap/", sent)
    assert "Slate left out –" in read(client.get(f"/baths/{number}/")).text
