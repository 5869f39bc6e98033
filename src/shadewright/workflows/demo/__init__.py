"""The demo studio: invented people, dyes and yarns, and some months of work.

It is built by the verbs of the workflows alone, each called at its own moment of
the story's clock, from a fixed seed: the same minute gives the same demo. No row
is written any other way, so the demo is also a long test of the verbs.

- ``calendar``: the diary that tells everything in the order of time
- ``house``: what stands where, while the story is told
- ``dyes``, ``things``, ``ware``, ``recipes``: what the studio owns and writes down
- ``stocks``, ``shelf_life``: how bottles are filled, and what befalls them
- ``days``, ``kettle``, ``rinsing``: dye days, one bath at the pot, its lot
- ``after_heat``: what is left in the cup, rinses, the rack
- ``room``, ``orders``, ``planned_days``: what is asked for, and when it is dyed
- ``buyers``, ``judged``: where skeins went, and how lots were judged
- ``absorption``, ``truth``: what the dyes and yarns truly do; no verb knows of it
- ``swatch_book``, ``swatches``: what was dyed to be looked at, and how it was read
- ``lessons``: lots read, some of them evidence, and the fits
- ``wishes``: colours that are wanted, and trials dyed for one of them
- ``story``: all of it
"""

from shadewright.workflows.demo.story import build_demo

__all__ = ["build_demo"]
