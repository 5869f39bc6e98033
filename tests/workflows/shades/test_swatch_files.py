"""Swatches out of a file, into the studio, and out again."""

from datetime import date
from uuid import uuid4

import pytest

from shadewright.errors import ConflictError, InputError, MissingError
from shadewright.exchange.swatch_file import read_swatches
from shadewright.records.models import Base, ColourReading, Dye, Swatch, SwatchDose
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.evidence import evidence
from shadewright.workflows.shades.keeping_files import (
    NamesSaid,
    all_swatches_text,
    keep_lines,
    new_names,
)
from shadewright.workflows.shades.swatch_files import (
    is_table,
    read_file,
    require_small,
)
from shadewright.workflows.shades.swatch_samples import lines_of_samples, read_samples
from shadewright.workflows.shades.swatches import swatches_now
from shadewright.workflows.stamps import stamp_now

pytestmark = pytest.mark.django_db

BANDS = ",".join(f"R{nm}" for nm in range(400, 701, 20))
HEAD = f"base,doses,L,a,b,L_A,a_A,b_A,L_FL11,a_FL11,b_FL11,hex,sd,date,note,{BANDS}\n"
FIBRES = NamesSaid(fibres={"Fell DK": "wool"})


def row(base: str, doses: str, **cells: str) -> str:
    """Return a row of such a table."""
    named = {"base": base, "doses": doses, **cells}
    return ",".join(named.get(name, "") for name in HEAD.strip().split(",")) + "\n"


TABLE = HEAD + "".join([
    row("Fell DK", "", L="92", a="-0.4", b="7.9", date="2026-05-01", note="bare"),
    row("Fell DK", "Gorse=1", L="76", a="6", b="62", sd="0.4"),
    row("Fell DK", "Sloe=x", L="38", a="4", b="-32"),
    row("Fell DK", "Sloe=1;Gorse=0.5", hex="#53607a"),
    row("Fell DK", "Peat=1", hex="#6b5344", sd="4"),
    row("Fell DK", "Peat=2", L="38", a="4", b="-32", date="31.5.26"),
    row("Fell DK", "Kelp=1", **dict.fromkeys(BANDS.split(","), "25")),
])


def test_good_lines_and_bad_ones_each_with_its_reason() -> None:
    found = read_file(TABLE)
    assert [each.line for each in found.lines] == [2, 3, 5, 6, 8]
    kinds = [each.new.read_by for each in found.lines]
    assert kinds == [
        ReadBy.METER,
        ReadBy.METER,
        ReadBy.EYE,
        ReadBy.PHOTO,
        ReadBy.SPECTRUM,
    ]
    assert found.lines[0].dyed_on == date(2026, 5, 1)
    assert found.lines[4].new.spectrum == pytest.approx((0.25,) * 31)
    assert [each.line for each in found.bad] == [4, 7]
    assert "the depth of Sloe is no number" in found.bad[0].why
    assert "The date “31.5.26” cannot be read" in found.bad[1].why
    assert found.table.words(4).startswith("Fell DK, Sloe=x, 38")


def test_new_names_are_told_once_each() -> None:
    Dye.objects.create(name="gorse")
    names = new_names(read_file(TABLE).lines)
    assert names.bases == ("Fell DK",)
    assert names.dyes == ("Sloe", "Peat", "Kelp")


def test_lines_are_kept_once_and_then_known() -> None:
    lines = read_file(TABLE).lines
    stamp = stamp_now(by=None, deed=uuid4())
    assert keep_lines(lines, names=FIBRES, stamp=stamp) == 5
    assert keep_lines(lines, names=FIBRES, stamp=stamp) == 5
    assert Swatch.objects.count() == 5
    assert SwatchDose.objects.count() == 5
    assert ColourReading.objects.count() == 5
    assert {each.name for each in Dye.objects.all()} == {
        "Gorse",
        "Sloe",
        "Peat",
        "Kelp",
    }
    assert len(evidence()) == 5
    again = read_file(TABLE)
    assert all(each.is_known for each in again.lines)
    assert len(again.lines) == 5


def test_a_name_may_mean_one_that_is_there() -> None:
    Dye.objects.create(name="Blackthorn")
    Base.objects.create(name="Fell")
    said = NamesSaid(bases={"Fell DK": "Fell"}, dyes={"Sloe": "Blackthorn"})
    keep_lines(read_file(TABLE).lines, names=said, stamp=stamp_now(by=None))
    assert Swatch.objects.filter(base__name="Fell").count() == 5
    assert Base.objects.count() == 1
    labels = {each.label.replace("\u00a0", " ") for each in swatches_now()}
    assert "Blackthorn 1 % + Gorse 0.5 %" in labels


