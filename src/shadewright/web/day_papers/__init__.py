"""A dye day on paper, how it went, all off, and the rack."""
