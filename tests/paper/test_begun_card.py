"""A card that is printed in the middle of a bath says what is over."""

import datetime as dt
from dataclasses import replace
from typing import Any

from shadewright.paper import bath_cards_pdf
from shadewright.paper.bath_card import cards_data
from tests.paper.baths import card
from tests.paper.pictures import words_on


def test_what_is_over_is_ticked_and_asks_for_nothing() -> None:
    """Who is handed it must not pour again."""
    over = {"fill": "Done: 11.5 l at 08:05", "dose-1": "Done: 66 ml at 08:12"}
    one = replace(card(), done=over, begun={"dose-2": "In so far: 1 g at 08:14"})
    data: Any = cards_data([one], paper="a4")
    steps = {step["key"]: step for step in data["cards"][0]["steps"]}
    for key, words in over.items():
        step = steps[key]
        assert (step["done"], step["text"], step["number"]) == (True, words, "")
        assert (step["code"], step["blanks"], step["caution"]) == ("", [], "")
    assert (steps["dose-2"]["done"], steps["dose-2"]["number"]) == (False, "12.5")
    words = words_on(bath_cards_pdf([one], printed_on=dt.date(2026, 11, 25)))
    for part in ("Done: 66 ml at 08:12", "In so far: 1 g at 08:14"):
        assert part in words
    assert "60 ml" not in words
