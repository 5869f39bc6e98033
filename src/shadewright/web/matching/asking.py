"""What an address asks to be found, and how a wish is written into one."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from django.http import QueryDict

from shadewright.core.colour import Light
from shadewright.core.mixing import Palette
from shadewright.core.quantities import (
    amount_text,
    number_text,
    percent,
    require_between,
)
from shadewright.errors import InputError, OutOfRangeError
from shadewright.web.amounts import some_mass
from shadewright.web.asking import number_asked, number_of
from shadewright.web.targets import target_asked, target_query
from shadewright.workflows.shades.find_wishes import FindWish
from shadewright.workflows.shades.mixing_page import palette_bases
from shadewright.workflows.shades.wanted import Wanted

JUDGED_UNDER = (Light.A, Light.LED_B3, Light.FL11)
_MOST_TOLERANCE = 20.0


@dataclass(frozen=True, kw_only=True)
class Asked:
    """A wish as an address says it, with what is only for saving."""

    wish: FindWish
    parent_id: int | None = None
    like_id: int | None = None

    @property
    def query(self) -> str:
        """The same as the parts of an address; what is as usual is left out."""
        return urlencode(query_of(self), doseq=True, safe=":,")


def asked_of(said: QueryDict, palette: Palette) -> Asked | None:
    """Return what an address asks for, or None where it names no colour."""
    plain = {key: str(said[key]) for key in said}
    wanted = target_asked(plain)
    if wanted is None:
        return None
    usual = FindWish(wanted=wanted, base_id=0)
    wish = FindWish(
        wanted=wanted,
        base_id=_base(plain, palette, wanted),
        batch_g=_number(plain, "grams", usual.batch_g),
        tolerance=_number(plain, "tolerance", usual.tolerance),
        most_dyes=int(_number(plain, "most", usual.most_dyes)),
        most_depth_percent=_number(plain, "depth", usual.most_depth_percent),
        is_on_shelf="shelf" in plain,
        is_without_metal="nometal" in plain,
        with_dyes=_numbers(plain, "with"),
        without_dyes=_numbers(plain, "without"),
        lights=tuple(x for x in JUDGED_UNDER if x in said.getlist("light"))
        or usual.lights,
    )
    return Asked(
        wish=wish,
        parent_id=number_asked(plain, "version", kind="version"),
        like_id=number_asked(plain, "like", kind="version"),
    )


def query_of(asked: Asked) -> dict[str, str | list[str]]:
    """Return a wish as the parts of an address; what is as usual is left out."""
    wish = asked.wish
    usual = FindWish(wanted=wish.wanted, base_id=0)
    query: dict[str, str | list[str]] = {**target_query(wish.wanted)}
    query["base"] = str(wish.base_id)
    numbers = (
        ("grams", wish.batch_g, usual.batch_g),
        ("tolerance", wish.tolerance, usual.tolerance),
        ("most", wish.most_dyes, usual.most_dyes),
        ("depth", wish.most_depth_percent, usual.most_depth_percent),
    )
    query |= {key: f"{said:g}" for key, said, as_usual in numbers if said != as_usual}
    marks = (("shelf", wish.is_on_shelf), ("nometal", wish.is_without_metal))
    query |= {key: "on" for key, is_said in marks if is_said}
    ids = (("with", wish.with_dyes), ("without", wish.without_dyes))
    query |= {key: ",".join(map(str, said)) for key, said in ids if said}
    if wish.lights != usual.lights:
        query["light"] = [str(light) for light in wish.lights]
    links = (("version", asked.parent_id), ("like", asked.like_id))
    return query | {key: str(said) for key, said in links if said is not None}


def filter_words(wish: FindWish) -> str:
    """Say what is asked of the recipes that is not as usual."""
    usual = FindWish(wanted=wish.wanted, base_id=0)
    most, depth = wish.most_dyes, wish.most_depth_percent
    said = (
        (wish.is_on_shelf, "only what is on the shelf"),
        (wish.is_without_metal, "no metal-complex dyes"),
        (most != usual.most_dyes, f"at most {most} dye{'s' if most > 1 else ''}"),
        (
            depth != usual.most_depth_percent,
            f"all dyes together at most {amount_text(depth, '%')}",
        ),
        (bool(wish.with_dyes), "some dyes must be in it"),
        (bool(wish.without_dyes), "some dyes are left out"),
    )
    words = "; ".join(words for is_said, words in said if is_said)
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def _base(said: Mapping[str, str], palette: Palette, wanted: Wanted) -> int:
    """Return the base that is named, else the colour’s own, else the first."""
    named = number_asked(said, "base", kind="base")
    if named is not None:
        return named
    bases = [base.id for base in palette_bases(palette)]
    if wanted.base_id in bases or not bases:
        return wanted.base_id or 0
    return bases[0]


def _number(said: Mapping[str, str], name: str, usual: float) -> float:
    text = said.get(name, "").strip()
    return _READ[name](text) if text else float(usual)


def _numbers(said: Mapping[str, str], name: str) -> tuple[int, ...]:
    parts = filter(None, said.get(name, "").split(","))
    return tuple(number_of(part, kind="dye", argument=name) for part in parts)


def _grams(text: str) -> float:
    try:
        return some_mass(text, name="The batch")
    except InputError as error:
        error.argument = "grams"
        raise


def _depth(text: str) -> float:
    return percent(text, name="Depth of all dyes", argument="depth", default_unit="%")


def _plain(text: str, *, name: str, argument: str, least: float, most: float) -> float:
    try:
        value = float(text.replace(",", "."))
    except ValueError:
        raise OutOfRangeError(
            name=name,
            given=f"“{text[:20]}”",
            allowed=f"a number from {number_text(least, digits=3)} "
            f"to {number_text(most, digits=3)}",
            argument=argument,
        ) from None
    return require_between(
        value, least=least, most=most, unit="", name=name, argument=argument
    )


def _tolerance(text: str) -> float:
    return _plain(
        text, name="Tolerance", argument="tolerance", least=0.1, most=_MOST_TOLERANCE
    )


def _most(text: str) -> float:
    return _plain(text, name="Most dyes", argument="most", least=1, most=4)


_READ = {"grams": _grams, "tolerance": _tolerance, "most": _most, "depth": _depth}
