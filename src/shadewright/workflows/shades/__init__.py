"""Shades: from a swatch that was read to a recipe that will come out right.

``kinds``     how a colour was come by, and what that is worth
``meters``    the light and the eye that a meter reckons for
``spectra``   what a spectrum looks like under the lights that are kept
``readings``  a colour that was read: typed, averaged, kept
``swatches``  what was dyed, read and said of it
``evidence``  which of them teach, as core takes them
``palettes``  the fit that holds
``fits``      fit anew, and keep what came out

A swatch and its colour:

``starting``           one swatch of each dye, on one page
``entering_swatches``  an old one, bare yarn, or a bath that was dyed
``ways_to_read``       by eye, off a photo, with one of the meters
``reading_lines``      what was typed, line by line
``reading_spreads``    how far off that usually is
``reading_swatches``   entered and read in one deed
``swatch_page``        every reading of it, and what was foretold

What teaches:

``judging``          it teaches, or it does not
``doubts``           what the others do not believe
``offering``         lots whose colour is known
``fit_pages``        every fit, and the one that runs
``predictions``      what was foretold of a bath, kept before it is dyed
``outcomes``         beside what came out, and how often the bound held
``standing_behind``  the swatches that a prediction rests on
``palette_pages``    what the palette says of one base

A recipe for a colour:

``wanted``        the colour: typed, of a swatch or a lot, or kept
``find_wishes``   what the recipe may hold, and what the shelf says to that
``finding``       the search, and what came out
``find_reasons``  which are shown, and why
``in_the_pot``    what doses will really give, with these bottles and tools
``dye_prices``    what the dye costs
``saving``        a recipe that says what it was found for

A mix by hand:

``mixing_page``    its colour, and how sure that is
``measurable``     its doses in steps of the tools at hand
``carrying``       a recipe on every base, corrected for one of them
``carry_keeping``  that kept as its next version
``gradients``      a row whose steps look equal, kept as recipes

Files of swatches:

``swatch_files``    a table, line by line
``swatch_samples``  a file of spectra, whose doses are typed
``keeping_files``   kept in one deed, and handed out again
``meter_changes``   what a meter read, carried anew
``meter_spreads``   what one reading of it is worth

A set of swatches:

``plan_wishes``    what is said of it, and the doses that come of it
``plan_practice``  its acid and heat, as the studio usually dyes
``plan_stocks``    the stocks that it is drawn from
``plan_colours``   the colours foretold
``plan_jars``      jars, and loads of a pot
``plan_cautions``  powder, acid, heat, metal
``planning``       all of it together
``plan_keeping``   kept: a recipe, and a version and a bath for each swatch
``plan_pages``     as it stands
``plan_bottles``   what is still to make, new bottles taken into use
``plan_sheets``    on paper
"""
