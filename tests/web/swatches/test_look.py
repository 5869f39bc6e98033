"""Swatches in a real browser: sound at every width; from nothing on a phone."""

from dataclasses import dataclass
from io import BytesIO

import pytest
from PIL import Image, ImageDraw
from playwright.sync_api import Browser, FilePayload, Locator, Page
from pytest_django.fixtures import Settings
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Base
from shadewright.workflows.people import Person
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.swatches import swatches_now
from tests.browser import LOOKS, axe, goes_sideways, watched_page
from tests.web.swatches.test_start import COLOURS
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = pytest.mark.usefixtures("ines")
CAST = (1.15, 0.95, 0.7)
"""What lamp light makes of each colour, as light."""
GREY_CARD = "#767676"
"""L* 50: 18.4 % of the light."""


def swatch_pages() -> tuple[str, ...]:
    """Keep swatches of every standing, fit, and return the address of every page."""
    base = Base.objects.create(name="Hollow", fibres="wool")
    rows = kept_singles(base)
    kept_swatch(base, {"Gorse": 0.5}, (60.0, 110.0, 60.0), is_wet=True)
    fit_now(why="first swatches")
    one = f"/shades/swatches/{rows[1].pk}/"
    folder = "/shades/swatches/"
    return ("/shades/start/", folder, f"{folder}new/", one, f"{one}read/")


@pytest.mark.slow
@pytest.mark.parametrize("look", LOOKS)
def test_every_page_is_sound(
    browser: Browser, live_server: LiveServer, look: str
) -> None:
    size, scheme = LOOKS[look]
    with watched_page(browser, size, scheme=scheme) as page:
        for address in swatch_pages():
            page.goto(f"{live_server.url}{address}")
            assert axe(page) == [], address
            assert goes_sideways(page) == 0, address


@dataclass
class Thumb:
    """A thumb on a phone; counts its taps and the signs that it types."""

    taps: int = 0
    signs: int = 0

    def tap(self, at: Locator) -> None:
        """Tap once."""
        at.click()
        self.taps += 1

    def types(self, at: Locator, text: str) -> None:
        """Tap into a field and type."""
        self.tap(at)
        at.fill(text)
        self.signs += len(text)


def test_from_nothing_to_a_ranked_recipe_on_a_phone(
    phone: Page, live_server: LiveServer, ines: Person, settings: Settings
) -> None:
    """Twenty taps and ninety-seven signs: under five minutes at three seconds each.

    A tap with the look that it needs takes 2.5 s and a sign 0.4 s, generously: 90 s.
    To hold six swatches to the screen leaves half a minute for each.
    """
    settings.REFITS = "at once"
    thumb = Thumb()
    phone.goto(live_server.url)
    thumb.tap(phone.get_by_role("link", name="Shades"))
    thumb.tap(phone.get_by_role("link", name="Enter your first swatches"))
    thumb.types(phone.locator("[name=base]"), "Hollow")
    thumb.types(phone.locator("[name=fibres]"), "100 % wool")
    for number, (dye, colour) in enumerate(COLOURS.items(), start=1):
        thumb.types(phone.locator(f"[name=dye_{number}]"), dye)
        thumb.types(phone.locator(f"[name=colour_{number}]"), colour)
    assert axe(phone) == []
    assert goes_sideways(phone) == 0
    thumb.tap(phone.get_by_role("button", name="Make the palette"))
    phone.wait_for_url("**/shades/palettes/*/")
    thumb.tap(phone.get_by_role("link", name="Find a recipe"))
    thumb.types(phone.locator("input[type=text][name=colour]"), "#7a6a9a")
    thumb.tap(phone.get_by_role("button", name="Find", exact=True))
    first = phone.get_by_role("heading", name="1. Most likely to come out right")
    first.wait_for(timeout=30_000)
    assert (thumb.taps, thumb.signs) == (20, 97)
    assert axe(phone) == []
    assert goes_sideways(phone) == 0
    assert {now.reading.by for now in swatches_now() if now.reading} == {ines.name}


def test_the_picker_and_the_words_say_the_same(
    phone: Page, live_server: LiveServer
) -> None:
    phone.goto(f"{live_server.url}/shades/start/")
    picker, typed = phone.locator("[name=pick_1]"), phone.locator("[name=colour_1]")
    picker.fill("#3f5f96")
    assert typed.input_value() == "#3f5f96"
    typed.fill("E0B02C")
    assert picker.input_value() == "#e0b02c"


def test_a_photo_with_a_grey_card_gives_the_colours_by_taps(
    phone: Page, live_server: LiveServer
) -> None:
    """Under a lamp every patch is off; the card brings each back within a step."""
    phone.goto(f"{live_server.url}/shades/start/")
    photo = FilePayload(name="a.png", mimeType="image/png", buffer=_photo())
    phone.locator("[data-photo-file]").set_input_files(photo)
    phone.locator("[data-photo-card]").check()
    canvas = phone.locator("[data-photo-canvas]")
    box = canvas.bounding_box()
    assert box is not None
    for place in range(len(COLOURS) + 1):
        x = box["width"] * (place + 0.5) / (len(COLOURS) + 1)
        canvas.click(position={"x": x, "y": box["height"] / 2})
    for number, wanted in enumerate(COLOURS.values(), start=1):
        got = phone.locator(f"[name=colour_{number}]").input_value()
        off = [abs(a - b) for a, b in zip(_rgb(got), _rgb(wanted), strict=True)]
        assert max(off) <= 2, (got, wanted)
    assert phone.get_by_label("Off a photo with a grey card in it").is_checked()
    assert axe(phone) == []
    assert goes_sideways(phone) == 0


def _photo() -> bytes:
    """Draw a grey card and each colour in a row, as a lamp would show them."""
    image = Image.new("RGB", (700, 200))
    pen = ImageDraw.Draw(image)
    for place, colour in enumerate((GREY_CARD, *COLOURS.values())):
        seen = tuple(
            _coded(min(_light(v) * gain, 1.0))
            for v, gain in zip(_rgb(colour), CAST, strict=True)
        )
        pen.rectangle((100 * place, 0, 100 * place + 99, 199), fill=seen)
    kept = BytesIO()
    image.save(kept, "PNG")
    return kept.getvalue()


def _rgb(code: str) -> tuple[int, ...]:
    return tuple(bytes.fromhex(code.removeprefix("#")))


def _light(byte: int) -> float:
    v = byte / 255
    return v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4


def _coded(v: float) -> int:
    code = 12.92 * v if v <= 0.0031308 else 1.055 * v ** (1 / 2.4) - 0.055
    return round(code * 255)
