import datetime as dt
from dataclasses import replace

import pypdfium2 as pdfium
import pytest
import typst
from hypothesis import given, settings
from hypothesis import strategies as st

from shadewright.paper import BottleLabel, label_format, labels_pdf
from shadewright.paper.typeset import pdf_of, printable
from tests.paper.pictures import words_on


def test_same_words_same_day_same_bytes(slate: BottleLabel, day: dt.date) -> None:
    cut = label_format("single-62x29")
    first = labels_pdf([slate], format=cut, printed_on=day)
    assert labels_pdf([slate], format=cut, printed_on=day) == first
    later = labels_pdf([slate], format=cut, printed_on=day + dt.timedelta(days=1))
    assert later != first


def test_pdf_is_tagged_titled_british_and_dated(
    slate: BottleLabel, day: dt.date
) -> None:
    pdf = labels_pdf([slate], format=label_format("a4-21"), printed_on=day)
    document = pdfium.PdfDocument(pdf)
    assert document.get_metadata_value("Title") == "Bottle labels: T7K"
    assert document.get_metadata_value("CreationDate").startswith("D:20261125")
    assert document.is_tagged()
    assert b"/Lang(en-GB)" in pdf
    assert b"/MarkInfo<</Marked true" in pdf
    assert b"<pdfuaid:part>1</pdfuaid:part>" in pdf
    assert b"DisplayDocTitle true" in pdf


def test_a_warning_of_the_typesetter_stops_the_print(day: dt.date) -> None:
    source = '#set document(title: "x")\n#set text(font: "No Such Face")\nx'
    with pytest.raises(typst.TypstWarning, match="unknown font family"):
        pdf_of(source, data="", on=day)


def test_what_pdf_ua_forbids_stops_the_print(day: dt.date) -> None:
    with pytest.raises(typst.TypstError, match="PDF/UA-1"):
        pdf_of("no title", data="", on=day)


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("Slate", "Slate"),
        ("  two\nlines\tand\x00 more ", "two lines and more"),
        ("1.04\N{NO-BREAK SPACE}%", "1.04\N{NO-BREAK SPACE}%"),
        ("Schöne Łódź ≥ −5 µm", "Schöne Łódź ≥ −5 µm"),
        ("Синий שלום", "Синий שלום"),
        ("\N{RIGHT-TO-LEFT OVERRIDE}etalS", "etalS"),
        ("so\N{SOFT HYPHEN}ft", "soft"),
        ("😀 blue 中", "□ blue □"),
        ("e\N{COMBINING ACUTE ACCENT}cru", "écru"),
    ],
)
def test_text_is_made_printable(typed: str, shown: str) -> None:
    assert printable(typed) == shown


@given(name=st.text(max_size=40), jar=st.text(max_size=40))
@settings(max_examples=40, deadline=None)
def test_whatever_is_typed_prints(name: str, jar: str) -> None:
    label = BottleLabel(
        code="T7K",
        qr_text="SHADEWRIGHT:BOTTLE:T7K",
        dye_name=name,
        strength_percent=1.0,
        strength_words="1 %",
        jar_lot=jar,
    )
    pdf = labels_pdf(
        [label], format=label_format("a4-8"), printed_on=dt.date(2026, 1, 1)
    )
    assert "Not for food" in words_on(pdf)


@pytest.mark.parametrize(
    "hostile",
    [
        '#import "@x/y:1.0.0": *',
        '"); #panic("out")',
        "\\u{23} \\ $x^2$ `raw` *bold* _it_",
        "<label> @ref // comment /* more */",
        "#{ read('/etc/passwd') }",
        "= Heading - list + enum / term: ~",
    ],
)
def test_typst_code_prints_as_text(
    hostile: str, slate: BottleLabel, day: dt.date
) -> None:
    label = replace(slate, dye_name=hostile, hazard_words=hostile)
    pdf = labels_pdf([label], format=label_format("single-102x51"), printed_on=day)
    assert words_on(pdf).replace(" ", "").count(hostile.replace(" ", "")) == 2
