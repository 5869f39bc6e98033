"""A dye: added, edited with the version before kept, its data sheet."""

import re
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from pytest_django.fixtures import Settings

from shadewright.records.models import Dye
from shadewright.workflows.catalogue import earlier_versions
from tests.web.sample import HOSTILE

pytestmark = pytest.mark.usefixtures("ines", "own_files")
PDF = b"%PDF-1.7\n%%EOF"
PNG = b"\x89PNG\r\n\x1a\n0000"
SENT = {
    "name": "Kelp",
    "chart_hex": "#4E7F66",
    "ci_name": "Acid Green 25",
    "dye_class": "half-milling",
    "solubility_g_per_l": "50",
    "solubility_at_c": "60",
    "solubility_source": "the data sheet",
    "hazard_words": "Irritates eyes",
    "data_sheet_link": "https://dyes.example/kelp",
    "notes": "sea green",
}


@pytest.fixture
def own_files(settings: Settings, tmp_path: Path) -> None:
    """A folder for the files of this test alone."""
    settings.MEDIA_ROOT = tmp_path / "files"


def text(client: Client, address: str) -> str:
    return client.get(address).content.decode().replace("\u00a0", " ")


def upload(name: str, content: bytes) -> SimpleUploadedFile:
    return SimpleUploadedFile(name, content, content_type="text/html")


def test_a_dye_is_added_and_tells_all_that_is_known(client: Client) -> None:
    answer = client.post("/dyes/new/", SENT, follow=True)
    dye = Dye.objects.get()
    assert answer.redirect_chain == [(f"/dyes/{dye.pk}/", 302)]
    page = answer.content.decode().replace("\u00a0", " ")
    assert "Kelp added" in page
    for words in ("Acid Green 25", "50 g/l", "60 °C", "the data sheet", "sea green"):
        assert words in page
    assert "chart colour, a guess" in page
    assert "On wool at pH 4 to 6." in page
    assert 'href="https://dyes.example/kelp" rel="noopener noreferrer"' in page
    assert f'href="/jars/new/?dye={dye.pk}"' in page
    assert re.search(r"First written down .* by Ines\. Not changed since\.", page)
    assert dye.chart_hex == "#4e7f66"


def test_a_dye_needs_no_more_than_a_name(client: Client) -> None:
    client.post("/dyes/new/", {"name": "Kelp", "dye_class": "unknown"})
    page = text(client, f"/dyes/{Dye.objects.get().pk}/")
    assert "Not written down: chart colour, C.I. name, how much dissolves" in page


def test_the_form_says_what_each_class_means(client: Client) -> None:
    page = text(client, "/dyes/new/")
    assert page.count("On wool at pH") == 4
    assert page.count("no Glauber’s salt") == 2


def test_sent_twice_it_is_added_once(client: Client) -> None:
    places = [client.post("/dyes/new/", SENT).headers["Location"] for _ in range(2)]
    assert places[0] == places[1]
    assert Dye.objects.count() == 1


def test_another_dye_of_the_same_name_is_refused(client: Client) -> None:
    client.post("/dyes/new/", SENT)
    answer = client.post("/dyes/new/", {**SENT, "name": " kelp ", "notes": "other"})
    assert answer.status_code == 422
    assert "There is a “kelp” already." in answer.content.decode()
    Dye.objects.update(is_retired=True)
    answer = client.post("/dyes/new/", {**SENT, "notes": "other"})
    assert "is among the retired; bring it back instead." in answer.content.decode()


def test_an_edit_keeps_the_version_before(client: Client) -> None:
    client.post("/dyes/new/", SENT)
    dye = Dye.objects.get()
    address = f"/dyes/{dye.pk}/edit/"
    assert 'value="50"' in text(client, address)
    changed = {**SENT, "dye_class": "milling", "solubility_g_per_l": "40 g/l"}
    for _ in range(2):
        page = client.post(address, changed, follow=True).content.decode()
    page = page.replace("\u00a0", " ")
    assert len(earlier_versions(dye)) == 1
    assert (
        'Class: <span class="undone">Half-milling (fast acid)</span> → Milling' in page
    )
    assert 'How much dissolves: <span class="undone">50 g/l</span> → 40 g/l' in page
    assert "Ines" in page[page.index("What changed") :]


