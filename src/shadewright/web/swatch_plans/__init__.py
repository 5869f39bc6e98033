"""Sets of swatches: planned, kept, followed until each colour is read."""
