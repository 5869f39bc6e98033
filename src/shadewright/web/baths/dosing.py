"""What a bath is measured with: asked for on the plan, and shown beside each dose."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from shadewright.workflows.baths import PlannedDose
from shadewright.workflows.tools import ToolNow
from shadewright.workflows.tools_at_hand import AtHand, DosingWish

VOLUME, WEIGHT = "volume", "weight"
WAYS = {"": None, VOLUME: False, WEIGHT: True}
_TOOL = re.compile(r"tool-([1-9][0-9]?)", re.ASCII)


@dataclass(frozen=True, kw_only=True)
class Option:
    """A choice of a list."""

    value: str
    words: str
    is_chosen: bool


@dataclass(frozen=True, kw_only=True)
class ToolChoice:
    """What one dose is measured with; the list is empty where there is none."""

    name: str
    label: str
    options: tuple[Option, ...]


def tool_choice(dose: PlannedDose, place: int, tools: AtHand) -> ToolChoice:
    """Return the list of tools for a dose of stock; the first is as usual."""
    every = tools.scales if tools.is_by_weight else tools.ware
    said = tools.wish.tools.get(place)
    is_said = any(tool.id == said for tool in every)
    usual = "As usual" if is_said else _usual_words(dose.dosed.tool, tools)
    rest = (
        Option(value=str(t.id), words=t.name, is_chosen=t.id == said) for t in every
    )
    shown = bool(every) and bool(dose.shares)
    done = "weighed on" if tools.is_by_weight else "measured in"
    return ToolChoice(
        name=f"tool-{place}",
        label=f"{dose.dye_name} is {done}",
        options=(Option(value="", words=usual, is_chosen=not is_said), *rest)
        if shown
        else (),
    )


def said_dosing(sent: Mapping[str, Any], typed: Mapping[str, Any]) -> DosingWish:
    """Return what a form says of its tools; the lists of the doses are not fields."""
    return DosingWish(
        yarn_scale=sent["yarn_scale"] or None,
        is_by_weight=WAYS[sent["dosing"]],
        tools=dict(_tools(typed)),
    )


def dosing_said_before(wish: DosingWish) -> dict[str, str]:
    """Return the tools of a bath as its form has them."""
    way = next(way for way, said in WAYS.items() if said is wish.is_by_weight)
    return {
        "yarn_scale": str(wish.yarn_scale or ""),
        "dosing": way,
        **{f"tool-{place}": str(tool) for place, tool in wish.tools.items()},
    }


def scale_choices(tools: AtHand) -> list[tuple[str, str]]:
    """Return the scales that yarn could be weighed on."""
    scales = [(str(tool.id), tool.name) for tool in tools.scales]
    usual = tools.usual.yarn_scale
    words = "As fits the yarn" if usual is None else f"As usual: {usual.name}"
    return [("", words), *scales]


def way_choices(tools: AtHand) -> list[tuple[str, str]]:
    """Return the ways to take a dose."""
    usual = "by weight" if tools.usual.doses_by_weight else "in millilitres"
    return [
        ("", f"As usual: {usual}"),
        (VOLUME, "In millilitres"),
        (WEIGHT, "By weight: jug on the scale, tare, pour"),
    ]


def _usual_words(tool: ToolNow | None, tools: AtHand) -> str:
    if tool is None:
        return "Not said"
    usual = (tools.usual.dose_tool, tools.usual.dose_scale)
    is_usual = any(each is not None and each.id == tool.id for each in usual)
    return f"{'As usual' if is_usual else 'Best here'}: {tool.name}"


def _tools(typed: Mapping[str, Any]) -> Iterator[tuple[int, int]]:
    for name, value in typed.items():
        found, text = _TOOL.fullmatch(name), str(value)
        if found and text.isascii() and text.isdecimal() and len(text) < 10:
            yield int(found[1]), int(text)
