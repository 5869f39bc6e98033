"""Planning: a dye day with too few burners and one pair of hands.

A bath wants a pot from its filling to its rinse, a source from the heat to the check,
somebody's hands for a few minutes again and again, and a place on the rack. From the
heat to the check there is no gap: a bath that is due for its acid does not wait. This
chapter finds an order in which everything has its turn, says how early the day could
end at best, and what does not fit.

======  ==============================================  ====
symbol  meaning                                         unit
======  ==============================================  ====
s_n     minutes at which a span of n may start          -
m       how many machines work at once                  1
E       how bad a plan is                               min
T       how much worse a change may be                  min
p       chance that a worse change stays                1
======  ==============================================  ====

1. ``minutes``    when something is free, as bits
2. ``day``        what there is, and what is wished
3. ``fitting``    what fits where
4. ``ways``       on which source and in which pot, and how long
5. ``board``      what is taken so far
6. ``going``      what stands on it before all else
7. ``spots``      where one bath could go
8. ``placing``    one bath as early as it fits
9. ``keeping``    what is moved of the plan that stood
10. ``turns``      pale before dark, one family at a time
11. ``sequences``  from an order to a plan
12. ``trails``     what orders have in common is placed once
13. ``bounds``     before which time no plan ends
14. ``beginnings`` orders to begin with
15. ``neighbours`` orders that differ a little
16. ``searching``  a better order, again and again
17. ``explaining`` why a bath is left out
18. ``conflicts``  what is going and cannot go on as it stands
19. ``plans``      the plan as people read it
20. ``loads``      what pots take, and what is too heavy
21. ``splits``     yarn split into baths that are alike
22. ``side_by_side`` yarn split over pots that are filled once
23. ``own_pots``   which baths can each keep a pot overnight
24. ``sharing``    whole pots, and whose skeins
25. ``demand``     how much is to be dyed, for orders and the shelf
26. ``promises``   when yarn can be ready

Sources: [kolisch1996]_ for placing one after the other; [kirkpatrick1983]_ for the
search; [carlier1987]_ for the bounds. The energy and the moves are our own.
"""

from shadewright.core.planning.conflicts import Conflict
from shadewright.core.planning.day import (
    Day,
    DayCircuit,
    DayPerson,
    DayPot,
    DaySource,
    Going,
    Pin,
    PlaceBefore,
    Stage,
    Touch,
    WantedBath,
)
from shadewright.core.planning.keeping import Change, place_of
from shadewright.core.planning.plans import DayPlan, PlannedBath, plan_of
from shadewright.core.planning.searching import Tried, searched, searched_for

__all__ = [
    "Change",
    "Conflict",
    "Day",
    "DayCircuit",
    "DayPerson",
    "DayPlan",
    "DayPot",
    "DaySource",
    "Going",
    "Pin",
    "PlaceBefore",
    "PlannedBath",
    "Stage",
    "Touch",
    "Tried",
    "WantedBath",
    "place_of",
    "plan_of",
    "searched",
    "searched_for",
]
