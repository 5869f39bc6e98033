"""What teaches: the fits, one tap for a swatch or a lot, what was foretold."""

import re
from uuid import uuid4

import pytest
from django.test import Client
from django.urls import reverse

from shadewright.core.mixing import Mix, told_mixes
from shadewright.records.models import Base, PaletteFit, Swatch
from shadewright.web.evidence.parts import (
    OfferedShown,
    SuspectsShown,
    shaped_offers,
    shaped_suspects,
)
from shadewright.workflows.lots import ColourEvidence, note_colour
from shadewright.workflows.people import Person
from shadewright.workflows.shades.doubts import doubts_among
from shadewright.workflows.shades.fits import fit_now
from shadewright.workflows.shades.offering import offers_among
from shadewright.workflows.shades.palettes import palette_now
from shadewright.workflows.shades.swatches import Standing, swatch_now, swatches_now
from shadewright.workflows.stamps import stamp_now
from tests.web.pages_read import read
from tests.workflows.dyed import dyed, finished
from tests.workflows.pots import ready
from tests.workflows.shades.swatch_rows import kept_singles, kept_swatch

pytestmark = pytest.mark.django_db


def doubted(base: Base) -> Swatch:
    """Fit a ladder of which one swatch is as deep as 1.6 %, and says 0.4 %."""
    kept_singles(base)
    palette = fit_now(why="one depth each").palette
    depths = (0.3, 0.6, 1.6, 2.4)
    mixes = [Mix(base=base.name, doses=(("Gorse", depth),)) for depth in depths]
    labs = dict(zip(depths, told_mixes(mixes, palette=palette).lab, strict=True))
    for depth, lab in labs.items():
        said = 0.4 if depth == 1.6 else depth
        light, a, b = map(float, lab)
        kept_swatch(base, {"Gorse": said}, (light, a, b))
    fit_now(why="a ladder")
    return Swatch.objects.get(label__contains="0.4")


def suspects_shown(*, base_id: int | None = None) -> SuspectsShown:
    """Return what does not teach now, of one base or of all."""
    found = doubts_among(swatches_now(), palette_now())
    return shaped_suspects(found, base_id=base_id)


def offered_shown() -> OfferedShown:
    """Return the lots on offer now."""
    return shaped_offers(offers_among(swatches_now()))


def tap(client: Client, name: str, key: object, **sent: str) -> None:
    """Press a key that leads back to the fits."""
    answer = client.post(
        reverse(name, args=[key]), {"deed": str(uuid4()), **sent}, follow=True
    )
    assert answer.status_code == 200


def test_a_doubted_swatch_is_named_with_its_reason(client: Client, base: Base) -> None:
    wrong = doubted(base)
    shown = suspects_shown(base_id=base.pk)
    assert [each.swatch_id for each in shown.doubted] == [wrong.pk]
    assert shown.title == "One swatch looks wrong"
    page = read(client.get(reverse("palette", args=[base.pk])))
    assert "#suspects" in page.links
    page = read(client.get(reverse("fits")))
    assert "from what the others foretell. It looks as if dosed" in page.text
    assert "times as deep. Wet yarn looks deeper too: was it dry?" in page.text
    assert suspects_shown(base_id=base.pk + 1).doubted == ()


def test_a_colour_that_no_dose_gives_is_not_laid_to_the_dose(base: Base) -> None:
    kept_singles(base)
    blue = kept_swatch(base, {"Gorse": 2.0}, (34.0, 13.0, -51.0))
    fit_now(why="a tag that was swapped")
    why = {each.swatch_id: each.why for each in suspects_shown().doubted}
    said = " ".join(why[blue.pk])
    assert "No wrong dose explains it: perhaps a tag or a bottle was mixed up." in said
    assert "times as deep" not in said


@pytest.mark.usefixtures("at_once")
def test_set_aside_restored_trusted_and_each_undone(client: Client, base: Base) -> None:
    wrong = doubted(base)
    tap(client, "set-aside", wrong.pk)
    assert swatch_now(wrong.pk).standing is Standing.SET_ASIDE
    held = palette_now()
    assert held is not None
    assert wrong.pk not in {entry["swatch"] for entry in held.given}
    (aside,) = suspects_shown().aside
    assert aside.swatch_id == wrong.pk
    said = (
        r"Set aside \d+ \w+ by Ines\. It is ΔE\xa0\d+\.\d from what the others foretell"
    )
    assert re.match(said, aside.words)

    tap(client, "restore", wrong.pk)
    assert swatch_now(wrong.pk).standing is Standing.COUNTS
    tap(client, "trust", wrong.pk)
    assert swatch_now(wrong.pk).standing is Standing.TRUSTED
    held = palette_now()
    assert held is not None
    assert wrong.pk in held.used
    assert suspects_shown().doubted == ()

    newest = wrong.evidence_lines.order_by("-id")[0]
    client.post(reverse("undo", args=[newest.deed]))
    assert swatch_now(wrong.pk).standing is Standing.COUNTS
    whys = list(PaletteFit.objects.values_list("why", flat=True))
    assert whys[0] == "something was taken back"
    assert whys[1].endswith("teaches: it is right")


