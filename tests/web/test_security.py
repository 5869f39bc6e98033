"""Who may ask, what a page may do, and that no template undoes it."""

import logging
import re
from pathlib import Path

import pytest
from django.db import connection
from django.db.migrations.recorder import MigrationRecorder
from django.db.utils import OperationalError
from django.test import Client

from shadewright.records import copying

WEB = Path(__file__).parents[2] / "src" / "shadewright" / "web"
TEMPLATES = sorted(WEB.rglob("*.html"))
STATIC = sorted(path for path in WEB.glob("static/**/*") if path.is_file())
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; "
    "font-src 'self'; connect-src 'self'; manifest-src 'self'; form-action 'self'; "
    "base-uri 'none'; frame-ancestors 'none'; object-src 'none'"
)
SENT = {
    "powder_g": "5.2",
    "made_on": "2026-11-03",
    "look": "clear",
    "deed": "6f1c2f2e-0000-4000-8000-000000000000",
}

pytestmark = [pytest.mark.django_db, pytest.mark.urls("tests.web.sample")]


@pytest.fixture
def studio() -> Client:
    """A browser that may be answered with a fault page."""
    return Client(raise_request_exception=False, SERVER_NAME="127.0.0.1")


@pytest.mark.parametrize("host", ["127.0.0.1", "127.0.0.1:8123", "localhost:9"])
def test_this_machine_is_answered(studio: Client, host: str) -> None:
    assert studio.get("/sample/", headers={"host": host}).status_code == 200


@pytest.mark.parametrize("address", ["/sample/", "/healthz", "/static/x.css", "/no/"])
@pytest.mark.parametrize(
    "host", ["studio.example", "127.0.0.1.example", "10.0.0.7", "evil@localhost", ""]
)
def test_a_strange_host_is_refused(studio: Client, host: str, address: str) -> None:
    answer = studio.get(address, headers={"host": host})
    assert answer.status_code == 400
    assert "answers only to 127.0.0.1 and localhost" in answer.content.decode()


def test_a_forwarded_host_is_not_believed(studio: Client) -> None:
    answer = studio.get(
        "/sample/",
        headers={"host": "studio.example", "x-forwarded-host": "127.0.0.1"},
    )
    assert answer.status_code == 400


@pytest.mark.parametrize(
    "headers",
    [
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9000"},
        {"origin": "https://127.0.0.1"},
        {"origin": "http://studio.example", "sec-fetch-site": "same-origin"},
    ],
)
def test_an_act_from_another_site_is_refused(
    studio: Client, headers: dict[str, str]
) -> None:
    answer = studio.post("/sample/", SENT, headers=headers)
    assert answer.status_code == 403
    assert "nothing was written down" in answer.content.decode()
    assert "Weighed" not in studio.get("/").content.decode()


@pytest.mark.parametrize(
    "headers",
    [
        {},
        {"origin": "http://127.0.0.1", "sec-fetch-site": "same-origin"},
        {"sec-fetch-site": "none"},
    ],
)
def test_an_act_from_our_own_page_is_done(
    studio: Client, headers: dict[str, str]
) -> None:
    assert studio.post("/sample/", SENT, headers=headers).status_code == 302


def test_a_form_without_its_token_is_refused() -> None:
    studio = Client(enforce_csrf_checks=True, SERVER_NAME="127.0.0.1")
    answer = studio.post("/sample/", SENT)
    assert answer.status_code == 403
    assert "send it once more" in answer.content.decode()
    token = studio.get("/sample/").context["csrf_token"]
    sent = {**SENT, "csrfmiddlewaretoken": str(token)}
    assert studio.post("/sample/", sent).status_code == 302


@pytest.mark.usefixtures("ines")
@pytest.mark.parametrize("address", ["/recipes/?q=%00", "/lots/?q=a%00b", "/a%00/"])
def test_an_address_with_the_null_sign_is_refused(client: Client, address: str) -> None:
    answer = client.get(address, SERVER_NAME="127.0.0.1")
    assert answer.status_code == 400
    assert "cannot be read" in answer.content.decode()


@pytest.mark.parametrize("length", ["12000001", "many", "-1"])
def test_too_large_an_upload_is_refused_unread(studio: Client, length: str) -> None:
    answer = studio.post("/sample/", SENT, CONTENT_LENGTH=length)
    assert answer.status_code == 413
    assert "up to 12 MB" in answer.content.decode()


