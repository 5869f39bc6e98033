"""The examples in docstrings and in the docs run, and give what they say."""

import doctest
from importlib import import_module
from pathlib import Path

import pytest
from sybil import Sybil
from sybil.parsers.markdown import PythonCodeBlockParser

from tests.house.reading import DOCS, SOURCE, module_name, name_of, texts

MODULES = [module_name(p) for p, text in texts(".py", under=SOURCE) if ">>> " in text]
PAGES = [path for path, text in texts(".md", under=DOCS) if ">>> " in text]
BLOCKS = Sybil(parsers=[PythonCodeBlockParser()])


@pytest.mark.parametrize("name", MODULES)
def test_examples_of_a_module(name: str) -> None:
    result = doctest.testmod(import_module(name))
    assert result.failed == 0
    assert result.attempted > 0


def run_page(path: Path) -> int:
    """Run the examples of a page, those with a prompt; return how many there were."""
    found = BLOCKS.parse(path).examples()
    examples = [each for each in found if isinstance(each.parsed, doctest.Example)]
    for example in examples:
        example.evaluate()
    return len(examples)


def test_examples_of_the_docs() -> None:
    assert [name_of(path) for path in PAGES if not run_page(path)] == []


def test_a_wrong_example_is_found(tmp_path: Path) -> None:
    page = tmp_path / "page.md"
    page.write_text("# Sums\n\n```python\n>>> 1 + 1\n3\n```\n", encoding="utf-8")
    with pytest.raises(AssertionError, match="Expected"):
        run_page(page)
