"""A bottle's own page."""

import re
from datetime import date

import pytest

from shadewright.records.models import Dye, StockBottle
from shadewright.workflows.bottles import Look, draw, look_at, pour_away
from shadewright.workflows.undo import undo
from tests.web.bottles.shelf import Bench
from tests.web.sample import HOSTILE
from tests.workflows.bench import now


def test_it_says_what_is_true_now(bench: Bench) -> None:
    page = bench.see()
    assert page.status == 200
    assert f"<h1>Slate, bottle {bench.code}</h1>" in page.source
    for said in (
        "True strength 1 %",
        "Weighed. How sure is not known: what the powder was weighed on",
        "500 ml left, 490 ml of it usable",
        "Made: 5 g from jar J-1, to 500 ml",
        "What is left follows from these lines; nothing is deleted",
        "10 ml cannot be drawn",
        "true strength, version 1",
    ):
        assert said in page.text, said
    assert "±" not in page.text
    assert f"/jars/{bench.jar_id}/" in page.links
    assert f"/bottles/{bench.code}/label.pdf" in page.links


@pytest.mark.parametrize(
    "act",
    [
        "draw",
        "look",
        "strength-test",
        "level",
        "weigh",
        "water",
        "powder",
        "dilute",
        "merge",
        "pour",
    ],
)
def test_every_act_is_one_key_away(bench: Bench, act: str) -> None:
    address = f"/bottles/{bench.code}/{act}/"
    assert address in bench.see().links
    assert bench.see(f"{act}/").status == 200


def test_a_guess_says_so(bench: Bench) -> None:
    page = bench.client.get(f"/bottles/{bench.stronger}/").content.decode()
    assert "As labelled: a guess" in page
    assert '<span class="chip guess">a guess</span>' in page


def test_a_code_may_be_typed_small(bench: Bench) -> None:
    assert bench.client.get(f"/bottles/{bench.code.lower()}/").status_code == 200


@pytest.mark.parametrize("act", ["", "draw/"])
def test_a_bottle_that_never_was_is_not_found(bench: Bench, act: str) -> None:
    bench.code = "nobody"
    page = bench.see(act)
    assert page.status == 404
    assert "There is no bottle “NOBODY”." in page.text


def test_an_act_that_is_none_is_not_found(bench: Bench) -> None:
    assert bench.see("dance/").status == 404


def test_a_settled_bottle_says_what_to_do_and_draws_no_more(bench: Bench) -> None:
    look_at(code=bench.code, look=Look.SETTLED, stamp=now())
    page = bench.see()
    assert "Settled: do not draw from it yet" in page.text
    assert "Re-warm it to 60–80 °C" in page.text
    assert "safety data sheet" in page.text
    first = re.search(r'class="button first" href="([^"]*)"', page.source)
    assert first is not None
    assert first[1] == f"/bottles/{bench.code}/look/"
    assert "Settled: do not draw" in bench.see("draw/").text
    drawing = bench.see("draw/")
    assert "Nothing is drawn from it until it is clear again." in drawing.text
    assert f"/bottles/{bench.code}/look/" in drawing.links
    assert 'name="volume_ml"' not in drawing.source


def test_a_settled_bottle_is_re_warmed_before_it_can_be_called_clear(
    bench: Bench,
) -> None:
    look_at(code=bench.code, look=Look.SETTLED, stamp=now())
    page = bench.see("look/")
    assert 'class="button first" name="look" value="rewarmed"' in page.source
    assert 'value="clear"' not in page.source
    refused = bench.send("look", look="clear")
    assert refused.status == 422
    assert "not re-warmed since" in refused.text
    bench.send("look", look="rewarmed")
    assert 'class="button first" name="look" value="clear"' in bench.see("look/").source
    warmed = bench.see().text
    assert "Re-warmed: look before you draw from it" in warmed
    assert "Re-warm it to" not in warmed
    bench.send("look", look="clear")
    assert "Settled" not in bench.see().text


def test_an_undone_line_stays_struck_through(bench: Bench) -> None:
    stamp = now()
    draw(code=bench.code, volume_ml=35, stamp=stamp, note="bath B2")
    assert f'action="/undo/{stamp.deed}/"' in bench.see().source
    undo(deed=stamp.deed, stamp=now())
    page = bench.see()
    assert '<span class="undone">Drawn</span> <span class="quiet">undone' in page.source
    assert "Undone: Drawn" in page.text
    assert f'action="/undo/{stamp.deed}/"' not in page.source


def test_a_bottle_that_is_gone_keeps_its_page_and_loses_its_acts(bench: Bench) -> None:
    pour_away(code=bench.code, stamp=now(), note="mould")
    page = bench.see()
    assert "poured away" in page.text
    assert "mould" in page.text
    assert f"/bottles/{bench.code}/draw/" not in page.links
    refused = bench.see("draw/")
    assert refused.status == 409
    assert "is poured away: nothing more can be done to it" in refused.text


def test_no_text_becomes_markup(bench: Bench) -> None:
    Dye.objects.update(hazard_words=HOSTILE)
    StockBottle.objects.update(place=HOSTILE[:40], notes=HOSTILE, water=HOSTILE)
    draw(code=bench.code, volume_ml=1, stamp=now(), note=HOSTILE)
    assert "<script>alert" not in bench.see().source


def test_a_label_that_no_longer_holds_is_said(bench: Bench) -> None:
    StockBottle.objects.filter(code=bench.code).update(labelled_percent=0.8)
    assert "label is out of date" in bench.see().text


def test_the_day_to_discard_by_stands_there(bench: Bench) -> None:
    StockBottle.objects.update(discard_by=date(2199, 1, 31))
    assert "31 January 2199" in bench.see().text
