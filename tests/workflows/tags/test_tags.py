"""Tags say what is written down, and name what they lack."""

from datetime import timedelta

import pytest

from shadewright.errors import ConflictError, OutOfRangeError
from shadewright.records.models import Base, Studio
from shadewright.records.models.lots import Grade
from shadewright.workflows.judging.fastness import (
    FastnessKind,
    FastnessWords,
    keep_test,
)
from shadewright.workflows.stamps import stamp_now, today
from shadewright.workflows.tags.making import lot_tags_pdf, tags_of
from shadewright.workflows.tags.texts import (
    STARTERS,
    MakerWords,
    Region,
    YarnWords,
    keep_maker,
    keep_region,
    keep_yarn_words,
    region,
    regions,
)
from tests.workflows.bench import founded
from tests.workflows.dyed import finished
from tests.workflows.pots import Ready, ready

pytestmark = [pytest.mark.store, pytest.mark.django_db]


@pytest.fixture
def pot() -> Ready:
    founded()
    return ready()


def test_a_tag_is_filled_in_from_lot_yarn_and_maker(pot: Ready) -> None:
    Base.objects.update(metres_per_100_g=400.0, fibres="wool")
    keep_maker(MakerWords(name="Low Tide", origin="Dyed here.", care="Cool wash."))
    keep_yarn_words(pot.base, YarnWords(fibre_content="100 % wool"))
    number = finished(pot.number, is_sure=True, grams=196.0, skeins=2)
    found = tags_of(number)
    tag = found.tag
    assert (tag.weight, tag.length) == ("98\xa0g", "392\xa0m")
    assert (tag.fibre_content, tag.care, tag.maker) == (
        "100 % wool",
        "Cool wash.",
        "Low Tide",
    )
    assert found.count == 2
    assert found.lacks == ("address",)
    assert lot_tags_pdf(number, count=2, shape="band", paper="a4").startswith(b"%PDF")


def test_a_yarns_own_care_comes_before_that_of_all(pot: Ready) -> None:
    keep_maker(MakerWords(care="Cool wash."))
    keep_yarn_words(pot.base, YarnWords(care="Dry clean."))
    number = finished(pot.number, is_sure=True)
    assert tags_of(number).tag.care == "Dry clean."


def test_what_is_missing_is_named(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True)
    lacks = tags_of(number).lacks
    assert "net weight" in lacks
    assert "origin" in lacks


def test_grades_are_said(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, grade=Grade.ONE_OFF)
    assert "One of a kind" in tags_of(number).tag.remark


def test_a_weak_test_is_said_until_a_newer_one_is_better(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True)
    for grade, said in ((3.0, "May give off colour: wash it apart."), (4.5, "")):
        test = FastnessWords(kind=FastnessKind.BLEED, staining={"wool": grade})
        keep_test(number=number, said=test, stamp=stamp_now(by=None))
        assert tags_of(number).tag.remark == said


def test_a_swatch_gets_no_tag_of_a_skein(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True, grade=Grade.SWATCH)
    with pytest.raises(ConflictError, match="swatch"):
        tags_of(number)


def test_a_region_is_the_studios_own_text(pot: Ready) -> None:
    del pot
    assert regions() == ()
    number = keep_region(STARTERS[0])
    keep_region(Region(id=number, name="The Union", asks=("Fibres", " ", "Maker")))
    assert region(number).asks == ("Fibres", "Maker")
    with pytest.raises(ConflictError, match="already"):
        keep_region(Region(name="the union"))


def test_no_line_of_a_region_is_lost_in_silence(pot: Ready) -> None:
    del pot
    with pytest.raises(OutOfRangeError, match="31 lines"):
        keep_region(Region(name="Long", asks=("One",) * 31))
    with pytest.raises(OutOfRangeError, match="today or earlier"):
        keep_region(Region(name="Soon", checked_on=today() + timedelta(days=1)))


def test_the_makers_name_is_the_studios_until_said(pot: Ready) -> None:
    number = finished(pot.number, is_sure=True)
    assert tags_of(number).tag.maker == Studio.objects.get().name
