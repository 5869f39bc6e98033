"""One bottle: what it is, what happened to it, and everything that can be done."""
