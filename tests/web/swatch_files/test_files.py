"""Swatches out of a file: every line looked at, the good ones kept, all taken away."""

import re

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client

from shadewright.records.models import Base, Dye, Swatch
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.swatches import Standing, swatches_now

pytestmark = pytest.mark.usefixtures("ines")

PLACE = "/shades/swatches/files/"
TABLE = (
    "base,doses,L,a,b,date\n"
    "Fell DK,,92,-0.4,7.9,2026-05-01\n"
    "Fell DK,Gorse=1,76,6,62,\n"
    "Fell DK,Sloe=x,38,4,-32,\n"
)
LEVEL = ",".join(["25"] * 16)
SPECTRA = "name," + ",".join(f"R{nm}" for nm in range(400, 701, 20)) + "\n"


def said(content: bytes) -> str:
    """Return an answer without no-break spaces."""
    return content.decode().replace("\u00a0", " ")


def fields(page: str) -> dict[str, str]:
    """Return what the form of a page holds, as a browser would send it."""
    found = dict(re.findall(r'<input[^>]* name="([^"]+)"[^>]* value="([^"]*)"', page))
    area = r'<textarea[^>]* name="text"[^>]*>\n?(.*?)</textarea>'
    text = re.search(area, page, re.DOTALL)
    chosen = dict.fromkeys(re.findall(r'<select[^>]* name="([^"]+)"', page), "+")
    plain = dict.fromkeys(re.findall(r'<input type="text" name="([^"]+)"', page), "")
    found = plain | chosen | found | {"hex_by": "eye"}
    return found | {"text": text[1].replace("&quot;", '"') if text else ""}


def shown(client: Client, text: str) -> str:
    """Return the page of the lines of a text."""
    return said(client.post(PLACE, {**start(client), "text": text}).content)


def start(client: Client) -> dict[str, str]:
    """Return the empty form."""
    return {**fields(said(client.get(PLACE).content)), "go": "show"}


def test_every_line_is_shown_and_none_is_kept(client: Client) -> None:
    page = shown(client, f"\r\n{TABLE}")
    assert "1 line to mend" in page
    assert "The depth of Sloe is no number: “x”" in page
    assert "2 lines that can be kept" in page
    assert "Keep 2 swatches" in page
    assert "Base “Fell DK” is" in page
    assert "Dye “Gorse” is" in page
    assert fields(page)["text"] == TABLE
    assert not Swatch.objects.exists()


def test_good_lines_are_kept_once_and_the_bad_ones_stay(client: Client) -> None:
    sent = {**fields(shown(client, TABLE)), "go": "keep"}
    fibres = next(name for name in sent if name.startswith("fibres-"))
    refused = client.post(PLACE, sent)
    assert refused.status_code == 422
    assert "It is new here: write its fibres" in said(refused.content)
    sent[fibres] = "wool"
    pages = [said(client.post(PLACE, sent).content) for _ in "12"]
    for page in pages:
        assert "2 swatches are kept" in page
        assert "These lines are left" in page
    assert Swatch.objects.count() == 2
    left = fields(pages[1])["text"]
    assert left.splitlines()[1].startswith("Fell DK,Sloe=x,38,4,-32,,")
    mended = shown(client, left.replace("Sloe=x", "Sloe=1"))
    assert "Keep 1 swatch" in mended
    answer = client.post(PLACE, {**fields(mended), "go": "keep"})
    assert answer.headers["Location"] == "/shades/swatches/"
    assert {each.standing for each in swatches_now()} == {Standing.COUNTS}
    assert "3 lines stand here already" in shown(client, TABLE.replace("=x", "=1"))


def test_a_new_name_may_be_one_of_yours(client: Client) -> None:
    Dye.objects.create(name="Whin")
    Base.objects.create(name="Fell DK")
    sent = {**fields(shown(client, TABLE)), "go": "keep"}
    (dye,) = (name for name in sent if name.startswith("dye-"))
    client.post(PLACE, {**sent, dye: "Whin"})
    assert [each.doses for each in swatches_now()] == [(("Whin", 1.0),), ()]


def test_the_bad_lines_are_taken_away_to_be_mended(client: Client) -> None:
    answer = client.post(PLACE, {**fields(shown(client, TABLE)), "go": "mend"})
    assert answer.headers["Content-Type"].startswith("text/csv")
    assert said(answer.content).splitlines()[0] == "base,doses,L,a,b,date,reason"
    assert len(said(answer.content).splitlines()) == 2


def test_a_file_is_uploaded_and_its_text_stays_in_the_form(client: Client) -> None:
    file = SimpleUploadedFile("swatches.csv", TABLE.encode("utf-8-sig"))
    page = said(client.post(PLACE, {**start(client), "file": file}).content)
    assert "2 lines that can be kept" in page
    assert fields(page)["text"] == TABLE


