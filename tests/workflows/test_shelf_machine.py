"""A shelf at random: whatever is done and undone, no dye appears or is lost.

Beside the records stands a plain dictionary of millilitres and grams, kept by
the arithmetic of a schoolbook: every act is a change of that dictionary, and an
undo does all the others again from the start. After every act the two must agree.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import isclose

import pytest
from django.db import transaction
from hypothesis import HealthCheck, assume, event, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    Bundle,
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from shadewright.errors import ConflictError, StudioError
from shadewright.workflows.bottles import (
    draw,
    enter_bottle,
    pour_away,
    read_level,
    record_strength,
)
from shadewright.workflows.filling import Particulars
from shadewright.workflows.jars import jar
from shadewright.workflows.mending import (
    add_powder,
    add_stock,
    add_water,
    dilute,
    merge,
)
from shadewright.workflows.shelf import ShelfBottle, shelf
from shadewright.workflows.stamps import Stamp
from shadewright.workflows.undo import undo
from tests.workflows.bench import dye_g, founded, made, new_dye, new_jar, now
from tests.workflows.schoolbook import (
    Change,
    Held,
    Shelf,
    added,
    both,
    filled,
    gone,
    levelled,
    measured_at,
    moved,
)

JAR_G = 400.0
POWDER_FACTOR = 1.25
THINNER = st.floats(min_value=0.05, max_value=0.95)
SHARES = st.floats(min_value=0.05, max_value=1.0)


@dataclass(frozen=True)
class Deed:
    """An act, what it changes on the shelf, and the powder that it takes."""

    stamp: Stamp
    change: Change
    powder_g: float


class ShelfMachine(RuleBasedStateMachine):
    """The studio on one side, the dictionary on the other."""

    codes = Bundle("codes")

    def __init__(self) -> None:
        super().__init__()
        self.room = transaction.atomic()
        self.room.__enter__()
        founded()
        self.dye_id = new_dye()
        self.jar_id = new_jar(
            self.dye_id, powder_g=JAR_G, strength_percent=100 * POWDER_FACTOR
        )
        self.deeds: list[Deed] = []

    def teardown(self) -> None:
        transaction.set_rollback(True)
        self.room.__exit__(None, None, None)

    @property
    def truth(self) -> Shelf:
        """The shelf by the schoolbook, from the first deed on."""
        shelf: Shelf = {}
        for deed in self.deeds:
            deed.change(shelf)
        return shelf

    @property
    def powder_g(self) -> float:
        return JAR_G - sum(deed.powder_g for deed in self.deeds)

    def _held(self, code: str, *, least_ml: float = 1.0) -> Held:
        held = self.truth.get(code, Held(-1.0, 0.0))
        assume(held.ml >= least_ml)
        return held

    def _do(
        self,
        act: Callable[[Stamp], ShelfBottle],
        change: Callable[[str], Change],
        *,
        powder_g: float = 0.0,
    ) -> str:
        """Do a verb and note what it changes."""
        stamp = now()
        code = act(stamp).code
        self.deeds.append(Deed(stamp, change(code), powder_g))
        return code

    @initialize(target=codes, percent=st.floats(min_value=0.2, max_value=4.0))
    def enter(self, percent: float) -> str:
        return self._do(
            lambda stamp: enter_bottle(
                dye_id=self.dye_id,
                strength_percent=percent,
                volume_ml=300.0,
                stamp=stamp,
                about=Particulars(),
            ),
            lambda code: filled(code, 300.0, 3.0 * percent),
        )

    @rule(target=codes, powder_g=st.floats(min_value=0.5, max_value=20.0))
    def make(self, powder_g: float) -> str:
        assume(powder_g <= self.powder_g)
        return self._do(
            lambda stamp: made(
                self.dye_id, self.jar_id, powder_g=powder_g, stamp=stamp
            ),
            lambda code: filled(code, 500.0, powder_g * POWDER_FACTOR),
            powder_g=powder_g,
        )

    @rule(code=codes, share=SHARES)
    def draw(self, code: str, share: float) -> None:
        ml = self._held(code).ml * share
        self._do(
            lambda stamp: draw(code=code, volume_ml=ml, stamp=stamp),
            lambda _: moved(code, None, ml),
        )

    @rule(code=codes, share=SHARES)
    def evaporate(self, code: str, share: float) -> None:
        held = self._held(code)
        ml = held.ml * share
        assume(100 * held.g / ml < 49)
        self._do(
            lambda stamp: read_level(
                code=code, volume_ml=ml, is_evaporated=True, stamp=stamp
            ),
            lambda _: levelled(code, ml),
        )

    @rule(code=codes, ml=st.floats(min_value=1.0, max_value=400.0))
    def water(self, code: str, ml: float) -> None:
        self._held(code)
        self._do(
            lambda stamp: add_water(code=code, volume_ml=ml, stamp=stamp),
            lambda _: added(code, ml=ml),
        )

    @rule(code=codes, percent=st.floats(min_value=0.1, max_value=6.0))
    def test(self, code: str, percent: float) -> None:
        self._held(code, least_ml=0.0)
        self._do(
            lambda stamp: record_strength(
                code=code, strength_percent=percent, stamp=stamp
            ),
            lambda _: measured_at(code, percent),
        )

    @rule(code=codes, powder_g=st.floats(min_value=0.1, max_value=10.0))
    def strengthen(self, code: str, powder_g: float) -> None:
        held = self._held(code)
        dye_g = powder_g * POWDER_FACTOR
        assume(powder_g <= self.powder_g)
        assume(100 * (held.g + dye_g) / held.ml < 49)
        self._do(
            lambda stamp: add_powder(
                code=code, powder_g=powder_g, jar_id=self.jar_id, stamp=stamp
            ),
            lambda _: added(code, g=dye_g),
            powder_g=powder_g,
        )

    @rule(into=codes, source=codes, share=SHARES)
    def pour_over(self, into: str, source: str, share: float) -> None:
        assume(into != source)
        self._held(into, least_ml=0.0)
        ml = self._held(source).ml * share
        self._do(
            lambda stamp: add_stock(
                code=into, from_code=source, volume_ml=ml, stamp=stamp
            ),
            lambda _: moved(source, into, ml),
        )

    @rule(into=codes, source=codes)
    def merge(self, into: str, source: str) -> None:
        assume(into != source)
        self._held(into, least_ml=0.0)
        ml = self._held(source).ml
        self._do(
            lambda stamp: merge(code=into, from_codes=[source], stamp=stamp),
            lambda _: both(moved(source, into, ml), gone(source)),
        )

    @rule(target=codes, source=codes, share=SHARES, thinner=THINNER)
    def dilute(self, source: str, share: float, thinner: float) -> str:
        held = self._held(source)
        percent = 100 * held.g / held.ml * thinner
        ml = held.ml * share * 0.99 / thinner
        return self._do(
            lambda stamp: dilute(
                code=source,
                want_percent=percent,
                volume_ml=ml,
                stamp=stamp,
                about=Particulars(),
            ),
            lambda code: both(
                moved(source, None, ml * thinner),
                filled(code, ml, ml * percent / 100),
            ),
        )

    @rule(code=codes)
    def pour_away(self, code: str) -> None:
        self._held(code, least_ml=0.0)
        self._do(
            lambda stamp: pour_away(code=code, stamp=stamp),
            lambda _: gone(code),
        )

    @precondition(lambda self: self.deeds)
    @rule()
    def take_the_last_back(self) -> None:
        undo(deed=self.deeds.pop().stamp.deed, stamp=now())

    @precondition(lambda self: self.deeds)
    @rule(data=st.data())
    def take_any_back(self, data: st.DataObject) -> None:
        """What can be taken back is as if it never was; the rest stays untouched."""
        deed = data.draw(st.sampled_from(self.deeds))
        try:
            undo(deed=deed.stamp.deed, stamp=now())
        except ConflictError:
            event("refused")
        else:
            event("an older one taken back")
            self.deeds.remove(deed)

    @rule(code=codes)
    def ask_too_much(self, code: str) -> None:
        with pytest.raises(StudioError):
            draw(code=code, volume_ml=900_000.0, stamp=now())

    @invariant()
    def the_two_agree(self) -> None:
        found = {one.code: one for one in shelf()}
        truth = self.truth
        assert found.keys() == truth.keys()
        for code, held in truth.items():
            bottle = found[code]
            assert isclose(bottle.volume_ml, held.ml, rel_tol=1e-6, abs_tol=1e-6)
            assert isclose(dye_g(bottle), held.g, rel_tol=1e-5, abs_tol=1e-6)
            assert bottle.strength_percent <= 50.001
        assert isclose(jar(self.jar_id).left_g, self.powder_g, abs_tol=1e-9)


@pytest.mark.slow
@pytest.mark.one_store
@pytest.mark.django_db
def test_a_shelf_at_random_keeps_its_dye() -> None:
    run_state_machine_as_test(
        ShelfMachine,
        settings=settings(
            max_examples=10,
            stateful_step_count=25,
            deadline=None,
            suppress_health_check=list(HealthCheck),
        ),
    )
