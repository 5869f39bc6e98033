"""Mixes by slider, a recipe on every base, and rows of steps that look equal."""
