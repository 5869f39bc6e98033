"""Where the demo's skeins went, what their tags say, and one buyer who wrote."""

from dataclasses import dataclass, replace
from functools import partial

from shadewright.records.models import Lot
from shadewright.records.models.lots import Grade, LotAct
from shadewright.records.writes import Stamp
from shadewright.workflows.buyers.complaints import (
    ComplaintAbout,
    ComplaintWords,
    keep_complaint,
)
from shadewright.workflows.demo.house import House
from shadewright.workflows.demo.judged import MATCHED
from shadewright.workflows.demo.orders import SHOP
from shadewright.workflows.judging.fastness import (
    FastnessKind,
    FastnessWords,
    keep_test,
)
from shadewright.workflows.lot_skeins import Sending, send_out, skeins_of_lots
from shadewright.workflows.stamps import today
from shadewright.workflows.tags.texts import (
    STARTERS,
    MakerWords,
    YarnWords,
    keep_maker,
    keep_region,
    keep_yarn_words,
)

MAKER = MakerWords(
    name="Thornbank Dye Room",
    address="1 Invented Lane, Thornbank",
    origin="Dyed by hand at Thornbank, which does not exist.",
    care="Wash by hand, cool, with a mild soap. Dry flat, away from the sun.",
)
YARNS = {
    "Byre DK": YarnWords(fibre_content="100 % wool"),
    "Hollow 4-ply": YarnWords(
        fibre_content="75 % wool, 25 % polyamide",
        care="Wool wash at 30 °C. Dry flat, away from the sun.",
    ),
}


@dataclass(frozen=True, kw_only=True)
class Sale:
    """Skeins of the oldest lot of a colourway, and who took them."""

    days_ago: int
    name: str
    base: str
    skeins: int
    to_whom: str
    reach: str = ""


SALES = (
    Sale(
        days_ago=22,
        name="Night Hedge",
        base="Byre DK",
        skeins=2,
        to_whom="Juna",
        reach="by letter",
    ),
    Sale(days_ago=18, name="Night Hedge", base="Byre DK", skeins=1, to_whom=SHOP),
    Sale(days_ago=18, name="Peat Smoke", base="Byre DK", skeins=3, to_whom=SHOP),
    Sale(
        days_ago=11,
        name="Low Tide",
        base="Byre DK",
        skeins=2,
        to_whom="The fair at Low Wood",
    ),
)
FAIRS = ((36, "The fair at Low Wood", 40), (8, SHOP, 14))
"""So many days ago, who took all that was dyed longer ago than so many days."""
KEPT = {(each.name, each.base) for each in SALES} | {MATCHED}
"""What is sold by the skein instead, or waits to be mended."""
COMPLAINT = ComplaintWords(
    from_whom="Juna",
    about=ComplaintAbout.BLEEDS,
    said="The first wash water was violet. Is that as it should be?",
)
BLEED = FastnessWords(
    kind=FastnessKind.BLEED,
    staining={"wool": 4.0, "cotton": 4.5},
    change=4.5,
    note="A snip of what is left here.",
)


def write_buyers(house: House) -> None:
    """Write down the sales, what tags say, the complaint and the test after it."""
    at, note = house.diary.at, house.diary.note
    note(at(60, "19:00"), house.ines, lambda _: _write_tags(house))
    for days_ago, to_whom, dyed_ago in FAIRS:
        sell_out = partial(_sell_out, house, to_whom, dyed_ago)
        note(at(days_ago, "17:30"), house.tam, sell_out)
    for sale in SALES:
        note(at(sale.days_ago, "15:10"), house.tam, partial(_sell, sale))
    note(at(4, "09:15"), house.ines, partial(_complain, house))


def _write_tags(house: House) -> None:
    keep_maker(MAKER)
    for name, words in YARNS.items():
        keep_yarn_words(house.bases[name], words)
    keep_region(replace(STARTERS[0], checked_on=today(), is_used=True))


def _sell(sale: Sale, stamp: Stamp) -> None:
    said = Sending(skeins=sale.skeins, to_whom=sale.to_whom, reach=sale.reach)
    send_out(number=_lot_of(sale.name, sale.base), said=said, stamp=stamp)


def _sell_out(house: House, to_whom: str, dyed_ago: int, stamp: Stamp) -> None:
    """Let somebody have what is left of the older lots."""
    lots = Lot.objects.filter(
        bath__dyed_on__lt=house.diary.day(dyed_ago), bath__is_swatch=False
    ).select_related("bath__version__recipe", "bath__base")
    numbers = [lot.number for lot in lots.order_by("id") if not _is_kept(lot)]
    for number, skeins in skeins_of_lots(numbers).items():
        if skeins.left:
            said = Sending(skeins=skeins.left, to_whom=to_whom)
            again = house.diary.stamp(stamp.by or house.tam)
            send_out(number=number, said=said, stamp=again)


def _is_kept(lot: Lot) -> bool:
    return (lot.bath.version.recipe.name, lot.bath.base.name) in KEPT


def _complain(house: House, stamp: Stamp) -> None:
    """Write down what Juna wrote, and test a snip of that lot."""
    sale = SALES[0]
    number = _lot_of(sale.name, sale.base)
    keep_complaint(said=replace(COMPLAINT, lot=number), stamp=stamp)
    tested = house.diary.at(3, "18:40")
    house.diary.note(tested, house.ines, lambda at: _test(number, at))


def _test(number: str, stamp: Stamp) -> None:
    keep_test(number=number, said=BLEED, stamp=stamp)


def _lot_of(name: str, base: str) -> str:
    """Return the oldest lot of first grade: it is sold before the others."""
    lots = Lot.objects.filter(
        bath__version__recipe__name=name,
        bath__base__name=base,
        bath__is_swatch=False,
        lines__act=LotAct.GRADED,
        lines__words=Grade.FIRST,
    )
    return lots.order_by("id").values_list("number", flat=True)[0]
