"""Tables: numbers as they were published, each with its source.

Nothing is reckoned here. A value that was recalled and not read again says
``from memory`` beside its source.

Contents: ``units`` (what a pound, a pint and a spoon hold), ``water`` (the
density of water), ``salts`` (the weights of salts and their crystals),
``glassware`` and ``check_weights`` (how far measuring tools may be off).
"""
