"""Templates keep what the content security policy demands, and hide no dead code."""

import re

import pytest

from tests.house.reading import SOURCE, name_of, texts

# Each pattern with a sample that it must find.
MARKUP = {
    "a style in an attribute": (
        r"<[^>]*\sstyle\s*=",
        '<p class="a" style="color:red">',
    ),
    "a style sheet within": (r"<style\b", "<style>p {}</style>"),
    "a script within": (
        r"<script\b(?![^>]*\ssrc=)",
        '<script type="module">go()</script>',
    ),
    "a script in an attribute": (
        r"<[^>]*\son[a-z]+\s*=",
        '<a href="/" onclick="go()">',
    ),
    "a script in a link": (r"=\s*[\"']?javascript:", '<a href="javascript:go()">'),
    "something from outside": (
        r"(?:src|href|action)=[\"'](?:https?:)?//",
        '<img src="//elsewhere.example/a.png">',
    ),
    "markup that is switched off": (r"<!--", "<!-- <p> -->"),
}
CODE = {
    "code that is switched off": (
        r"{%\s*comment\b",
        "{% comment %}<p>{% endcomment %}",
    ),
    "text that is not escaped": (r"\|\s*safe\b|{%\s*autoescape off", "{{ name|safe }}"),
}
BANNED = MARKUP | CODE


def found_in(text: str, fault: str) -> str:
    """Return the fault as it stands there, or nothing."""
    markup = re.sub(r"{%.*?%}|{{.*?}}", "", text) if fault in MARKUP else text
    match = re.search(BANNED[fault][0], markup)
    return match.group() if match else ""


@pytest.mark.parametrize("fault", BANNED)
def test_no_template_has(fault: str) -> None:
    templates = texts(".html", ".svg", under=SOURCE)
    found = {name_of(path): found_in(text, fault) for path, text in templates}
    assert {name: words for name, words in found.items() if words} == {}


@pytest.mark.parametrize("fault", BANNED)
def test_it_would_be_found(fault: str) -> None:
    assert found_in(BANNED[fault][1], fault)


def test_what_is_allowed_is_let_through() -> None:
    sample = '<script src="/static/bench.js" defer></script><b{% if one == 1 %} id=a>'
    assert not any(found_in(sample, fault) for fault in BANNED)


def token_lost_in(templates: dict[str, str]) -> set[str]:
    """Return what is included alone, without the token that its forms send."""
    found = set()
    for name, text in templates.items():
        for other, said in re.findall(r'{% include "([^"]+)"([^%]*) only %}', text):
            if "{% csrf_token %}" in with_parts(other, templates):
                found |= set() if "csrf_token=" in said else {f"{other} in {name}"}
    return found


def with_parts(name: str, templates: dict[str, str]) -> str:
    """Return a template with all that it includes."""
    text = templates.get(name, "")
    parts = re.findall(r'{% include "([^"]+)"', text)
    return text + "".join(with_parts(part, templates) for part in parts if part != name)


def test_a_form_that_is_included_keeps_its_token() -> None:
    """``only`` takes the token away with all else: whatever is sent is refused."""
    templates = {
        str(path).partition("/templates/")[2]: text
        for path, text in texts(".html", under=SOURCE)
    }
    assert token_lost_in(templates) == set()


def test_a_lost_token_would_be_found() -> None:
    sample = {
        "part.html": "<form>{% csrf_token %}</form>",
        "middle.html": '{% include "part.html" with a=b csrf_token=csrf_token only %}',
        "page.html": '{% include "middle.html" with a=b only %}',
    }
    assert token_lost_in(sample) == {"middle.html in page.html"}
