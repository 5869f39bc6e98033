"""A small kitchen of tools and bottles to take advice for."""

from shadewright.core.baths.levers.makeable import Making
from shadewright.core.baths.levers.ways import Scale, Stock, Wanted, Ware
from shadewright.core.quantities import Balance, measuring_tool
from shadewright.core.uncertainty import Shape, Term, Value


def ware(words: str) -> Ware:
    return Ware(name=words, key=words, tool=measuring_tool(words, name="Tool"))


def scale(name: str, *, step_g: float, error_g: float | None = None) -> Scale:
    return Scale(name=name, key=name, balance=Balance(step_g=step_g, error_g=error_g))


def bottle(
    code: str, *, percent: float, usable_ml: float = 400.0, half_width_rel: float = 0.01
) -> Stock:
    u = percent * half_width_rel / 3**0.5
    mark = Term(
        name="mark of the 500 ml cylinder",
        source=f"bottle {code} fill",
        u=u,
        shape=Shape.RECTANGULAR,
    )
    return Stock(
        name=f"bottle {code}",
        strength=Value(value=percent, terms=(mark,)),
        usable_ml=usable_ml,
    )


SYRINGE = ware("syringe 20ml")
CYLINDER = ware("cylinder 100ml B")
KITCHEN = scale("kitchen scale", step_g=1.0, error_g=2.0)
SMALL = scale("small scale", step_g=0.1, error_g=0.2)
STRONG, WEAK = bottle("T7KK", percent=1.0), bottle("G4RR", percent=0.1)
MAKING = Making(powder_scale=SMALL, vessel=ware("cylinder 500ml B"))


def wanted(
    *, depth: float = 0.02, yarn_g: float = 100.0, yarn_scale: Scale | None = None
) -> Wanted:
    return Wanted(
        dye="Gorse",
        depth_percent=depth,
        yarn_g=yarn_g,
        liquor_ml=30.0 * yarn_g,
        yarn_scale=yarn_scale,
    )
