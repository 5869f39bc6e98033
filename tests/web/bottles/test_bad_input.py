"""What no bottle can do: one sentence by the field, and what was typed stays."""

import pytest

from shadewright.records.models import BottleLine, StockBottle
from shadewright.workflows.bottles import pour_away
from shadewright.workflows.undo import undo
from tests.web.bottles.shelf import Bench
from tests.web.sample import HOSTILE
from tests.workflows.bench import made, now

NO_VOLUMES = ["", "−5", "-5 ml", "0", "much", "5 g", "1,500", "1e9", "2000 l", "nan"]
NO_STRENGTHS = ["", "-1", "0", "strong", "5 g", "51", "1e3", "inf %"]
CASES = [
    *(("draw", "volume_ml", typed, {}) for typed in [*NO_VOLUMES, "501"]),
    *(("test", "strength_percent", typed, {}) for typed in NO_STRENGTHS),
    *(
        ("level", "volume_ml", typed, {"is_evaporated": "yes"})
        for typed in ["", "-1", "0", "full", "501", "9", "2000 l"]
    ),
    ("level", "is_evaporated", "perhaps", {"volume_ml": "400"}),
    ("level", "is_evaporated", "", {"volume_ml": "400"}),
    *(("water", "volume_ml", typed, {}) for typed in NO_VOLUMES),
    *(
        ("powder", "powder_g", typed, {"jar": ""})
        for typed in ["", "-1", "0", "a spoon", "1 tsp", "5 ml", "246", "1e9"]
    ),
    ("powder", "jar", "999", {"powder_g": "1"}),
    ("powder", "jar", HOSTILE, {"powder_g": "1"}),
    *(
        ("dilute", "want_percent", typed, {"volume_ml": "100"})
        for typed in NO_STRENGTHS
    ),
    ("dilute", "want_percent", "1.1", {"volume_ml": "100"}),
    ("dilute", "volume_ml", "1001", {"want_percent": "0.5"}),
    ("dilute", "discard_by", "2026-02-30", {"want_percent": "0.5", "volume_ml": "10"}),
    ("dilute", "discard_by", "1999-01-01", {"want_percent": "0.5", "volume_ml": "10"}),
    ("dilute", "place", "x" * 41, {"want_percent": "0.5", "volume_ml": "10"}),
    ("particulars", "dead_volume_ml", "-1", {}),
    ("particulars", "discard_by", "1999-01-01", {"dead_volume_ml": "10"}),
    ("particulars", "discard_by", "soon", {"dead_volume_ml": "10"}),
    ("particulars", "place", "x" * 41, {"dead_volume_ml": "10"}),
    ("draw", "note", "x" * 301, {"volume_ml": "1"}),
    ("pour", "note", "x" * 301, {}),
]


@pytest.mark.parametrize(("act", "name", "typed", "rest"), CASES)
def test_it_is_refused_by_its_field(
    bench: Bench, act: str, name: str, typed: str, rest: dict[str, str]
) -> None:
    lines = BottleLine.objects.count()
    page = bench.send(act, **{name: typed, **rest})
    assert page.status == 422
    said = page.fault(name)
    assert said, page.text
    assert said.endswith(".")
    assert said.count(". ") <= 1
    assert BottleLine.objects.count() == lines
    if name not in {"jar", "is_evaporated"}:
        assert page.value(name) == typed
    for other, kept in rest.items():
        if other not in {"jar", "is_evaporated"}:
            assert page.value(other) == kept


def test_powder_that_the_jar_lacks_is_refused(bench: Bench) -> None:
    page = bench.send("powder", powder_g="96", jar=bench.jar_id)
    assert page.status == 422
    assert "at most the 95 g that jar J-1 holds" in page.fault("powder_g").replace(
        "\u00a0", " "
    )


@pytest.mark.parametrize("source", ["other_dye", "code", "nobody"])
@pytest.mark.parametrize(
    ("act", "name", "rest"),
    [("stock", "from_code", {"volume_ml": "10"}), ("merge", "from_codes", {})],
)
def test_only_a_bottle_that_is_offered_is_poured_over(
    bench: Bench, source: str, act: str, name: str, rest: dict[str, str]
) -> None:
    page = bench.send(act, **{name: getattr(bench, source, "T7KK"), **rest})
    assert page.status == 422
    assert page.fault(name)
    assert bench.bottle.volume_ml == 500.0


@pytest.mark.parametrize(
    ("act", "typed", "name"),
    [
        ("water", {"want_percent": ""}, "want_percent"),
        ("water", {"want_percent": "2"}, "want_percent"),
        ("water", {"want_percent": "weak"}, "want_percent"),
        ("powder", {"want_percent": "0.5", "jar": ""}, "want_percent"),
        ("powder", {"want_percent": "60", "jar": ""}, "want_percent"),
        ("stock", {"want_percent": "0.5"}, "want_percent"),
        ("dilute", {"want_percent": "2", "volume_ml": "9"}, "want_percent"),
        ("dilute", {"want_percent": "0.5", "volume_ml": ""}, "volume_ml"),
        ("merge", {}, "from_codes"),
    ],
)
def test_what_cannot_be_worked_out_is_refused_too(
    bench: Bench, act: str, typed: dict[str, str], name: str
) -> None:
    more = {"from_code": bench.stronger} if act == "stock" else {}
    page = bench.send(act, work_out="1", **typed, **more)
    assert page.status == 422
    assert page.fault(name)


def test_more_than_a_bottle_holds_is_said_when_it_is_worked_out(bench: Bench) -> None:
    page = bench.send("dilute", want_percent="0.5", volume_ml="1200", work_out="1")
    assert f"{bench.code} holds 500 ml only." in page.text
    page = bench.send("stock", want_percent="3", from_code=bench.stronger, work_out="1")
    assert f"{bench.stronger} holds 300 ml only." in page.text


@pytest.mark.parametrize("act", ["draw", "water", "level", "test", "pour"])
def test_a_bottle_that_is_gone_refuses_at_the_head(bench: Bench, act: str) -> None:
    pour_away(code=bench.code, stamp=now())
    page = bench.send(
        act, volume_ml="5", strength_percent="1", is_evaporated="no", note=""
    )
    assert page.status == 422
    assert "was poured away" in page.text


def test_a_bottle_that_was_taken_back_refuses(bench: Bench) -> None:
    stamp = now()
    bench.code = made(bench.bottle.dye_id, stamp=stamp).code
    undo(deed=stamp.deed, stamp=now())
    assert bench.see("draw/").status == 409
    page = bench.send("draw", volume_ml="5")
    assert page.status == 422
    assert "was taken back" in page.text


def test_markup_in_a_field_stays_a_text(bench: Bench) -> None:
    page = bench.send("draw", volume_ml=HOSTILE, note=HOSTILE)
    assert page.status == 422
    assert HOSTILE not in page.source
    assert page.value("note") == HOSTILE
    bench.send("draw", volume_ml="1", note=HOSTILE)
    assert HOSTILE not in bench.see().source


def test_a_key_that_was_made_up_is_refused(bench: Bench) -> None:
    page = bench.send("draw", deed="not-a-key", volume_ml="5")
    assert page.status == 422
    assert bench.bottle.volume_ml == 500.0


def test_an_unknown_look_is_refused(bench: Bench) -> None:
    assert bench.send("look", look="drunk").status == 422
    assert StockBottle.objects.get(code=bench.code).lines.count() == 1
