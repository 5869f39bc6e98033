"""A lot in the terminal: its trace back to the jars, and what changed."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from shadewright.cli.answers import as_json, say
from shadewright.cli.commands import SumGroup

if TYPE_CHECKING:
    from shadewright.workflows.trace_nodes import Node

_FOLDER = click.Path(file_okay=False, resolve_path=True, path_type=Path)


@click.group("lot", cls=SumGroup)
def lot() -> None:
    """Trace a lot back to the jars, or find what was different in it."""


@lot.command("trace")
@click.argument("number")
@click.option("--data", type=_FOLDER, help="Folder of the studio; by default your own.")
@as_json
def trace(*, number: str, data: Path | None, as_json: bool) -> None:
    """Say what went into lot NUMBER, as a tree."""
    from shadewright.cli.studio import open_own

    open_own(data)
    from shadewright.workflows.trace import trace_lot

    tree = trace_lot(number.strip().upper())
    if as_json:
        say(tree_values(tree), as_json=True, rows=())
    else:
        click.echo(tree_text(tree))


@lot.command("causes")
@click.argument("history", metavar="HISTORY.csv", type=click.Path(path_type=Path))
@click.option(
    "--lot", "lot", required=True, metavar="NUMBER", help="The lot that looks off."
)
@as_json
def causes(*, history: Path, lot: str, as_json: bool) -> None:
    """Say whether a lot is off, and what was most likely different."""
    from shadewright.cli.lot_causes import answer_causes

    answer_causes(history, number=lot.strip(), as_json=as_json)


def tree_text(node: "Node") -> str:
    """Return a trace as lines; what nobody wrote down begins with an ``!``."""
    return "\n".join([_line(node), *_below(node, indent="")])


def tree_values(node: "Node") -> dict[str, object]:
    """Return a trace as plain values."""
    return {
        "kind": node.kind.value,
        "name": node.name,
        "more": node.more,
        "key": node.key,
        "is_missing": node.is_missing,
        "below": [tree_values(one) for one in node.below],
    }


def _below(node: "Node", *, indent: str) -> list[str]:
    lines = []
    for one in node.below:
        is_last = one is node.below[-1]
        lines.append(f"{indent}{'└─ ' if is_last else '├─ '}{_line(one)}")
        lines += _below(one, indent=indent + ("   " if is_last else "│  "))
    return lines


def _line(node: "Node") -> str:
    more = f"  ({node.more})" if node.more else ""
    return f"{'! ' if node.is_missing else ''}{node.kind} {node.name}{more}"
