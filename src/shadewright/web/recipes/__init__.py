"""Recipes: the list, a recipe with its versions, what changed, and the form."""
