"""A studio in a process of its own: prepare baths in it, or read what it holds.

``python -m tests.web.bench.killed_studio prepare|read``; the studio is that of
the environment. It answers in JSON.
"""

import json
import os
import sys
from datetime import timedelta
from typing import Any

BOTTLE_ML = 3000.0


BATHS = 4


def prepare() -> dict[str, Any]:
    """Found the studio and plan a few baths, one of them apart, for tomorrow."""
    from django.core.management import call_command

    from shadewright.records.models import Bath
    from shadewright.workflows.stamps import today
    from tests.workflows.bench import founded
    from tests.workflows.pots import ready

    call_command("migrate", verbosity=0)
    founded()
    pot = ready(bottle_ml=BOTTLE_ML)
    baths = [pot.number, *(pot.another() for _ in range(BATHS - 1))]
    apart = pot.another()
    Bath.objects.filter(number=apart).update(dyed_on=today() + timedelta(days=1))
    return {"baths": baths, "apart": apart, "bottle": pot.slate}


def read() -> dict[str, Any]:
    """Return every deed in the bath's ledger, in order, and what the bottle holds."""
    from shadewright.records.models import BathLine, StockBottle
    from shadewright.records.shapes import state_of

    lines = BathLine.objects.order_by("id")
    bottles = StockBottle.objects.prefetch_related("lines")
    return {
        "deeds": [str(line.deed) for line in lines],
        "undoing": [str(x.deed) for x in lines if x.undoes is not None],
        "undone": [str(x.undoes.deed) for x in lines if x.undoes is not None],
        "drawn": sum(line.drawn_id is not None for line in lines),
        "left_ml": {one.code: state_of(one).volume_ml for one in bottles},
    }


if __name__ == "__main__":
    import django

    os.environ["DJANGO_SETTINGS_MODULE"] = "shadewright.settings"
    django.setup()
    print(json.dumps({"prepare": prepare, "read": read}[sys.argv[1]]()))  # ruff: ignore[print]
