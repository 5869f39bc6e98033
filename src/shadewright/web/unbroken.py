"""Numbers of baths and lots, which no line breaks at their hyphen.

They stand in links, tables and sentences alike, so that a whole page is gone through
once, in place of each template that may hold one.
"""

import re

_APART = "title|option|textarea|script|style|svg|button"
"""Elements whose text is no text of the page, or is broken into no lines, and keys."""
_LINK_KEY = r'<a\b[^>]*\bclass="button\b[^>]*>.*?</a>'
"""A link that looks like a key: what stands in one is laid out piece by piece."""
_NUMBER = r"(?<![\w-])(?P<number>\d{6}-[BS]\d+)(?![\w-])"
_TAG_OR_NUMBER = re.compile(
    rf"<({_APART})\b.*?</\1>|{_LINK_KEY}|<[^>]*>|{_NUMBER}", re.DOTALL
)


def unbroken(html: str) -> str:
    """Return a page with each number in one piece.

    >>> unbroken('<a href="/lots/261126-B3/">Lot 261126-B3</a>')
    '<a href="/lots/261126-B3/">Lot <span class="lot-number">261126-B3</span></a>'
    >>> unbroken("<option>261126-B3</option>")
    '<option>261126-B3</option>'
    """
    return _TAG_OR_NUMBER.sub(_in_one_piece, html)


def _in_one_piece(found: re.Match[str]) -> str:
    number = found["number"]
    return f'<span class="lot-number">{number}</span>' if number else found[0]
