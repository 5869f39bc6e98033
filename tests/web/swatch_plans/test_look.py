"""Sets of swatches in a real browser: sound at every width, alive on a phone."""

from dataclasses import replace

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Auxiliary, Base, Dye, Pot, SwatchPlan
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.plan_wishes import PlanKind, PlanWish
from shadewright.workflows.stamps import stamp_now, today
from tests.browser import LOOKS, axe, goes_sideways, watched_page
from tests.workflows.bench import entered
from tests.workflows.shades.swatch_rows import kept_singles

pytestmark = pytest.mark.usefixtures("ines")
NEW = "/shades/plans/new/"


def studio() -> Base:
    """Keep a yarn, six dyes of which two stand on the shelf, a palette, a pot."""
    base = Base.objects.create(name="Hollow 4-ply", fibres="wool")
    kept_singles(base)
    for dye in Dye.objects.filter(name__in=["Gorse", "Sloe"]):
        entered(dye.pk)
    Auxiliary.objects.create(name="Citric acid")
    Pot.objects.create(name="Steamer", volume_l=12.0)
    fit_now(why="first swatches")
    return base


def pages() -> tuple[str, ...]:
    """Return the address of every page, one of each kind of set."""
    base = studio()
    gorse, sloe = Dye.objects.filter(name__in=["Gorse", "Sloe"]).order_by("name")
    wish = PlanWish(
        kind=PlanKind.MIXES,
        base_id=base.pk,
        dyed_on=today(),
        dye_ids=(gorse.pk, sloe.pk),
    )
    kept = keep_plan(wish, stamp_now(by=None))
    ladder = replace(wish, kind=PlanKind.LADDER, dye_ids=(sloe.pk,))
    wants_stock = keep_plan(ladder, stamp_now(by=None))
    entered(gorse.pk, strength_percent=0.1)
    return (
        NEW,
        f"{NEW}?kind=ladder&base={base.pk}&dyes={gorse.pk}&dyes={sloe.pk}",
        f"{NEW}?kind=next&base={base.pk}&count=4",
        f"{NEW}?kind=bracket&base={base.pk}&mix={gorse.pk}:0.6,{sloe.pk}:0.2",
        f"{NEW}?kind=mixes&base={base.pk}&dyes={gorse.pk}",
        "/shades/plans/",
        f"/shades/plans/{kept}/",
        f"/shades/plans/{wants_stock}/",
        f"/shades/plans/{wants_stock}/colours/",
    )


@pytest.mark.slow
@pytest.mark.parametrize("look", LOOKS)
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, look: str
) -> None:
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        for address in pages():
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address


def test_a_ladder_on_the_phone_follows_what_is_tapped(
    phone: Page, live_server: LiveServer
) -> None:
    studio()
    phone.goto(f"{live_server.url}{NEW}")
    phone.get_by_label("Gorse").check()
    plan = phone.locator("#plan")
    expect(plan).to_contain_text("4 swatches of 10 g: 40 g of Hollow 4-ply")
    phone.get_by_label("Rungs").fill("3")
    expect(plan).to_contain_text("3 swatches of 10 g")
    phone.get_by_role("button", name="Keep this set").click()
    expect(phone.get_by_role("heading", level=1)).to_contain_text("Swatches")
    assert SwatchPlan.objects.get().recipe.versions.count() == 3
