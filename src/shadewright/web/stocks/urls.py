"""Addresses of making a stock."""

from django.urls import path

from shadewright.web.stocks.making_views import give_up, making, making_sheet
from shadewright.web.stocks.plan_views import plan, plan_sheet

urlpatterns = [
    path("new/", plan, name="plan-stock"),
    path("new/sheet.pdf", plan_sheet, name="plan-sheet"),
    path("making/<int:making_id>/", making, name="making"),
    path("making/<int:making_id>/sheet.pdf", making_sheet, name="making-sheet"),
    path("making/<int:making_id>/give-up/", give_up, name="give-up-making"),
]
