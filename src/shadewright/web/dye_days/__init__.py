"""Dye days: what is dyed when, in which pot, on which source, by whose hands."""
