"""Shades: the palette on each base."""
