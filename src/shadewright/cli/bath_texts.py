"""What ``shadewright bath`` says: the keys of its answer, and their words."""

from dataclasses import dataclass

from shadewright.cli.answers import UNCHECKED, Rows
from shadewright.cli.dose_texts import dose_answer, dose_rows
from shadewright.core.baths import AcidDose, BathSum, MeasuredWith, SaltDose
from shadewright.core.quantities import amount_text

NO_ACID = "No acid was asked for."
NO_SALT = "No salt was asked for."
NO_LABEL = (
    "The acid’s strength is not known, so its millilitres are not either: read the "
    "label and write it behind an @, as acetic@56%:2%."
)
BY_WEIGHT = (
    "The acid’s % are grams in 100\u00a0ml: where its label says % by weight, multiply "
    "by the liquid’s density first."
)
AT_STANDARD = (
    "Dry dye is reckoned at the standard strength: of a powder of 80\u00a0%, weigh the "
    "amount divided by 0.8."
)
IS_SOLID = "It is weighed, not poured."
NO_TOOL = "No measuring tool was named: how well stock is measured is left out."
NO_BALANCE = "No balance was named: how well {what} weighed is left out."


@dataclass(frozen=True, kw_only=True)
class Reckoned:
    """A bath with what the terminal was told that it is measured with."""

    found: BathSum
    measured_with: MeasuredWith

    def as_answer(self) -> dict[str, object]:
        """Return every key of the answer."""
        water = self.found.water
        return {
            "doses": [
                dose_answer(dose, self.measured_with) for dose in self.found.doses
            ],
            "total_depth_percent": self.found.total_depth_percent,
            "liquor_ml": water.liquor_ml,
            "water_ml": water.fresh_water_ml,
            "liquor_ratio": water.liquor_ratio,
            **_acid_answer(self.found.acid),
            **_salt_answer(self.found.salt),
            "warnings": self.warnings(),
        }

    def warnings(self) -> list[str]:
        """Return what to mind, most weighty first."""
        doses = self.found.doses
        is_dry = any(dose.stock_ml is None for dose in doses)
        balance = self.measured_with.balance
        looked_at = (
            *self.found.warnings,
            NO_LABEL if _is_unlabelled(self.found.acid) else "",
            BY_WEIGHT if _is_labelled(self.found.acid) else "",
            AT_STANDARD if is_dry else "",
            NO_TOOL if self._is_tool_missing() else "",
            "" if balance else NO_BALANCE.format(what=self._on_the_balance()),
            UNCHECKED if balance and balance.error_g is None else "",
        )
        return [warning for warning in looked_at if warning]

    def _is_tool_missing(self) -> bool:
        """Whether stock is poured, and nobody said from what."""
        told = self.measured_with
        is_poured = any(dose.stock_ml is not None for dose in self.found.doses)
        return is_poured and not (told.tool or told.is_by_weight)

    def _on_the_balance(self) -> str:
        """Say what the balance would weigh."""
        is_dry = any(dose.stock_ml is None for dose in self.found.doses)
        if self.measured_with.is_by_weight:
            return "yarn and doses are"
        return "yarn and dry dye are" if is_dry else "the yarn is"

    def advice(self) -> list[str]:
        """Return the advice on each dose under the dye's name."""
        return [f"{d.dye}: {d.advice}" for d in self.found.doses if d.advice]

    def rows(self) -> Rows:
        """Return the bath as it is put together, in the order of work."""
        water, salt, acid = self.found.water, self.found.salt, self.found.acid
        wet_ml = water.wet_yarn_ml
        rows = (
            ("liquor", amount_text(water.liquor_ml, "ml")),
            ("in the yarn", amount_text(wet_ml, "ml") if wet_ml else ""),
            ("fresh water", amount_text(water.fresh_water_ml, "ml")),
            ("salt", _salt_text(salt) if salt else ""),
            ("acid", _acid_text(acid) if acid else ""),
            *(
                row
                for dose in self.found.doses
                for row in dose_rows(dose, self.measured_with)
            ),
            ("all dyes", amount_text(self.found.total_depth_percent, "%")),
        )
        return [(label, text) for label, text in rows if text]


def _acid_answer(acid: AcidDose | None) -> dict[str, object]:
    """Return acid as it is weighed, or poured with the pure acid in it."""
    if acid is None:
        return {"acid_g": None, "acid_ml": None, "acid_why": NO_ACID}
    if acid.volume_ml is not None:
        return {"acid_ml": acid.volume_ml, "acid_pure_g": acid.pure_g}
    why = IS_SOLID if acid.acid.is_solid else NO_LABEL
    return {"acid_g": acid.pure_g, "acid_ml": None, "acid_why": why}


def _salt_answer(salt: SaltDose | None) -> dict[str, object]:
    """Return the salt as it is weighed, and the same in both forms."""
    if salt is None:
        return {"salt_g": None, "salt_why": NO_SALT}
    return {
        "salt_g": salt.mass_g,
        "salt_anhydrous_g": salt.anhydrous_g,
        "salt_decahydrate_g": salt.decahydrate_g,
    }


def _is_unlabelled(acid: AcidDose | None) -> bool:
    """Whether an acid is poured, and nobody said how strong it is."""
    return acid is not None and acid.volume_ml is None and not acid.acid.is_solid


def _is_labelled(acid: AcidDose | None) -> bool:
    """Whether an acid is poured by the strength on its bottle's label."""
    return (
        acid is not None
        and acid.volume_ml is not None
        and acid.acid.strength_g_per_100ml is None
    )


def _acid_text(acid: AcidDose) -> str:
    if acid.volume_ml is None:
        pure = "pure " if _is_unlabelled(acid) else ""
        return f"{amount_text(acid.pure_g, 'g')} of {pure}{acid.acid.name}"
    labelled = acid.strength_g_per_100ml if not acid.acid.strength_g_per_100ml else None
    strength = f" of {amount_text(labelled, '%')}" if labelled else ""
    return f"{amount_text(acid.volume_ml, 'ml')} of {acid.acid.name}{strength}"


def _salt_text(salt: SaltDose) -> str:
    return f"{amount_text(salt.mass_g, 'g')} of {salt.salt.name}"
