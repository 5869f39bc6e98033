"""The handbook: what could be printed and checked with a pencil.

Pure functions and frozen values, in reading order:

1. ``tables``      constants as published
2. ``quantities``  numbers with units, as a dyer writes and reads them
3. ``uncertainty`` a value and its spread; measuring tools
4. ``solutions``   stock strength, dilution, rescue, merging
5. ``baths``       depth of shade, liquor ratio, doses, auxiliaries
6. ``colour``      spectrum, XYZ, Lab; how far two colours are apart
7. ``mixing``      what swatches teach of dyes; the colour of any mix
8. ``recipes``     which dyes give a colour; what to add to a bath that missed
9. ``costing``     what a bath cost, from what really went into it
10. ``quality``    whether a lot is like the last, and what was different
11. ``planning``   a dye day with too few burners and one pair of hands

Nothing here knows of a file, a clock, a database or a screen.
"""
