"""Mixes in a real browser: sound at every width; the colour follows the keys."""

import re

import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.web.mix_text import mix_text
from tests.browser import LOOKS, axe, goes_sideways, watched_page
from tests.workflows.shades.two_yarns import TwoYarns


def mix_address(yarns: TwoYarns) -> str:
    mix = mix_text(yarns.mix(Gorse=0.6, Sloe=0.2))
    return f"/shades/mix/?base={yarns.wool}&mix={mix}&colour=%23556f4a"


@pytest.mark.slow
@pytest.mark.parametrize("look", LOOKS)
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, yarns: TwoYarns, look: str
) -> None:
    version = yarns.recipe(Sloe=0.6, Peat=0.2)
    mix = mix_text(yarns.mix(Sloe=1.2))
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        for address in (
            mix_address(yarns),
            f"/shades/carry/{version.id}/",
            f"/shades/gradient/?mix={mix}&steps=12",
        ):
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address


def test_the_colour_follows_the_arrow_keys(
    live_server: LiveServer, phone: Page, yarns: TwoYarns
) -> None:
    """Number, colour and what is kept follow; once it rests, words and address do."""
    gorse = yarns.dye("Gorse")
    phone.goto(f"{live_server.url}{mix_address(yarns)}")
    slider, number = phone.locator(f"#slide-{gorse}"), phone.locator(f"#id_d{gorse}")
    colour = phone.locator("#told .chips rect").last
    before = colour.get_attribute("fill")
    slider.focus()
    for _press in range(8):
        slider.press("ArrowRight")
    depth = number.input_value()
    assert float(depth) == pytest.approx(0.6 * 1.0265**8, rel=0.03)
    assert slider.get_attribute("aria-valuetext") == f"{depth} %"
    expect(colour).not_to_have_attribute("fill", before or "")
    expect(phone.locator("#told input[name=mix]")).to_have_value(
        mix_text(((gorse, float(depth)), (yarns.dye("Sloe"), 0.2)))
    )
    expect(phone.locator("#mix-said")).to_contain_text(f"Gorse {depth}\u00a0%")
    expect(phone).to_have_url(re.compile(rf"mix={gorse}:{re.escape(depth)},"))
    expect(phone.locator("#measured")).to_contain_text(f"{depth}\u00a0%")
    expect(slider).to_be_focused()


def test_a_number_that_is_typed_moves_its_slider(
    live_server: LiveServer, phone: Page, yarns: TwoYarns
) -> None:
    sloe = yarns.dye("Sloe")
    phone.goto(f"{live_server.url}{mix_address(yarns)}")
    phone.locator(f"#id_d{sloe}").fill("10")
    assert phone.locator(f"#slide-{sloe}").input_value() == "300"
    expect(phone.locator("#told-more")).to_contain_text("Sloe 10\u00a0%")
