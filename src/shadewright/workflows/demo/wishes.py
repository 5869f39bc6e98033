"""Colours that the demo studio wants, and three trials dyed for one of them."""

from dataclasses import dataclass
from datetime import timedelta
from functools import partial

from shadewright.records.models import Bath
from shadewright.records.models.swatches import PlanKind
from shadewright.records.writes import Stamp
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.kettle import KettleBath
from shadewright.workflows.demo.rinsing import write_finishing
from shadewright.workflows.demo.rota import Wanted
from shadewright.workflows.demo.stocks import Need, see_to_stocks
from shadewright.workflows.demo.swatch_book import SUPERWASH
from shadewright.workflows.shades.plan_keeping import keep_plan
from shadewright.workflows.shades.plan_wishes import PlanWish
from shadewright.workflows.shades.saving import ToSave, save_found
from shadewright.workflows.shades.wanted import keep_wanted, wanted_of_text


@dataclass(frozen=True, kw_only=True)
class Wish:
    """A colour that somebody wants: as it was typed, for which yarn."""

    name: str
    days_ago: int
    typed: str
    yarn: str = ""


BEECH = "Beech leaf"
WISHES = (
    Wish(name=BEECH, days_ago=24, typed="31, 16, 17", yarn=SUPERWASH),
    Wish(name="Hawkweed", days_ago=17, typed="66, 26, 68"),
    Wish(name="Kingfisher", days_ago=10, typed="#0a9fd6"),
)
"""The first is in reach of the dyes, the second at the edge, the third beyond it."""

TRIALS_DYED, TRIAL_G = 18, 10.0
_TRIED = (("Peat", 1.68), ("Gorse", 0.56), ("Rosehip", 0.22))
"""What the first palette found for it, of three dyes."""
_ALL_TRIALS_G = 4 * TRIAL_G


def write_wishes(house: House) -> None:
    """Write down when each colour was kept, and when the trials were planned."""
    for wish in WISHES:
        at = house.diary.at(wish.days_ago, "20:10")
        house.diary.note(at, house.ines, partial(_keep, house, wish))
    at = house.diary.at(TRIALS_DYED + 1, "14:20")
    house.diary.note(at, house.tam, partial(_plan_trials, house))
    at = house.diary.at(TRIALS_DYED - 4, "20:30")
    house.diary.note(at, house.ines, partial(_save, house))


def _keep(house: House, wish: Wish, stamp: Stamp) -> None:
    kept = keep_wanted(
        wanted_of_text(wish.typed),
        name=wish.name,
        base_id=house.bases.get(wish.yarn),
        stamp=stamp,
    )
    house.wanted[wish.name] = kept


def _plan_trials(house: House, stamp: Stamp) -> None:
    """Plan three swatches around the recipe that was found, and dye them next day."""
    needs = {dye: Need(dye_g=_ALL_TRIALS_G * depth / 100) for dye, depth in _TRIED}
    see_to_stocks(house, needs, stamp)
    wish = PlanWish(
        kind=PlanKind.BRACKET,
        base_id=house.bases[SUPERWASH],
        dyed_on=house.diary.day(TRIALS_DYED),
        yarn_g=TRIAL_G,
        mix=_mix(house),
        wanted_id=house.wanted[BEECH].wanted_id,
        like_id=house.versions["Peat Smoke"],
    )
    plan_id = keep_plan(wish, house.diary.stamp(house.tam))
    planned = Bath.objects.filter(version__recipe__swatch_plan=plan_id)
    numbers = planned.order_by("id").values_list("number", flat=True)
    for place, number in enumerate(numbers):
        _dye_trial(house, number, place)


def _dye_trial(house: House, number: str, place: int) -> None:
    trial = Wanted(name=BEECH, base=SUPERWASH, fibre_g=TRIAL_G, is_swatch=True)
    begun_at = house.diary.at(TRIALS_DYED, "10:05") + timedelta(minutes=6 * place)
    KettleBath(house, number, trial, place=1).write(begun_at)
    rinsed_at = house.diary.at(TRIALS_DYED - 1, f"11:{10 + 7 * place}")
    write_finishing(house, number, trial, rinsed_at)


def _save(house: House, stamp: Stamp) -> None:
    """Save the middle one of the trials as a recipe for the colour."""
    found = ToSave(
        doses=_mix(house),
        base_id=house.bases[SUPERWASH],
        wanted=house.wanted[BEECH],
        like_id=house.versions["Peat Smoke"],
    )
    save_found(found, stamp=stamp)


def _mix(house: House) -> tuple[tuple[int, float], ...]:
    return tuple((house.dyes[dye], depth) for dye, depth in _TRIED)
