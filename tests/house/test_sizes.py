"""Files and functions stay small enough to be read in one go."""

from pathlib import Path
from statistics import median, quantiles

import pytest

from tests.house.reading import CORE, ROOT, SOURCE, functions, name_of, texts

MOST_FILE_LINES = 300
MOST_LINES, MOST_LINES_OF_NINE_TENTHS, MOST_LINES_OF_HALF = 60, 25, 8
FREE = (CORE / "tables", SOURCE / "records" / "migrations")


def measured_files(*endings: str) -> dict[str, int]:
    return {
        name_of(path): text.count("\n")
        for path, text in texts(*endings)
        if not any(path.is_relative_to(folder) for folder in FREE)
    }


def body_lines() -> dict[str, int]:
    files = [ROOT / "start.py", *(path for path, _ in texts(".py", under=SOURCE))]
    return {
        function.where: function.body_lines
        for path in files
        if not any(path.is_relative_to(folder) for folder in FREE)
        for function in functions(path)
    }


@pytest.mark.parametrize("ending", [".py", ".html", ".js"])
def test_no_file_is_long(ending: str) -> None:
    sizes = measured_files(ending)
    assert {n: size for n, size in sizes.items() if size > MOST_FILE_LINES} == {}


def test_no_function_is_long() -> None:
    sizes = body_lines()
    assert {n: size for n, size in sizes.items() if size > MOST_LINES} == {}


def test_most_functions_are_short() -> None:
    sizes = list(body_lines().values())
    assert median(sizes) <= MOST_LINES_OF_HALF
    assert quantiles(sizes, n=10)[-1] <= MOST_LINES_OF_NINE_TENTHS


def test_lines_are_counted_without_docstring_and_blanks(tmp_path: Path) -> None:
    sample = tmp_path / "sample.py"
    sample.write_text(
        'def f():\n    """Say.\n\n    More.\n    """\n    a = 1\n\n    a\n'
    )
    assert [function.body_lines for function in functions(sample)] == [2]
