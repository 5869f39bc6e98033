"""What has settled is drawn from only after it was re-warmed and looked at."""

from shadewright.errors import ConflictError
from shadewright.records.models import StockBottle
from shadewright.records.shapes import state_of
from shadewright.workflows.standings import is_rewarmed


def refuse_settled(row: StockBottle) -> None:
    """Refuse to take stock out of a bottle that was last seen settled."""
    if not state_of(row).is_settled:
        return
    todo = "look at it" if is_rewarmed(row) else "re-warm it, stir, cool, and look"
    raise ConflictError(
        why=f"Bottle {row.code} has settled: its top is weaker than its label says.",
        advice=f"First {todo}; once it is clear, draw from it.",
    )


def refuse_unwarmed(row: StockBottle) -> None:
    """Refuse to call a bottle clear that has settled and was not re-warmed since."""
    if state_of(row).is_settled and not is_rewarmed(row):
        raise ConflictError(
            why=f"Bottle {row.code} was seen settled and not re-warmed since.",
            advice="Re-warm it and write that down, or undo the look that was wrong.",
        )
