"""A photo at the pot waits on the phone until the computer has it, once."""

from collections.abc import Generator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Page, Route, expect
from pytest_django.live_server_helper import LiveServer

from shadewright.records.models import BathLine
from shadewright.workflows.bath_pages import BathAct
from tests.browser import axe, goes_sideways
from tests.fingers import Finger
from tests.web.bench.test_photos import cups
from tests.workflows.bench import founded
from tests.workflows.pots import Ready, ago, ready, tapped

pytestmark = pytest.mark.django_db(transaction=True)
ONE = "1 photo waits on this phone. It is safe."
NONE_LEFT = """async () => {
  const opened = indexedDB.open("shadewright.studio");
  await new Promise((done) => { opened.onsuccess = done; });
  const all = opened.result.transaction("photos").objectStore("photos").count();
  await new Promise((done) => { all.onsuccess = done; });
  return all.result === 0;
}"""


@pytest.fixture
def pot(live_server: LiveServer) -> Ready:
    del live_server
    founded()
    return ready()


@pytest.fixture
def picture(tmp_path: Path) -> Path:
    photo = tmp_path / "pot.png"
    photo.write_bytes(cups(share=0.25))
    return photo


def opened(live_server: LiveServer, page: Page, pot: Ready) -> Finger:
    page.goto(f"{live_server.url}/bench/{pot.number}/?view=main")
    return Finger(page)


def taken(page: Page, picture: Path, *, note: str = "") -> None:
    finger = Finger(page)
    finger("Problem", role="link")
    finger("Note", role="link")
    if note:
        page.get_by_label("What it shows").locator("visible=true").fill(note)
    page.get_by_label("Or a photo").locator("visible=true").set_input_files(picture)
    finger("Keep the photo")


@contextmanager
def first_try_fails(page: Page) -> Generator[None]:
    """Cut the connection, and wait until a photo has been sent in vain."""
    page.context.set_offline(True)
    with page.expect_event("requestfailed", lambda one: one.url.endswith("/photo/")):
        yield


def unsent(page: Page, words: str) -> None:
    expect(page.locator("#live [data-unsent]")).to_have_text(words)


def test_photos_without_a_connection_wait_and_outlive_a_reload(
    live_server: LiveServer, page: Page, pot: Ready, picture: Path
) -> None:
    finger = opened(live_server, page, pot)
    page.context.set_offline(True)
    taken(page, picture, note="blotchy at the ties")
    unsent(page, ONE)
    taken(page, picture)
    unsent(page, "2 photos wait on this phone. They are safe.")
    assert axe(page) == []
    assert goes_sideways(page) == 0
    finger("Undo")  # the second was no good: it is gone, and never sent
    unsent(page, ONE)
    expect(page.locator("[data-written]")).to_contain_text("Photo: blotchy at the ties")
    assert not BathLine.objects.exists()
    page.goto("about:blank")
    page.context.set_offline(False)
    with page.expect_response("**/photo/"):
        opened(live_server, page, pot)
    unsent(page, "")
    line = BathLine.objects.get()
    assert (line.act, line.note) == (BathAct.PHOTO, "blotchy at the ties")
    assert page.evaluate(NONE_LEFT)


def test_a_photo_whose_answer_is_lost_is_written_once(
    live_server: LiveServer, phone: Page, pot: Ready, picture: Path
) -> None:
    fates = ["answer lost", "nothing left", "good"]

    def send(route: Route) -> None:
        fate = fates.pop(0) if len(fates) > 1 else fates[0]
        if fate == "answer lost":
            route.fetch()
        if fate == "good":
            route.continue_()
        else:
            route.abort("connectionreset")

    phone.route("**/photo/", send)
    opened(live_server, phone, pot)
    taken(phone, picture)
    unsent(phone, ONE)
    unsent(phone, "")
    assert fates == ["good"]
    assert BathLine.objects.count() == 1