def test_a_key_pressed_twice_is_one_line(client: Client, base: Base) -> None:
    row = kept_singles(base)[1]
    deed = str(uuid4())
    for _time in range(2):
        client.post(reverse("set-aside", args=[row.pk]), {"deed": deed})
    assert row.evidence_lines.count() == 1


def test_without_its_key_nothing_is_written(client: Client, base: Base) -> None:
    row = kept_singles(base)[1]
    answer = client.post(reverse("set-aside", args=[row.pk]))
    assert answer.status_code == 422
    assert not row.evidence_lines.exists()


def test_a_lot_whose_colour_was_noted_is_offered_and_teaches(
    client: Client, ines: Person
) -> None:
    pot = ready()
    number = finished(dyed(pot))
    assert not offered_shown().count
    note_colour(
        number=number,
        colour="60, 5, 40",
        evidence=ColourEvidence.METER,
        stamp=stamp_now(by=ines.id),
    )
    (offer,) = offered_shown().first
    assert (offer.number, offer.base_name) == (number, "Fell DK")
    assert "read by a meter" in read(client.get(reverse("fits"))).text
    tap(client, "teach-lot", number)
    (swatch,) = swatches_now()
    assert swatch.standing is Standing.COUNTS
    assert swatch.is_lot
    assert swatch.reading is not None
    assert swatch.reading.lab == (60.0, 5.0, 40.0)
    assert not offered_shown().count

    line = Swatch.objects.get().evidence_lines.get()
    client.post(reverse("undo", args=[line.deed]))
    assert [each.number for each in offered_shown().first] == [number]
    tap(client, "leave-lot", number)
    assert swatches_now()[0].standing is Standing.SET_ASIDE
    assert not offered_shown().count
    (aside,) = suspects_shown().aside
    assert aside.label.startswith(f"{number}, ")
    assert "%" in aside.label


def test_a_lot_without_a_colour_is_refused_in_a_sentence(
    client: Client, ines: Person
) -> None:
    del ines
    number = finished(dyed(ready()))
    answer = client.post(reverse("teach-lot", args=[number]), {"deed": str(uuid4())})
    assert answer.status_code == 409
    assert "has no colour yet, so it can teach nothing." in read(answer).text
    assert not Swatch.objects.exists()


def test_what_was_foretold_stands_beside_what_came_out(
    client: Client, ines: Person
) -> None:
    del ines
    assert "Nothing foretold yet" in read(client.get(reverse("predictions"))).text
    pot = ready()
    yarn = Base.objects.get(pk=pot.base)
    for dye, lab in (("Slate", (40.0, -2.0, -10.0)), ("Gorse", (76.0, 6.0, 62.0))):
        kept_swatch(yarn, {dye: 1.0}, lab)
    fit_now(why="first swatches")
    number = finished(dyed(pot, pot.another()))
    assert "not read yet" in read(client.get(reverse("predictions"))).text
    note_colour(
        number=number,
        colour="58, -3, 12",
        evidence=ColourEvidence.PHOTO,
        stamp=stamp_now(by=None),
    )
    tap(client, "teach-lot", number)
    page = read(client.get(reverse("predictions")))
    assert "Of one prediction at 90 %, " in page.text
    assert "That is too few to judge by." in page.text
    assert "off a photo: 1 of these 1." in page.text
    assert f"/lots/{number}/" in page.links


def test_lots_that_a_meter_read_teach_in_one_tap_and_one_undo(
    client: Client, ines: Person
) -> None:
    del ines
    pot = ready(bottle_ml=5000.0)
    numbers = [finished(dyed(pot, number)) for number in (pot.number, pot.another())]
    for number in numbers:
        note_colour(
            number=number,
            colour="60, 5, 40",
            evidence=ColourEvidence.METER,
            stamp=stamp_now(by=None),
        )
    assert set(offered_shown().by_meter) == set(numbers)
    client.post(reverse("teach-lots"), {"deed": str(uuid4()), "number": numbers})
    assert {each.standing for each in swatches_now()} == {Standing.COUNTS}
    line = Swatch.objects.all()[0].evidence_lines.get()
    client.post(reverse("undo", args=[line.deed]))
    assert offered_shown().count == 2


def test_another_light_is_named_with_what_to_do(client: Client, base: Base) -> None:
    doubted(base)
    PaletteFit.objects.update(is_other_light=True)
    page = read(client.get(reverse("fits")))
    assert "The colours look read under D50" in page.text
    assert "Mend the meter’s light first" in page.text
    assert reverse("meters") in page.links