@pytest.mark.parametrize(
    ("address", "status"),
    [
        ("/sample/", 200),
        ("/healthz", 200),
        ("/static/shadewright/base.css", 200),
        ("/static/shadewright/favicon.svg", 200),
        ("/static/shadewright/studio.webmanifest", 200),
        ("/static/django_htmx/htmx-2.min.js", 200),
        ("/favicon.ico", 302),
        ("/sample/undo/", 302),
        ("/sample/forbidden/", 403),
        ("/no/", 404),
        ("/sample/lost/", 404),
        ("/person/", 405),
        ("/sample/conflict/", 409),
        ("/sample/range/", 422),
        ("/sample/broken/", 500),
    ],
)
@pytest.mark.usefixtures("ines")
def test_every_answer_carries_the_safety_headers(
    studio: Client, address: str, status: int
) -> None:
    answer = studio.get(address)
    assert answer.status_code == status
    assert answer.headers["Content-Security-Policy"] == POLICY
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.headers["X-Frame-Options"] == "DENY"
    assert answer.headers["Referrer-Policy"] == "same-origin"
    assert answer.headers["Cross-Origin-Resource-Policy"] == "same-origin"
    assert "camera=()" in answer.headers["Permissions-Policy"]
    assert "Access-Control-Allow-Origin" not in answer.headers
    answer.close()


def test_a_page_is_asked_for_anew_each_time(studio: Client) -> None:
    assert studio.get("/sample/").headers["Cache-Control"] == "private, no-cache"
    css = studio.get("/static/shadewright/base.css")
    assert "max-age" in css.headers["Cache-Control"]
    css.close()


@pytest.mark.parametrize(
    ("address", "sentence"),
    [
        ("/sample/broken/", "The program made a mistake."),
        ("/sample/conflict/", "The bottle has been poured away."),
        ("/sample/range/", "Strength must be above 0 %; got -1 %."),
        ("/sample/lost/", "There is no bottle “&lt;script&gt;"),
        ("/no/", "There is no page at this address"),
        ("/sample/forbidden/", "This page may not be opened"),
    ],
)
def test_a_fault_is_one_sentence_and_no_traceback(
    studio: Client, address: str, sentence: str
) -> None:
    page = studio.get(address).content.decode()
    assert sentence in page
    assert page.count("<h1") == 1
    assert not re.search(r"Traceback|secret inside|ZeroDivision|\.py", page)


def test_what_broke_is_said_in_the_terminal(
    studio: Client, caplog: pytest.LogCaptureFixture
) -> None:
    studio.get("/sample/broken/")
    assert "ZeroDivisionError: the secret inside" in caplog.text
    assert logging.getLogger("django.request").handlers


def test_cookies_stay_with_us(studio: Client) -> None:
    studio.get("/sample/")
    studio.post("/sample/", SENT)
    names = {"shadewright_studio", "shadewright_studio_form"}
    assert set(studio.cookies) == names
    for cookie in studio.cookies.values():
        assert cookie["httponly"]
        assert cookie["samesite"] == "Strict"
        assert cookie["path"] == "/"
        assert not cookie["domain"]


def test_healthz_says_ok_once_all_is_migrated(studio: Client) -> None:
    assert studio.get("/healthz").json() == {"status": "ok"}
    recorder = MigrationRecorder(connection)
    last = max(key for key in recorder.applied_migrations() if key[0] == "records")
    recorder.record_unapplied(*last)
    answer = studio.get("/healthz")
    assert answer.status_code == 503
    assert answer.json() == {"status": "not ready"}


def test_healthz_says_so_when_the_database_is_away(
    studio: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    def away(_connection: object) -> None:
        raise OperationalError

    monkeypatch.setattr(copying, "MigrationLoader", away)
    assert studio.get("/healthz").status_code == 503


@pytest.mark.parametrize("file", STATIC, ids=lambda path: path.name)
def test_no_style_or_picture_asks_for_anything_outside(file: Path) -> None:
    text = file.read_text(encoding="utf-8").replace("http://www.w3.org/2000/svg", "")
    assert not re.search(r"https?://|src=[\"']//|@import", text)


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda path: path.name)
def test_every_form_that_acts_carries_its_token(template: Path) -> None:
    text = template.read_text(encoding="utf-8")
    for form in re.findall(r"<form\b.*?</form>", text, re.DOTALL):
        if 'method="post"' in form:
            assert "{% csrf_token %}" in form
