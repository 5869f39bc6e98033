"""A studio with two dyes and a jar of each."""

from dataclasses import dataclass

from shadewright.records.models import Dye
from shadewright.workflows.jars import receive_jar
from shadewright.workflows.stamps import stamp_now
from shadewright.workflows.studio import found_studio


@dataclass(frozen=True)
class Bench:
    """The numbers that a form names."""

    dye: int
    jar: int
    other_dye: int
    other_jar: int


def small_bench() -> Bench:
    """Found the studio and put the dyes and jars on its shelf."""
    found_studio(name="Test studio", person="Ines", water="Tap")
    slate = Dye.objects.create(name="Slate", solubility_g_per_l=40.0)
    peat = Dye.objects.create(name="Peat", is_metal_complex=True, is_mix_fresh=True)
    jars = [
        receive_jar(dye_id=dye.pk, powder_g=100.0, lot="L7", stamp=stamp_now(by=None))
        for dye in (slate, peat)
    ]
    return Bench(slate.pk, jars[0].id, peat.pk, jars[1].id)
