"""The bench: one bath, one step, one number; and the list of pots that ask."""
