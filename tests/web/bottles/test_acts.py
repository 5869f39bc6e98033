"""Every act on a bottle: written once, said in a note, taken back from it."""

import pytest

from shadewright.records.models import BottleLine, Dye, StockBottle
from shadewright.workflows.jars import jar
from shadewright.workflows.shelf import shelf, shelf_bottle
from tests.web.bottles.shelf import Bench

SENT: dict[str, tuple[dict[str, str], str]] = {
    "draw": ({"volume_ml": "35 ml", "note": "bath B2"}, "465 ml left"),
    "look": ({"look": "settled"}, "is marked settled"),
    "test": ({"strength_percent": "1,02"}, "is 1.02 % as tested"),
    "level": ({"volume_ml": "400", "is_evaporated": "yes"}, "400 ml at 1.25 %"),
    "water": ({"volume_ml": "0.5 l"}, "holds 1000 ml at 0.5 %"),
    "powder": ({"powder_g": "2.5", "jar": ""}, "holds 500 ml at 1.5 %"),
    "pour": ({"note": "mould"}, "poured away; its code is never used again"),
}


@pytest.mark.parametrize("act", SENT)
def test_it_is_written_once_and_can_be_taken_back(bench: Bench, act: str) -> None:
    typed, said = SENT[act]
    before, lines = bench.bottle, BottleLine.objects.count()
    page = bench.send(act, **typed)
    assert page.status == 200
    assert said in page.text
    again = bench.send(act, deed=bench.deeds[0], **typed)
    assert again.status == 200
    assert BottleLine.objects.count() == lines + 1
    assert bench.bottle != before
    bench.client.post(f"/undo/{bench.deeds[0]}/")
    assert bench.bottle == before


@pytest.mark.by_hand
def test_a_bottle_is_weighed_and_weighed_again(bench: Bench) -> None:
    # 500 ml; 560 g, then 520 g: 40 g are 40.1 ml of water, 95 % of a triangle of 1 g
    # lie within (1 − √0.05)/ρ = 0.778 ml, and 5 g of dye in 459.9 ml are 1.087 %.
    first = bench.send("weigh", gross_g="560", scale="", work_out="1")
    assert "This is the first weight" in first.text
    assert "500 ml at 1 %" in bench.send("weigh", gross_g="560", scale="").text
    assert "it weighed 560 g, and nothing was drawn since" in bench.see("weigh/").text
    told = bench.send("weigh", gross_g="520", scale="", work_out="1")
    assert "40.1 ml of water (± 0.8 ml) have gone: 460 ml are left" in told.text
    done = bench.send("weigh", gross_g="520", scale="")
    assert "460 ml at 1.09 %" in done.text
    assert "Weighed: 520 g, water has gone" in bench.see().text
    assert bench.see("water/").value("volume_ml") == "40.1"
    assert "Something came in" in bench.send("weigh", gross_g="600", scale="").text


def test_the_note_after_it_offers_undo(bench: Bench) -> None:
    page = bench.send("draw", volume_ml="35")
    assert f'action="/undo/{bench.deeds[0]}/"' in page.source


@pytest.mark.parametrize("look", ["clear", "settled", "stirred", "rewarmed"])
def test_each_look_has_a_key(bench: Bench, look: str) -> None:
    assert f'name="look" value="{look}"' in bench.see("look/").source
    assert bench.send("look", look=look).status == 200
    assert bench.bottle.is_settled is {"clear": False, "settled": True}.get(look)


def test_only_counted_leaves_the_strength(bench: Bench) -> None:
    bench.send("level", volume_ml="400", is_evaporated="no")
    assert (bench.bottle.volume_ml, bench.bottle.strength_percent) == (400.0, 1.0)


@pytest.mark.by_hand
def test_water_for_a_wanted_strength_is_worked_out_first(bench: Bench) -> None:
    page = bench.send("water", want_percent="0.8", work_out="1", note="kept")
    # 5 g make 625 ml of 0.8 %: 125 ml of water
    assert "125 ml of water bring it to 0.8 %." in page.text
    assert page.value("volume_ml") == "125"
    assert page.value("note") == "kept"
    assert bench.bottle.volume_ml == 500.0
    assert bench.send("water", volume_ml=page.value("volume_ml")).status == 200
    assert bench.bottle.strength_percent == pytest.approx(0.8)


