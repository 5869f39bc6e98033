"""Lots: finish a bath, what came out of it, two side by side, and the trace."""
