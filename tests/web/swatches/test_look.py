"""Swatches in a real browser: sound at every width; colours picked and photographed."""

from io import BytesIO

import pytest
from PIL import Image, ImageDraw
from playwright.sync_api import Browser, FilePayload, Page, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import Base
from shadewright.workflows.shades.fits import fit_now
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


def test_the_picker_and_the_words_say_the_same(
    phone: Page, live_server: LiveServer
) -> None:
    phone.goto(f"{live_server.url}/shades/start/")
    picker, typed = phone.locator("[name=pick_1]"), phone.locator("[name=colour_1]")
    picker.fill("#3f5f96")
    assert typed.input_value() == "#3f5f96"
    typed.fill("E0B02C")
    assert picker.input_value() == "#e0b02c"


def test_enter_goes_to_the_next_field_and_sends_nothing(
    desk: Page, live_server: LiveServer
) -> None:
    """Base, fibres, the way that is chosen, dye, depth, colour, the next dye."""
    desk.goto(f"{live_server.url}/shades/start/")
    desk.locator("[name=base]").focus()
    for _field in range(6):
        desk.keyboard.press("Enter")
    desk.keyboard.type("Sloe")
    assert desk.locator("[name=dye_2]").input_value() == "Sloe"
    desk.locator("[name=colour_bare]").focus()
    desk.keyboard.press("Enter")
    expect(desk.locator(":focus")).to_have_text("Make the palette")
    assert desk.url.endswith("/shades/start/")


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
    expect(phone.get_by_label("Off a photo with a grey card in it")).to_be_checked()
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
