"""Two people at two screens in the same moment."""

from collections.abc import Callable
from threading import Barrier, Thread

import pytest
from django.db import connection

from shadewright.errors import ConflictError, OutOfRangeError, StudioError
from shadewright.records.models import BottleLine, PowderJar, StockBottle
from shadewright.workflows.bottles import draw, enter_bottle
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import jar, receive_jar
from shadewright.workflows.making import start_making, weigh_powder
from shadewright.workflows.makings import making
from shadewright.workflows.mending import add_powder, merge
from shadewright.workflows.shelf import shelf, shelf_bottle
from shadewright.workflows.undo import undo
from tests.workflows.bench import entered, founded, made, new_dye, new_jar, now

pytestmark = pytest.mark.django_db(transaction=True)


def at_once(*acts: Callable[[], object]) -> list[Exception]:
    """Run acts in threads of their own, from one signal on; return what they raised."""
    start = Barrier(len(acts))
    raised: list[Exception] = []

    def run(act: Callable[[], object]) -> None:
        try:
            connection.ensure_connection()
            start.wait(timeout=10)
            act()
        except Exception as error:  # ruff: ignore[blind-except] - the test looks at each
            raised.append(error)
        finally:
            connection.close()

    threads = [Thread(target=run, args=[act]) for act in acts]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(timeout=60)
    assert not any(thread.is_alive() for thread in threads)
    return raised


@pytest.mark.parametrize("turn", range(3))
def test_the_last_millilitre_is_drawn_once(turn: int) -> None:
    del turn
    code = entered(new_dye(), volume_ml=1.0).code
    draws = [lambda: draw(code=code, volume_ml=1.0, stamp=now())] * 6
    raised = at_once(*draws)
    assert [type(error) for error in raised] == [OutOfRangeError] * 5
    assert shelf_bottle(code).volume_ml == 0.0


def test_draws_that_fit_are_all_written() -> None:
    code = entered(new_dye(), volume_ml=500.0).code
    draws = [lambda: draw(code=code, volume_ml=10.0, stamp=now())] * 12
    assert at_once(*draws) == []
    assert shelf_bottle(code).volume_ml == pytest.approx(380.0)


def test_one_deed_sent_twice_at_once_is_written_once() -> None:
    founded()
    dye_id = new_dye()
    jar_id = new_jar(dye_id)
    code, other = entered(dye_id).code, entered(dye_id).code
    into = entered(dye_id).code
    stamps = [now() for _ in range(6)]
    acts: list[Callable[[], object]] = [
        lambda: draw(code=code, volume_ml=10.0, stamp=stamps[0]),
        lambda: made(dye_id, jar_id, stamp=stamps[1]),
        lambda: enter_bottle(
            dye_id=dye_id,
            strength_percent=1,
            volume_ml=9,
            stamp=stamps[2],
            about=Particulars(),
        ),
        lambda: merge(code=into, from_codes=[other], stamp=stamps[3]),
        lambda: receive_jar(dye_id=dye_id, powder_g=50.0, stamp=stamps[4]),
        lambda: add_powder(code=code, powder_g=1.0, jar_id=jar_id, stamp=stamps[5]),
    ]
    assert at_once(*(act for act in acts for _ in range(2))) == []
    assert shelf_bottle(code).volume_ml == 490.0
    assert jar(jar_id).left_g == pytest.approx(94.0)
    assert shelf_bottle(into).volume_ml == 1000.0
    assert StockBottle.objects.count() == 5
    assert PowderJar.objects.count() == 2


def test_new_jars_at_once_get_codes_of_their_own() -> None:
    founded()
    dye_id = new_dye()
    receive = [lambda: receive_jar(dye_id=dye_id, powder_g=50.0, stamp=now())] * 6
    assert at_once(*receive) == []
    codes = sorted(PowderJar.objects.values_list("code", flat=True))
    assert codes == [f"J-{number}" for number in range(1, 7)]


def test_powder_weighed_twice_at_once_leaves_the_jar_once() -> None:
    founded()
    dye_id = new_dye()
    jar_id = new_jar(dye_id)
    begun = start_making(
        dye_id=dye_id, jar_id=jar_id, volume_ml=500, strength_percent=1, stamp=now()
    )
    weigh = [lambda: weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())] * 4
    assert at_once(*weigh) == []
    assert jar(jar_id).left_g == 95.0
    assert making(begun.id).powder_g == 5.0


def test_a_deed_is_taken_back_once() -> None:
    code = entered(new_dye()).code
    stamp = now()
    draw(code=code, volume_ml=100.0, stamp=stamp)
    raised = at_once(*[lambda: undo(deed=stamp.deed, stamp=now())] * 4)
    assert [type(error) for error in raised] == [ConflictError] * 3
    assert BottleLine.objects.filter(act="undone").count() == 1


def test_bottles_poured_round_in_a_ring_do_not_wait_for_each_other() -> None:
    dye_id = new_dye()
    codes = sorted(entered(dye_id, volume_ml=100.0).code for _ in range(4))
    rings = [
        lambda into=into: merge(
            code=into, from_codes=[one for one in codes if one != into], stamp=now()
        )
        for into in codes
    ]
    raised = at_once(*rings)
    assert all(isinstance(error, StudioError) for error in raised)
    assert len(raised) == 3
    assert [one.volume_ml for one in shelf()] == [400.0]
