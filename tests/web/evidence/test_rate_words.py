"""What is said of how often predictions held."""

import pytest

from shadewright.web.evidence.predicting import rate_words
from shadewright.workflows.shades.outcomes import HitRate


@pytest.mark.parametrize(
    ("counted", "poor", "held", "poor_held", "verdict"),
    [
        (30, 0, 27, 0, "That is as it should be: an honest spread would hold 23 to 30"),
        (30, 0, 12, 0, "That is fewer than it should be"),
        (
            60,
            30,
            30,
            3,
            "Of the 30 that a meter read, 27 held. That is as it should be",
        ),
        (40, 35, 9, 5, "That is too few to judge by."),
    ],
)
def test_spreads_are_judged_by_what_a_meter_read(
    counted: int, poor: int, held: int, poor_held: int, verdict: str
) -> None:
    """Rough readings miss by themselves, and accuse no spread."""
    rate = HitRate(
        counted=counted,
        mixes=counted,
        held=held,
        poor=poor,
        poor_held=poor_held,
        fewest=23,
        most=30,
        median=1.0,
    )
    said = rate_words(rate)
    assert said[0].endswith(f"{held} held.")
    assert said[1].startswith(verdict)
    assert any("no measure of the spreads" in each for each in said) is bool(poor)
