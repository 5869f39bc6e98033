"""The guide shows what the terminal shows: every example is typed again."""

import re
from pathlib import Path

import pytest

from tests.cli.typed import Terminal

GUIDE = Path(__file__).parents[2] / "docs" / "guide"
_INDENTED = re.compile(r"(?:^    .*\n|^\n(?=    ))+", re.MULTILINE)
_TYPED = "shadewright "


def examples(page: str) -> list[tuple[str, str]]:
    """Return each line that is typed on a page, with what is shown below it."""
    text = (GUIDE / page).read_text(encoding="utf-8")
    blocks = (
        "\n".join(row[4:] for row in block.split("\n") if row.strip())
        for block in _INDENTED.findall(text)
    )
    typed = (block.replace("\\\n", "").removeprefix("$ ") for block in blocks)
    return [
        (line.removeprefix(_TYPED), shown)
        for line, _end, shown in (block.partition("\n") for block in typed)
        if line.startswith(_TYPED)
    ]


SHOWN = [
    *examples("command-line-stock.md"),
    *examples("command-line-bath.md"),
    *examples("command-line-acid.md"),
    *examples("command-line-heat.md"),
    *examples("command-line-difference.md"),
]


def test_the_guide_has_an_example_of_every_sum() -> None:
    sums = {" ".join(line.split()[:2]) for line, _shown in SHOWN}
    assert {line for line in sums if line.startswith("stock")} == {
        f"stock {name}" for name in ("make", "rescue", "dilute", "merge", "series")
    }
    assert {"bath --fibre", "acid --acid", "heat --water"} <= sums
    assert any(line.startswith("difference ") for line in sums)


@pytest.mark.parametrize(("line", "shown"), SHOWN)
def test_an_example_is_what_comes(typed: Terminal, line: str, shown: str) -> None:
    """What the guide shows is how the answer begins; the steps may follow."""
    answer = typed(line).out.replace("\u00a0", " ")
    assert answer.startswith(shown)
