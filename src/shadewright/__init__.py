"""Shadewright: the working record and the reckoning of a small dye studio."""

__version__ = "0.1.0"
