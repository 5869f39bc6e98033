"""Every command explains itself, and stands in the guide."""

from collections.abc import Iterator

import click
import pytest

from shadewright.cli.entry import shadewright
from tests.house.reading import DOCS, ROOT


def commands(command: click.Command, name: str) -> Iterator[tuple[str, click.Command]]:
    """Return a command and those below it, each with its whole name."""
    yield name, command
    if isinstance(command, click.Group):
        context = click.Context(command)
        for word in command.list_commands(context):
            below = command.get_command(context, word)
            assert below is not None
            yield from commands(below, f"{name} {word}")


def unexplained(command: click.Command) -> list[str]:
    """Return what a command leaves without a word of help."""
    options = [
        parameter.opts[0]
        for parameter in command.params
        if isinstance(parameter, click.Option) and not (parameter.help or "").strip()
    ]
    return options if (command.help or "").strip() else ["the command", *options]


def test_every_command_and_option_has_help() -> None:
    found = {name: unexplained(c) for name, c in commands(shadewright, "shadewright")}
    assert {name: words for name, words in found.items() if words} == {}


def test_every_command_stands_in_the_guide() -> None:
    pages = [*(DOCS / "guide").glob("*.md"), ROOT / "README.md"]
    guide = "\n".join(page.read_text(encoding="utf-8") for page in pages)
    verbs = {
        name
        for name, command in commands(shadewright, "shadewright")
        if not isinstance(command, click.Group)
    }
    assert {name for name in verbs if name not in guide} == set()


@pytest.mark.parametrize(
    ("text", "expected"), [("Say.", ["-x"]), ("", ["the command"])]
)
def test_a_silent_command_is_found(text: str, expected: list[str]) -> None:
    command = click.Command("c", help=text, params=[click.Option(["-x"])])
    assert unexplained(command)[: len(expected)] == expected
