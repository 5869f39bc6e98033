"""The dry check of a lot, the standards it is held against, and lots that share."""
