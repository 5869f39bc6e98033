"""The strength test as a guided task: measure out, dye, look, write down."""

import pytest

from shadewright.workflows.bottles import Look, draw, look_at
from shadewright.workflows.shelf import shelf_bottle
from tests.web.bottles.shelf import Bench
from tests.workflows.bench import entered, now


@pytest.fixture
def fresh(bench: Bench) -> str:
    """The fresh bottle; the one at the bench is an old one of its dye."""
    fresh, bench.code = bench.code, entered(bench.bottle.dye_id).code
    return fresh


def test_it_is_measured_out_drawn_and_read(bench: Bench, fresh: str) -> None:
    old = bench.code
    assert f"/bottles/{old}/strength-test/" in bench.see().links
    page = bench.see("strength-test/")
    for said in ("40 ml", "45 ml", "50 ml", "55 ml", f"{old} thinned"):
        assert said in page.text
    assert f"It takes 20 ml of {fresh} and 6 ml of {old}" in page.text
    assert 'class="button first" name="go" value="drawn"' in page.source

    drawn = bench.send("strength-test", go="drawn")
    assert "The draw is written down." in drawn.text
    assert 'class="button first" name="go" value="read"' in drawn.source
    assert shelf_bottle(old).volume_ml == pytest.approx(494)

    found = bench.send("strength-test", go="read", reading="80-90")
    assert f"{old} is 0.85 % as tested" in found.text
    assert f"looked like between 80 % and 90 % of {fresh}" in found.text
    again = bench.see("strength-test/")
    assert "The draw is written down." not in again.text


@pytest.mark.parametrize(
    ("reading", "said"),
    [
        ("paler", "is no strength, only a bound"),
        ("deeper", "water has gone, or the label is wrong"),
        ("", "It looks like is missing."),
        ("85", "must be one of those offered"),
    ],
)
@pytest.mark.usefixtures("fresh")
def test_what_is_no_reading_is_told_so(bench: Bench, reading: str, said: str) -> None:
    page = bench.send("strength-test", go="read", reading=reading)
    assert page.status == 422
    assert said in page.text
    assert bench.bottle.is_strength_guess


def test_without_a_fresh_bottle_one_is_made_first(bench: Bench, fresh: str) -> None:
    draw(code=fresh, volume_ml=shelf_bottle(fresh).volume_ml, stamp=now())
    page = bench.see("strength-test/")
    assert "Nothing to test it beside" in page.text
    assert f"/stocks/new/?dye={bench.bottle.dye_id}" in page.links


@pytest.mark.usefixtures("fresh")
def test_a_settled_bottle_is_not_tested(bench: Bench) -> None:
    look_at(code=bench.code, look=Look.SETTLED, stamp=now())
    page = bench.see("strength-test/")
    assert page.status == 409
    assert "would be too pale" in page.text
