"""Cards and tags on paper, and a card typed back line by line."""
