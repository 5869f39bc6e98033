"""What ``shadewright stock`` says: the keys of its answers, and their words."""

from dataclasses import asdict, dataclass

from shadewright.cli.answers import UNCHECKED, Rows, wrapped
from shadewright.cli.strength_texts import how_sure_rows, strength_answer
from shadewright.core.quantities import Balance, MeasuringTool, amount_text
from shadewright.core.quantities.writing import about_text
from shadewright.core.solutions import (
    FilledRescue,
    MakingStep,
    OnScale,
    StockPlan,
    WeighedRescue,
)
from shadewright.core.uncertainty import Value

BY_WEIGHT = (
    "By weight, the dissolved dye is reckoned to take no room: the stock comes out "
    "weaker by less than its own percentage. The same scale weighs powder and stock."
)
ADD_POWDER = (
    "Powder is opened again: a fitted respirator (N95/FFP2 or better), goggles and "
    "gloves until all of it is wet. Wet it to a paste with some of the stock first. "
    "Follow the dye’s safety data sheet and your local rules."
)
NO_VESSEL = "No vessel was named: how well the volume is known is left out."
NO_TOOL = "Neither the scale nor the vessel was named: name --balance or --vessel."
NO_BALANCE = "No balance was named: how well the powder is known is left out."


@dataclass(frozen=True, kw_only=True)
class Made:
    """A planned stock with what the terminal was told about scale and vessel."""

    plan: StockPlan
    steps: tuple[MakingStep, ...]
    shown: OnScale | None
    made: Value
    balance: Balance | None
    vessel: MeasuringTool | None
    hot_fill: str
    make_up_to_g: float | None

    def as_answer(self) -> dict[str, object]:
        """Return every key of the answer."""
        answer: dict[str, object] = {
            "powder_g": self.plan.powder_g,
            "final_volume_ml": self.plan.final_volume_ml,
            "paste_water_ml": self.plan.paste_water_ml,
            "hot_water_ml": self.plan.hot_water_ml,
            "strength_percent": self.plan.strength_percent,
            "powder_strength_percent": self.plan.powder_strength_percent,
            **strength_answer(self.made, why_not=NO_TOOL),
            "steps": [asdict(step) for step in self.steps],
            "warnings": self.warnings(),
        }
        if self.shown:
            answer["powder_g_scale"] = self.shown.powder_g
        if self.vessel:
            answer["vessel"] = asdict(self.vessel)
        if self.make_up_to_g is not None:
            answer["make_up_to_g"] = self.make_up_to_g
        return answer

    def warnings(self) -> list[str]:
        """Return what is worth a second look, most weighty first."""
        by_weight = self.make_up_to_g is not None
        looked_at = (
            *self.plan.warnings,
            self.hot_fill,
            self.shown.warning if self.shown else "",
            BY_WEIGHT if by_weight else "",
            NO_BALANCE if self.balance is None else "",
            UNCHECKED if self.balance and self.balance.error_g is None else "",
            "" if self.vessel or by_weight else NO_VESSEL,
        )
        return [warning for warning in looked_at if warning]

    def rows(self) -> Rows:
        """Return the amounts, in the order in which they are used."""
        paste_ml, hot_ml = self.plan.paste_water_ml, self.plan.hot_water_ml
        return [
            *_rows(
                ("powder", self.plan.powder_g, "g"),
                ("on the scale", self.shown.powder_g if self.shown else None, "g"),
            ),
            ("paste water", about_text(paste_ml, "ml")),
            ("hot water", about_text(hot_ml, "ml") if hot_ml else "none"),
            *_rows(
                ("make up to", self.plan.final_volume_ml, "ml"),
                ("which weighs", self.make_up_to_g, "g"),
                ("strength", self.plan.strength_percent, "%"),
            ),
            *how_sure_rows(self.made),
        ]

    def steps_text(self) -> str:
        """Return the steps with their cautions, each under its number."""
        return "\n".join(
            f"\n{wrapped(f'{step.title}. {step.text}', first=f'{number} ', rest='  ')}"
            f"\n{wrapped(step.caution, first='  ! ', rest='    ')}"
            for number, step in enumerate(self.steps, start=1)
        )


def hot_by_weight(cool_g: float) -> str:
    """Return the warning where a hot stock is made up on a scale."""
    return (
        "That is what it weighs while it is hot and stands at the mark: once cool it "
        "is too strong. On a scale heat does not matter: make up to "
        f"{amount_text(cool_g, 'g')}, hot or cold."
    )


def weighed_answer(rescued: WeighedRescue) -> dict[str, object]:
    """Return the keys for a powder that was weighed wrongly."""
    answer: dict[str, object] = {"make_up_to_ml": rescued.make_up_to_ml}
    if rescued.add_water_ml is not None:
        answer["add_water_ml"] = rescued.add_water_ml
    return answer


def weighed_rows(rescued: WeighedRescue) -> Rows:
    """Return the same as rows."""
    return _rows(
        ("make up to", rescued.make_up_to_ml, "ml"),
        ("add water", rescued.add_water_ml, "ml"),
    )


def filled_answer(rescued: FilledRescue) -> dict[str, object]:
    """Return the keys for a stock that was filled wrongly."""
    known = {key: value for key, value in asdict(rescued).items() if value is not None}
    return {**known, "warnings": filled_warnings(rescued)}


def filled_rows(rescued: FilledRescue) -> Rows:
    """Return the same as rows."""
    rows = _rows(
        ("true strength", rescued.true_strength_percent, "%"),
        ("add powder", rescued.add_powder_g, "g"),
        ("make up to", rescued.make_up_to_ml, "ml"),
        ("add water", rescued.add_water_ml, "ml"),
    )
    return rows if len(rows) > 1 else [*rows, ("to add", "nothing: it is as wanted")]


def filled_warnings(rescued: FilledRescue) -> list[str]:
    """Return what to mind where powder is opened again."""
    return [] if rescued.add_powder_g is None else [ADD_POWDER]


def _rows(*amounts: tuple[str, float | None, str]) -> Rows:
    """Return the amounts that there are."""
    return [
        (label, amount_text(value, unit))
        for label, value, unit in amounts
        if value is not None
    ]