def test_two_names_for_one_dye_in_one_line_are_refused() -> None:
    Base.objects.create(name="Fell DK")
    said = NamesSaid(dyes={"Sloe": "Gorse"})
    with pytest.raises(ConflictError, match="In line 5 two names mean the same dye"):
        keep_lines(read_file(TABLE).lines, names=said, stamp=stamp_now(by=None))
    assert not Swatch.objects.exists()
    assert not Dye.objects.exists()


def test_a_new_base_needs_its_fibres_and_no_line_is_nothing() -> None:
    lines = read_file(TABLE).lines
    with pytest.raises(MissingError, match="made of"):
        keep_lines(lines, names=NamesSaid(), stamp=stamp_now(by=None))
    with pytest.raises(MissingError, match="A line to keep"):
        keep_lines([], names=FIBRES, stamp=stamp_now(by=None))


def test_swatches_leave_as_they_came() -> None:
    keep_lines(read_file(TABLE).lines, names=FIBRES, stamp=stamp_now(by=None))
    text = all_swatches_text()
    back, before = read_swatches(text), evidence()
    assert not back.rejected
    assert [each.doses for each in back.swatches] == [each.doses for each in before]
    for read, kept in zip(back.swatches, before, strict=True):
        assert read.reading.evidence is kept.reading.evidence
        assert read.reading.values == pytest.approx(kept.reading.values)
        assert read.reading.noise == pytest.approx(kept.reading.noise)
    kinds = [each.new.read_by for each in read_file(text).lines]
    assert kinds == [each.new.read_by for each in read_file(TABLE).lines]
    assert all(each.is_known for each in read_file(text).lines)
    assert ",bare" in text


def test_a_session_is_kept_by_its_day_or_its_name() -> None:
    text = (
        "base,doses,hex,session\nWool,Gorse=1,#a0522d,May\nWool,,#ffffee,2026-05-02\n"
    )
    first, second = read_file(text).lines
    assert (first.session, first.dyed_on, first.note) == ("May", None, "")
    assert (second.session, second.dyed_on) == ("", date(2026, 5, 2))


def test_samples_of_spectra_take_the_doses_that_are_typed() -> None:
    head = "name," + BANDS
    level = ",".join(["25"] * 16)
    text = f"{head}\nGorse 1 %,{level}\nMystery,{level}\nNo,1\nBare,{level}\n"
    assert not is_table(text)
    assert is_table(TABLE)
    assert is_table("base\tdoses\tL\ta\tb\n")
    assert read_file("Base;Doses;L*;a*;b*\nWool;Gorse=1;50,5;1;2\n").lines
    read = read_samples(text)
    assert [each.guess for each in read.samples] == ["Gorse 1 %", "", "Bare"]
    assert read.bad[0].line == 4
    typed = {"doses-0": "Gorse 1 %", "doses-1": " ", "doses-2": "bare"}
    lines = lines_of_samples(read.samples, base="Wool", doses=typed)
    assert [each.doses for each in lines] == [(("Gorse", 1.0),), ()]
    assert lines[0].label == "Gorse 1 %"
    with pytest.raises(InputError) as caught:
        lines_of_samples(read.samples, base="Wool", doses={"doses-1": "?"})
    assert caught.value.argument == "doses-1"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("base,doses\nWool,\n", "It has no column for a colour"),
        ("base,doses,L,a,b,L\n", "Column L stands there twice"),
    ],
)
def test_no_such_table(text: str, sentence: str) -> None:
    with pytest.raises(InputError, match=sentence) as caught:
        read_file(text)
    assert caught.value.argument == "text"


def test_limits_are_told_in_one_sentence() -> None:
    with pytest.raises(InputError, match="The file must be at most 5 MB"):
        require_small("x" * 6_000_000, argument="file")
    level = ",".join(["25"] * 16)
    many = f"name,{BANDS}\n" + f"x,{level}\n" * 201
    with pytest.raises(InputError, match="at most 200 samples; got 201 samples"):
        read_samples(many)


@pytest.mark.store
@pytest.mark.django_db
def test_swatches_of_one_session_are_of_one_dyeing() -> None:
    """No day is known, but the fit knows that they share one."""
    text = "base,doses,L,a,b,session\nWool,Gorse=1,76,6,62,May\nWool,,91,0,9,May\n"
    keep_lines(
        read_file(text).lines,
        names=NamesSaid(fibres={"Wool": "wool"}),
        stamp=stamp_now(by=None),
    )
    assert {each.session for each in evidence()} == {"May"}
