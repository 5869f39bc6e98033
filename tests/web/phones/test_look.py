"""Pairing in a real browser: sound at every size, read by a camera, without script."""

import io

import pytest
import zxingcpp
from PIL import Image
from playwright.sync_api import Browser, Page, expect
from pytest_django.fixtures import Settings
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import PairingTry
from shadewright.web import guests
from shadewright.workflows.devices import make_code, pair
from shadewright.workflows.studio import found_studio
from shadewright.workflows.wrong_codes import MOST_AN_HOUR
from tests.browser import DESK, PHONE, axe, goes_sideways, watched_page

SIZES = [(320, 700), PHONE, DESK]


@pytest.fixture
def studio(settings: Settings, live_server: LiveServer) -> str:
    """The address of a studio with two phones."""
    settings.HOME_ADDRESSES = ("192.168.1.5", "172.17.0.1")
    found_studio(name="Fell Lane", person="Ines")
    for name in ("Ines’ phone", "The old tablet that hangs by the sink"):
        pair(code=make_code(by=None).digits, name=name, address="192.168.1.20")
    return str(live_server.url)


@pytest.fixture
def away(monkeypatch: pytest.MonkeyPatch) -> None:
    """This browser is not the desk's: it plays a phone."""
    monkeypatch.setattr(guests, "is_at_the_desk", lambda _request: False)


def is_sound(page: Page) -> bool:
    return axe(page) == [] and goes_sideways(page) == 0


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES, ids=["320", "390", "1280"])
def test_the_desks_pages_are_sound(
    browser: Browser, studio: str, size: tuple[int, int], scheme: str
) -> None:
    with watched_page(browser, size, scheme=scheme) as page:
        page.goto(f"{studio}/phones/")
        assert is_sound(page)
        page.get_by_role("button", name="Pair a phone").click()
        assert is_sound(page)
        for _ in range(MOST_AN_HOUR):
            PairingTry.objects.create(address="192.168.1.66")
        page.get_by_role("link", name="The phone is in").click()
        expect(page.get_by_text("Pairing is locked")).to_be_visible()
        assert is_sound(page)


@pytest.mark.usefixtures("away")
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", SIZES, ids=["320", "390", "1280"])
def test_the_door_is_sound(
    browser: Browser, studio: str, size: tuple[int, int], scheme: str
) -> None:
    with watched_page(browser, size, scheme=scheme) as page:
        page.goto(studio)
        expect(page.get_by_role("heading", name="Pair this phone")).to_be_visible()
        assert is_sound(page)
        page.get_by_role("button", name="Pair this phone").click()
        expect(page.get_by_text("The code at the desk is missing.")).not_to_have_count(
            0
        )
        assert is_sound(page)


@pytest.mark.usefixtures("away")
def test_a_phone_is_paired_without_a_script(browser: Browser, studio: str) -> None:
    context = browser.new_context(
        java_script_enabled=False, viewport={"width": 390, "height": 844}
    )
    page = context.new_page()
    page.goto(f"{studio}/pair/?code={make_code(by=None).digits}")
    page.get_by_label("A name for this phone").fill("Tam’s phone")
    page.get_by_role("button", name="Pair this phone").click()
    expect(page.get_by_role("navigation", name="Places")).to_be_visible()
    assert "/pair/" not in page.url
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_camera_reads_where_to_go_and_the_code(
    browser: Browser, studio: str, scheme: str
) -> None:
    with watched_page(browser, DESK, scheme=scheme) as page:
        page.goto(f"{studio}/phones/")
        page.get_by_role("button", name="Pair a phone").click()
        code = page.locator(".pairing-code").inner_text().replace(" ", "")
        photo = Image.open(io.BytesIO(page.locator(".code-square").screenshot()))
        port = studio.rpartition(":")[2]
        (read,) = zxingcpp.read_barcodes(photo)
        assert read.text == f"http://192.168.1.5:{port}/pair/?code={code}"
