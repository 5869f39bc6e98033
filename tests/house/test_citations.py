"""What is cited stands in the bibliography, and what stands there is cited.

A source is cited as ``[key2008]_`` in running text and as ``.. [key2008] where``
under References, in docstrings and docs alike; in published cases as
``source = "key2008"``, several with commas between.
"""

import re

from tests.house.reading import DOCS, ROOT, SOURCE, texts

BIBLIOGRAPHY = DOCS / "bibliography.bib"
ENTRY = re.compile(r"^@\w+\{([^,\s]+),", re.MULTILINE)
CITED = re.compile(r"\[([a-z]+\d*)\]_|^\s*\.\. \[([a-z]+\d*)\] ", re.MULTILINE)
CITED_IN_A_CASE = re.compile(r'^source = "([^"]+)"', re.MULTILINE)


def cited(text: str) -> set[str]:
    pairs = CITED.findall(text)
    lists = CITED_IN_A_CASE.findall(text)
    return {key for pair in pairs for key in pair if key} | {
        key for keys in lists for key in keys.split(", ")
    }


def all_cited() -> dict[str, str]:
    found = [
        *texts(".py", under=SOURCE),
        *texts(".toml", under=ROOT / "tests"),
        *texts(".md", under=DOCS),
    ]
    return {key: path.name for path, text in found for key in cited(text)}


def entries() -> list[str]:
    return ENTRY.findall(BIBLIOGRAPHY.read_text(encoding="utf-8"))


def test_every_source_cited_is_in_the_bibliography() -> None:
    assert {k: where for k, where in all_cited().items() if k not in entries()} == {}


def test_every_source_in_the_bibliography_is_cited() -> None:
    assert set(entries()) - set(all_cited()) == set()


def test_no_source_stands_twice() -> None:
    assert len(entries()) == len(set(entries()))


def test_references_name_the_place() -> None:
    """A key alone sends the reader through a whole book."""
    bare = re.compile(r"^\s*\.\. \[([a-z]+\d*)\]\s*$", re.MULTILINE)
    found = {p.name: bare.findall(text) for p, text in texts(".py", under=SOURCE)}
    assert {name: keys for name, keys in found.items() if keys} == {}


def test_citations_are_seen() -> None:
    prose = "As [kell1975]_ says.\n    .. [nist2008] table 3\n[not]"
    case = 'source = "eu1007, clp2008"'
    assert cited(f"{prose}\n{case}") == {"kell1975", "nist2008", "eu1007", "clp2008"}
