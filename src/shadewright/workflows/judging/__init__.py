"""Judging a lot: its standard, the dry check, what changed, bleed and rub tests."""
