"""Questions to the store about how much of what was dyed, and how often."""

from django.db.models import Count, Exists, Max, OuterRef, QuerySet

from shadewright.records.models import Bath, BathLine
from shadewright.records.models.baths import BathAct


def batches_of_recipe(recipe_id: int) -> list[float]:
    """Return the weights of yarn that a recipe was dyed on, the most often first."""
    rows = _dyed().filter(version__recipe_id=recipe_id, is_swatch=False)
    counted = rows.values("fibre_g").annotate(times=Count("id"), last=Max("dyed_on"))
    ordered = counted.order_by("-times", "-last", "fibre_g")
    return list(ordered.values_list("fibre_g", flat=True))


def batches() -> list[tuple[int, float, int]]:
    """Return recipe, weight of yarn, and how often that was dyed; often first."""
    counted = (
        _dyed().values("version__recipe_id", "fibre_g").annotate(times=Count("id"))
    )
    ordered = counted.order_by("-times", "version__recipe_id", "fibre_g")
    return list(ordered.values_list("version__recipe_id", "fibre_g", "times"))


def tried_baths(version_id: int, *, base_id: int) -> QuerySet[Bath]:
    """Return the baths of a version on a base that came to a lot, the largest first."""
    rows = Bath.objects.filter(version_id=version_id, base_id=base_id)
    return rows.filter(lot__isnull=False).order_by("-fibre_g", "-id")


def _dyed() -> QuerySet[Bath]:
    ended = BathLine.objects.filter(bath=OuterRef("pk"), act=BathAct.FINISHED)
    return Bath.objects.filter(Exists(ended.filter(undone_by=None)))