def test_retiring_and_coming_back_are_versions_too(client: Client) -> None:
    dye = Dye.objects.create(name="Kelp")
    client.post(f"/dyes/{dye.pk}/retire/")
    page = text(client, f"/dyes/{dye.pk}/")
    assert "Retired: no list offers it any more." in page
    assert 'Retired: <span class="undone">no</span> → yes' in page
    client.post(f"/dyes/{dye.pk}/back/")
    assert len(earlier_versions(dye)) == 2


def test_a_metal_class_counts_as_holding_a_metal(client: Client) -> None:
    client.post("/dyes/new/", {"name": "Coal", "dye_class": "metal-complex 1:2"})
    dye = Dye.objects.get()
    assert dye.is_metal_complex
    page = text(client, f"/dyes/{dye.pk}/")
    assert "never to a storm drain or a septic tank" in page
    assert "No bleach on residues" in page


@pytest.mark.parametrize(
    ("field", "typed", "sentence"),
    [
        ("name", "", "Your name for it is missing."),
        ("name", "x" * 61, "may have up to 60 characters; this has 61."),
        ("ci_name", "x" * 61, "C.I. name may have up to 60 characters"),
        ("dye_class", "magic", "Class must be one of those offered."),
        ("chart_hex", "green", "The chart colour must be six figures"),
        ("chart_hex", "#12345", "The chart colour must be six figures"),
        ("chart_hex", "#12345678", "Chart colour may have up to 7 characters"),
        ("solubility_g_per_l", "-5", "How much dissolves must be above 0"),
        ("solubility_g_per_l", "0", "How much dissolves must be above 0"),
        ("solubility_g_per_l", "well", "How much dissolves is written as a number"),
        ("solubility_g_per_l", "50 ml", "How much dissolves is written as a number"),
        (
            "solubility_g_per_l",
            "9" * 9,
            "How much dissolves must be above 0 and at most 2000",
        ),
        ("solubility_at_c", "", "The temperature is missing"),
        ("solubility_at_c", "140", "Water temperature must be from 0 °C to 100 °C"),
        ("solubility_at_c", "warm", "Water temperature is written as a temperature"),
        ("solubility_source", "", "The source is missing"),
        ("hazard_words", "x" * 161, "Hazard words may have up to 160 characters"),
        ("data_sheet_link", "dyes.example", "The link must be a whole address"),
        ("data_sheet_link", "javascript:alert(1)", "The link must be a whole address"),
        ("data_sheet_link", "ftp://dyes.example/", "The link must be a whole address"),
        ("data_sheet_link", HOSTILE, "The link must be a whole address"),
        ("notes", "x" * 2001, "Notes may have up to 2000 characters"),
    ],
)
def test_a_fault_stands_by_its_field_and_what_was_typed_stays(
    client: Client, field: str, typed: str, sentence: str
) -> None:
    answer = client.post("/dyes/new/", {**SENT, field: typed})
    page = answer.content.decode().replace("\u00a0", " ")
    assert answer.status_code == 422
    assert sentence in page
    assert f'id="id_{field}_error"' in page
    assert typed in page or typed in {HOSTILE, "magic"}
    assert "<script>alert" not in page
    assert Dye.objects.count() == 0


def test_html_in_every_text_field_stays_text(client: Client) -> None:
    hostile = dict.fromkeys(
        ("name", "ci_name", "solubility_source", "hazard_words", "notes"), HOSTILE
    )
    answer = client.post("/dyes/new/", {**SENT, **hostile}, follow=True)
    dye = Dye.objects.get()
    page = answer.content.decode()
    for address in (f"/dyes/{dye.pk}/edit/", "/dyes/", "/jars/new/", "/shelf/enter/"):
        page += client.get(address).content.decode()
    assert "<script>alert" not in page
    assert page.count("&lt;script&gt;alert") > 10