def test_a_photo_that_waited_goes_out_from_the_list_of_pots(
    live_server: LiveServer, phone: Page, pot: Ready, picture: Path
) -> None:
    opened(live_server, phone, pot)
    phone.route("**/photo/", lambda route: route.abort("connectionfailed"))
    taken(phone, picture)
    unsent(phone, ONE)
    phone.unroute("**/photo/")
    with phone.expect_response("**/photo/") as answer:
        phone.goto(f"{live_server.url}/bench/")
    assert answer.value.ok
    assert BathLine.objects.count() == 1
    expect(phone.locator("[data-unsent]")).to_be_hidden()
    expect(phone.get_by_role("button", name="I have read it")).to_be_hidden()


def test_what_is_no_picture_is_said_at_once(
    live_server: LiveServer, phone: Page, pot: Ready, tmp_path: Path
) -> None:
    opened(live_server, phone, pot)
    spoilt = tmp_path / "spoilt.jpg"
    spoilt.write_bytes(b"no picture")
    taken(phone, spoilt)
    fault = phone.locator("[data-fault]")
    expect(fault).to_contain_text("It is not a whole JPEG, PNG or WebP picture.")
    unsent(phone, "")
    assert not BathLine.objects.exists()


def test_why_a_photo_was_refused_stays_when_another_phone_taps(
    live_server: LiveServer, phone: Page, pot: Ready, tmp_path: Path
) -> None:
    spoilt = tmp_path / "spoilt.jpg"
    spoilt.write_bytes(b"no picture")
    opened(live_server, phone, pot)
    taken(phone, spoilt)
    fault = phone.locator("[data-fault]")
    expect(fault).to_contain_text("It is not a whole JPEG, PNG or WebP picture.")
    deed = tapped(pot.number, BathAct.STARTED, "fill")
    expect(phone.locator(f"[data-deed='{deed}']")).to_be_attached()
    expect(fault).to_contain_text("It is not a whole JPEG, PNG or WebP picture.")


def test_what_was_refused_later_is_said_until_it_is_read(
    live_server: LiveServer, phone: Page, pot: Ready, tmp_path: Path
) -> None:
    spoilt = tmp_path / "spoilt.jpg"
    spoilt.write_bytes(b"no picture")
    opened(live_server, phone, pot)
    with first_try_fails(phone):
        taken(phone, spoilt)
    unsent(phone, ONE)
    phone.context.set_offline(False)
    place = phone.locator("#live [data-unsent]")
    expect(place).to_contain_text("Not written: Photo.")
    phone.get_by_role("button", name="I have read it").click()
    unsent(phone, "")


def test_two_cups_that_waited_and_cannot_be_read_are_kept_as_a_photo(
    live_server: LiveServer, phone: Page, pot: Ready, tmp_path: Path
) -> None:
    dark = tmp_path / "dark.png"
    dark.write_bytes(cups(share=1.0, white=0.02))
    tapped(pot.number, BathAct.AT_TOP, "top", at=ago(minutes=5))
    phone.goto(f"{live_server.url}/bench/{pot.number}/?step=hold&view=left")
    phone.get_by_label("Or a photo").locator("visible=true").set_input_files(dark)
    with first_try_fails(phone):
        Finger(phone)("Read the photo")
    unsent(phone, ONE)
    phone.context.set_offline(False)
    unsent(phone, "")
    line = BathLine.objects.get(act=BathAct.PHOTO)
    assert "Two cups that could not be read" in line.note
    assert "too dark" in line.note


def test_an_undo_while_a_photo_is_on_its_way_takes_it_back(
    live_server: LiveServer, phone: Page, pot: Ready, picture: Path
) -> None:
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    phone.route("**/photo/", hold)
    finger = opened(live_server, phone, pot)
    with phone.expect_request("**/photo/"):
        taken(phone, picture)
    unsent(phone, ONE)
    finger("Undo")
    for route in held:
        route.continue_()
    expect(phone.locator("[data-written] li")).to_have_count(0)
    unsent(phone, "")
    photo = BathLine.objects.get(act=BathAct.PHOTO)
    assert photo.undone_by is not None
