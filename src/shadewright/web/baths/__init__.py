"""Baths: the dye days, the plan of a bath, and as planned beside as dyed."""
