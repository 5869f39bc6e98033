"""What would make it surer: on a plan, on a recipe, and for the whole shelf."""
