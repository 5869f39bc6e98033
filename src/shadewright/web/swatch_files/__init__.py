"""Swatches out of a file: every line is looked at before one is kept."""
