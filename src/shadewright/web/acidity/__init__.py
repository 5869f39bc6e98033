"""Acidity: how sour a bath is, one acid for another, a spent bath."""
