"""A studio with a history: every verb, some of it taken back.

Run as a program it makes or reads a backup on an SQLite of its own::

    python -m tests.workflows.history make FILE
    python -m tests.workflows.history through FILE OTHER_FILE
"""

import sys
from datetime import date
from decimal import Decimal
from pathlib import Path


def live_through_it() -> None:
    """Found a studio and do a bit of everything in it."""
    from shadewright.records.models import Dye, StockBottle
    from shadewright.workflows.bottles import (
        Look,
        change_particulars,
        draw,
        look_at,
        pour_away,
        read_level,
        record_strength,
    )
    from shadewright.workflows.filling import Particulars
    from shadewright.workflows.jars import count_jar, receive_jar
    from shadewright.workflows.making import start_making, weigh_powder
    from shadewright.workflows.mending import (
        add_powder,
        add_stock,
        add_water,
        dilute,
        merge,
    )
    from shadewright.workflows.people import people
    from shadewright.workflows.stamps import stamp_now
    from shadewright.workflows.undo import undo
    from tests.workflows.bench import entered, founded, made, new_dye, now

    founded()
    ines = people()[0].id
    dye_id = new_dye("Sloe, “½ strength” \u2028 тёрн")
    Dye.objects.filter(pk=dye_id).update(solubility_g_per_l=200 / 3)
    jar_id = receive_jar(
        dye_id=dye_id,
        powder_g=100.1,
        price=Decimal("24.50"),
        opened_on=date(2025, 2, 28),
        strength_percent=112.5,
        stamp=stamp_now(by=ines),
    ).id
    first, second = made(dye_id, jar_id, powder_g=5.37), entered(dye_id)
    for code, stamp in ((first.code, stamp_now(by=ines)), (second.code, now())):
        draw(code=code, volume_ml=100 / 3, stamp=stamp, note="bath\tB2\n")
    undo(deed=stamp.deed, stamp=now())
    for look in (Look.SETTLED, Look.REWARMED, Look.CLEAR):
        look_at(code=first.code, look=look, stamp=now())
    record_strength(code=first.code, strength_percent=1.02, stamp=now())
    read_level(code=first.code, volume_ml=400, is_evaporated=True, stamp=now())
    add_water(code=first.code, volume_ml=0.1 + 0.2, stamp=now())
    add_powder(code=first.code, powder_g=0.7, jar_id=jar_id, stamp=now())
    add_stock(code=first.code, from_code=second.code, volume_ml=9.9, stamp=now())
    thin = dilute(
        code=first.code,
        want_percent=0.1,
        volume_ml=77.7,
        stamp=now(),
        about=Particulars(made_on=date(2026, 1, 2), notes="for pale ones"),
    )
    merge(code=second.code, from_codes=[entered(dye_id).code], stamp=now())
    pour_away(code=thin.code, stamp=now())
    change_particulars(
        code=second.code,
        place="Fridge",
        water="Rain",
        discard_by=date(2030, 1, 31),
        dead_volume_ml=2.5,
        notes="",
        stamp=stamp_now(by=ines),
    )
    begun = start_making(
        dye_id=dye_id, jar_id=jar_id, volume_ml=250, strength_percent=2, stamp=now()
    )
    weigh_powder(making_id=begun.id, powder_g=5.0, stamp=now())
    weigh_powder(making_id=begun.id, powder_g=5.1, stamp=now())
    count_jar(jar_id=jar_id, reading_g=80.0, stamp=now())
    assert StockBottle.objects.count() == 4


def _main(job: str, file: Path, other: Path) -> None:
    import django

    django.setup()
    from shadewright.workflows.opening import open_studio, restore, write_backup

    open_studio()
    if job == "make":
        live_through_it()
        write_backup(file)
    else:
        restore(file.read_bytes())
        write_backup(other)


if __name__ == "__main__":
    _main(sys.argv[1], Path(sys.argv[2]), Path(sys.argv[-1]))
