"""A page as a person reads it: its words, its links, its fields and their faults."""

import html
import re
from dataclasses import dataclass

from django.http.response import HttpResponseBase


@dataclass(frozen=True)
class Answer:
    """What came back."""

    status: int
    source: str

    @property
    def text(self) -> str:
        """The words of the page, each space a plain one."""
        bare = re.sub(
            r"<(script|style|title)\b.*?</\1>", " ", self.source, flags=re.DOTALL
        )
        words = html.unescape(re.sub(r"<[^>]*>", " ", bare))
        return " ".join(words.split())

    @property
    def links(self) -> list[str]:
        """Where the page leads."""
        return [
            html.unescape(one) for one in re.findall(r'href="([^"]*)"', self.source)
        ]

    @property
    def pictures(self) -> list[str]:
        """Where its pictures come from."""
        return [
            html.unescape(one)
            for one in re.findall(r'<img[^>]*src="([^"]*)"', self.source)
        ]

    def value(self, name: str) -> str:
        """What stands in a field."""
        tag = re.search(rf'<input[^>]*name="{name}"[^>]*>', self.source)
        assert tag is not None, name
        found = re.search(r'value="([^"]*)"', tag[0])
        return html.unescape(found[1]) if found else ""

    def fault(self, name: str) -> str:
        """The sentence by a field, if there is one."""
        found = re.search(
            rf'<span class="wrong" id="id_{name}_error">(.*?)</span>', self.source
        )
        return " ".join(html.unescape(found[1]).split()) if found else ""


def read(response: HttpResponseBase) -> Answer:
    """Read an answer of the test client, the number of a lot as one word."""
    source = getattr(response, "content", b"").decode()
    source = re.sub(r'<span class="lot-number">([^<]*)</span>', r"\1", source)
    return Answer(status=response.status_code, source=source)
