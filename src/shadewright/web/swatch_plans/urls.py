"""Addresses of sets of swatches."""

from django.urls import path

from shadewright.web.swatch_plans.new_views import new
from shadewright.web.swatch_plans.results_views import results
from shadewright.web.swatch_plans.set_views import bottles, give_up, plan, plans, sheet

urlpatterns = [
    path("plans/", plans, name="swatch-plans"),
    path("plans/new/", new, name="swatch-plan-new"),
    path("plans/<int:plan_id>/", plan, name="swatch-plan"),
    path("plans/<int:plan_id>/sheet.pdf", sheet, name="swatch-plan-sheet"),
    path("plans/<int:plan_id>/colours/", results, name="swatch-plan-colours"),
    path("plans/<int:plan_id>/bottles/", bottles, name="swatch-plan-bottles"),
    path("plans/<int:plan_id>/give-up/", give_up, name="swatch-plan-give-up"),
]
