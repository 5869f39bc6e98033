"""How an answer is said: one JSON object, or a short text for a person."""

import json
from collections.abc import Iterable, Mapping, Sequence

import click

WIDTH = 78

Rows = Sequence[tuple[str, str]]

as_json = click.option(
    "--json", "as_json", is_flag=True, help="Answer with one JSON object."
)

UNCHECKED = (
    "An unchecked kitchen scale is commonly off by two to four of its steps: check "
    "it with a known weight, and give its error as 0.1g+-0.2g."
)


def say(
    answer: Mapping[str, object],
    *,
    as_json: bool,
    rows: Rows,
    warnings: Iterable[str] = (),
    after: str = "",
) -> None:
    """Print an answer: all of it as JSON, or its rows, warnings and what follows."""
    if as_json:
        click.echo(json.dumps(answer, allow_nan=False))
        return
    click.echo(aligned(rows))
    for warning in warnings:
        click.echo(wrapped(warning, first="! ", rest="  "))
    if after:
        click.echo(after)


def aligned(rows: Rows) -> str:
    """Return rows of label and text with the texts under each other."""
    width = max((len(label) for label, _text in rows), default=0)
    return "\n".join(f"{label:<{width}}  {text}" for label, text in rows)


def wrapped(text: str, *, first: str, rest: str) -> str:
    """Return a sentence in lines that fit a terminal; amounts stay whole."""
    lines: list[str] = []
    line = first
    for word in text.split(" "):
        if len(line) + len(word) > WIDTH and line.strip():
            lines.append(line.rstrip())
            line = rest
        line += f"{word} "
    return "\n".join([*lines, line.rstrip()])