def test_water_that_evaporated_is_offered_back(bench: Bench) -> None:
    bench.send("level", volume_ml="400", is_evaporated="yes")
    assert bench.see("water/").value("volume_ml") == "100"
    bench.send("water", volume_ml="60")
    assert bench.see("water/").value("volume_ml") == "40"


@pytest.mark.by_hand
def test_powder_for_a_wanted_strength_is_worked_out_first(bench: Bench) -> None:
    page = bench.send("powder", want_percent="1.5", jar=bench.jar_id, work_out="1")
    # 500 ml × (1.5 − 1) / 100 = 2.5 g
    assert "About 2.5 g of powder bring it to 1.5 %." in page.text
    assert page.value("powder_g") == "2.5"
    assert "Respirator" in page.text
    bench.send("powder", powder_g="2.5", jar=bench.jar_id)
    assert bench.bottle.strength_percent == pytest.approx(1.5)
    assert jar(bench.jar_id).left_g == pytest.approx(92.5)


@pytest.mark.by_hand
def test_stronger_stock_for_a_wanted_strength_is_worked_out_first(
    bench: Bench,
) -> None:
    page = bench.send("stock", want_percent="2", from_code=bench.stronger, work_out="1")
    # 500 × (2 − 1) / (4 − 2) = 250 ml
    assert f"250 ml of {bench.stronger} bring it to 2 %." in page.text
    bench.send("stock", volume_ml="250", from_code=bench.stronger)
    assert bench.bottle.strength_percent == pytest.approx(2.0)
    assert shelf_bottle(bench.stronger).volume_ml == 50.0


@pytest.mark.by_hand
def test_a_weaker_bottle_is_worked_out_and_filled(bench: Bench) -> None:
    typed = {"want_percent": "0.25", "volume_ml": "200", "place": "fridge"}
    page = bench.send("dilute", work_out="1", **typed)
    # 200 × 0.25 / 1 = 50 ml
    assert f"Draw 50 ml of {bench.code}; make up to 200 ml" in page.text
    assert StockBottle.objects.count() == 3
    filled = bench.send("dilute", **typed)
    (thin,) = [one for one in shelf() if one.strength_percent == 0.25]
    assert f"Bottle {thin.code} stands on the shelf" in filled.text
    assert thin.place == "fridge"
    bench.client.post(f"/undo/{bench.deeds[-1]}/")
    assert bench.bottle.volume_ml == 500.0


@pytest.mark.by_hand
def test_a_merge_shows_what_results_before_it_is_confirmed(bench: Bench) -> None:
    assert "Poured together" not in bench.see("merge/").source
    page = bench.send("merge", from_codes=[bench.stronger], work_out="1")
    # 5 g + 12 g in 800 ml = 2.125 %
    assert f"{bench.code} would hold 800 ml at 2.13 %" in page.text
    assert "A guess, since one of them is." in page.text
    assert "Poured together" in page.text
    merged = bench.send("merge", from_codes=[bench.stronger])
    assert "holds 800 ml at 2.13 %" in merged.text
    assert not shelf_bottle(bench.stronger).is_on_shelf
    bench.client.post(f"/undo/{bench.deeds[-1]}/")
    assert shelf_bottle(bench.stronger).volume_ml == 300.0


@pytest.mark.parametrize("act", ["stock", "merge"])
def test_where_nothing_can_be_poured_the_page_says_so(bench: Bench, act: str) -> None:
    bench.code = bench.other_dye
    page = bench.see(f"{act}/")
    assert "bottle of this dye" in page.text
    assert "stands on the shelf" in page.text
    assert "<form class" not in page.source


@pytest.mark.parametrize("is_metal", [True, False])
def test_where_stock_may_go_is_said(bench: Bench, *, is_metal: bool) -> None:
    Dye.objects.update(is_metal_complex=is_metal)
    page = bench.see("pour/")
    assert ("This dye holds a metal" in page.text) is is_metal
    for said in ("storm drain", "septic tank", "no bleach", "safety data sheet"):
        assert said in page.text


def test_what_stands_on_it_is_written_anew_and_kept(bench: Bench) -> None:
    assert bench.see("particulars/").value("dead_volume_ml") == "10"
    page = bench.send(
        "particulars",
        place="fridge",
        water="rain",
        discard_by="2199-01-31",
        dead_volume_ml="5",
        notes="",
    )
    assert "fridge" in page.text
    assert "5 ml cannot be drawn" in page.text
    assert "Until" in page.text
    assert "last drops 10.0 ml" in page.text
