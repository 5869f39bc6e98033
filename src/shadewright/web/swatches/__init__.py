"""Swatches: what was dyed, and the colour that was read of it."""