@pytest.mark.parametrize(
    ("name", "content", "kind", "ending"),
    [
        ("sheet.pdf", PDF, "application/pdf", "pdf"),
        ("../../../etc/passwd", PDF, "application/pdf", "pdf"),
        ('<img src=x onerror="alert(1)">.html', PNG, "image/png", "png"),
        ("a\u202egpj.exe", b"\xff\xd8\xff\xe0", "image/jpeg", "jpg"),
        ("x" * 300 + ".pdf", PDF, "application/pdf", "pdf"),
        ("CON", PDF, "application/pdf", "pdf"),
    ],
)
def test_a_sheet_gets_a_name_of_ours_and_comes_back_as_a_download(
    client: Client, name: str, content: bytes, kind: str, ending: str
) -> None:
    sent = {**SENT, "data_sheet_file": upload(name, content)}
    assert client.post("/dyes/new/", sent).status_code == 302
    dye = Dye.objects.get()
    stored = dye.data_sheet_file.name
    assert stored is not None
    assert re.fullmatch(rf"data-sheets/[0-9a-f]{{32}}\.{ending}", stored)
    assert f'href="/dyes/{dye.pk}/sheet/"' in text(client, f"/dyes/{dye.pk}/")
    answer = client.get(f"/dyes/{dye.pk}/sheet/")
    assert b"".join(answer.streaming_content) == content  # type: ignore[attr-defined]
    assert answer.headers["Content-Type"] == kind
    assert answer.headers["Content-Disposition"] == (
        f'attachment; filename="kelp-data-sheet.{ending}"'
    )
    assert answer.headers["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("sheet.pdf", b"<html><script>alert(1)</script>", "must be a PDF, a PNG or a"),
        ("sheet.png", b"<svg onload=alert(1)>", "must be a PDF, a PNG or a JPEG"),
        ("sheet.pdf", b"MZ\x90\x00", "must be a PDF, a PNG or a JPEG"),
        ("sheet.pdf", b"", "The data sheet is empty; send it again."),
        ("sheet.pdf", b"%PDF-" + b"0" * 10_000_000, "up to 10 MB; send a smaller copy"),
    ],
)
def test_what_is_no_sheet_is_refused(
    client: Client, name: str, content: bytes, sentence: str
) -> None:
    answer = client.post(
        "/dyes/new/", {**SENT, "data_sheet_file": upload(name, content)}
    )
    page = answer.content.decode()
    assert answer.status_code == 422
    assert sentence in page
    assert 'value="Kelp"' in page
    assert Dye.objects.count() == 0


def test_a_sheet_beside_a_fault_elsewhere_is_asked_for_again(client: Client) -> None:
    sent = {**SENT, "name": "", "data_sheet_file": upload("a.pdf", PDF)}
    answer = client.post("/dyes/new/", sent)
    assert answer.status_code == 422
    assert "Choose the file again" in answer.content.decode()


def test_a_sheet_can_be_taken_away_and_its_version_is_kept(client: Client) -> None:
    assert "Take the file away" not in text(client, "/dyes/new/")
    client.post("/dyes/new/", {**SENT, "data_sheet_file": upload("a.pdf", PDF)})
    dye = Dye.objects.get()
    address = f"/dyes/{dye.pk}/edit/"
    assert "Take the file away" in text(client, address)
    client.post(address, SENT)
    assert Dye.objects.get().data_sheet_file
    client.post(address, {**SENT, "forget_sheet": "on"})
    assert not Dye.objects.get().data_sheet_file
    page = text(client, f"/dyes/{dye.pk}/")
    assert '<span class="undone">a file</span> → not written down' in page
    assert client.get(f"/dyes/{dye.pk}/sheet/").status_code == 404


def test_a_sheet_whose_file_is_lost_is_said_plainly(client: Client) -> None:
    dye = Dye.objects.create(name="Kelp", data_sheet_file="data-sheets/gone.pdf")
    answer = client.get(f"/dyes/{dye.pk}/sheet/")
    assert answer.status_code == 404
    assert "There is no data sheet of “Kelp”." in answer.content.decode()