@pytest.mark.parametrize("line_end", ["\r\n", "\r"])
def test_any_line_end_is_one(client: Client, line_end: str) -> None:
    file = SimpleUploadedFile("old.csv", TABLE.replace("\n", line_end).encode())
    page = said(client.post(PLACE, {**start(client), "text": "", "file": file}).content)
    assert TABLE.splitlines()[2] in page


def test_too_many_new_names_in_a_file_are_the_one_fault(client: Client) -> None:
    rows = "".join(f"Yarn {n},Dye {n}=1,50,0,0\n" for n in range(200))
    file = SimpleUploadedFile("many.csv", f"base,doses,L,a,b\n{rows}".encode())
    page = said(client.post(PLACE, {**start(client), "text": "", "file": file}).content)
    assert "must be at most 300; got 400" in page
    assert "Choose a file" not in page


def test_hex_colours_are_what_they_are_said_to_be(client: Client) -> None:
    Base.objects.create(name="Fell DK")
    text = "base,doses,hex\nFell DK,Gorse=1,#a0522d\n"
    sent = {**fields(shown(client, text)), "hex_by": "photo", "go": "keep"}
    client.post(PLACE, sent)
    (found,) = swatches_now()
    assert found.reading is not None
    assert found.reading.read_by is ReadBy.PHOTO


def test_samples_of_spectra_are_asked_for_their_doses(client: Client) -> None:
    Base.objects.create(name="Fell DK")
    page = shown(client, f"{SPECTRA}Gorse 1 %,{LEVEL}\nMystery,{LEVEL}\nBare,{LEVEL}\n")
    sent = {**fields(page), "go": "keep"}
    assert sent["doses-0"] == "Gorse 1 %"
    assert "Base of these samples is missing." in said(client.post(PLACE, sent).content)
    sent |= {"base": "Fell DK", "doses-1": "Gorse"}
    wrong = said(client.post(PLACE, sent).content)
    assert "“Gorse” cannot be read" in wrong
    sent["doses-1"] = "Gorse 1 % + Sloe 2 %"
    asked = said(client.post(PLACE, sent).content)
    assert "say first what the new names mean" in asked
    client.post(PLACE, {**fields(asked), "go": "keep"})
    doses = [each.doses for each in swatches_now()]
    assert doses == [(), (("Gorse", 1.0), ("Sloe", 2.0)), (("Gorse", 1.0),)]


@pytest.mark.parametrize(
    ("sent", "sentence"),
    [
        ({}, "Choose a file, or paste its text below."),
        ({"text": "hello"}, "neither a table of swatches nor one of spectra"),
        ({"text": "doses,L,a,b\n,1,2,3\n"}, "Its first row lacks base."),
        ({"text": "nm,R\n400,0.5\n"}, "400 to 700 nm"),
        ({"text": "base,doses\nWool,\n"}, "It has no column for a colour."),
        ({"file": b"\xff\xd8\xff\xe0"}, "It is no plain text."),
        ({"file": b"x" * 200_000}, "neither a table of swatches nor one of spectra"),
        ({"file": b"x" * 5_000_001}, "The file must be at most 5 MB; got 5.0 MB."),
    ],
)
def test_what_is_no_such_file_is_refused(
    client: Client, sent: dict[str, str | bytes], sentence: str
) -> None:
    data: dict[str, object] = {**start(client)}
    for name, value in sent.items():
        data[name] = value
        if isinstance(value, bytes):
            data[name] = SimpleUploadedFile("x.csv", value)
    answer = client.post(PLACE, data)
    assert answer.status_code == 422
    assert sentence in said(answer.content)


def test_all_swatches_leave_as_a_table_that_comes_back(client: Client) -> None:
    assert "Take away all" not in said(client.get(PLACE).content)
    Base.objects.create(name="Fell DK")
    good = "\n".join(TABLE.splitlines()[:3])
    client.post(PLACE, {**fields(shown(client, good)), "go": "keep"})
    assert "Take away all" in said(client.get(PLACE).content)
    answer = client.get("/shades/swatches/all.csv")
    assert 'attachment; filename="swatches-20' in answer.headers["Content-Disposition"]
    text = said(answer.content)
    assert "2026-05-01" in text
    assert "2 lines stand here already" in shown(client, text)


def test_a_first_row_alone_is_said(client: Client) -> None:
    assert "Below its first row stands no line." in shown(client, "base,doses,L,a,b\n")


def test_of_very_many_bad_lines_the_first_are_shown(client: Client) -> None:
    rows = "".join(f"Fell DK,Gorse={n},x,0,0\n" for n in range(1, 1004))
    page = shown(client, f"base,doses,L,a,b\n{rows}")
    assert "1003 lines to mend" in page
    assert "The first 1000 are shown; 3 lines more are to mend too." in page
    assert page.count("is no number: “x”") == 1000
