"""Addresses of the recipes."""

from django.urls import path

from shadewright.web.recipes.views import (
    recipe,
    recipe_changes,
    recipe_version,
    recipes,
    retired_recipes,
)
from shadewright.web.recipes.writing import (
    bring_back,
    new_recipe,
    new_version,
    rename,
    retire,
)

urlpatterns = [
    path("", recipes, name="recipes"),
    path("new/", new_recipe, name="new-recipe"),
    path("retired/", retired_recipes, name="retired-recipes"),
    path("<int:recipe_id>/", recipe, name="recipe"),
    path("<int:recipe_id>/changes/", recipe_changes, name="recipe-changes"),
    path("<int:recipe_id>/rename/", rename, name="rename-recipe"),
    path("<int:recipe_id>/retire/", retire, name="retire-recipe"),
    path("<int:recipe_id>/back/", bring_back, name="recipe-back"),
    path("<int:recipe_id>/versions/new/", new_version, name="new-version"),
    path(
        "<int:recipe_id>/versions/<int:number>/", recipe_version, name="recipe-version"
    ),
]
