"""Addresses of the catalogue: the same seven for each kind, and a few of its own."""

from collections.abc import Iterator

from django.urls import URLPattern, path

from shadewright.web.catalogue import views
from shadewright.web.catalogue.kinds import (
    ACIDS,
    BASES,
    BURNERS,
    CIRCUITS,
    DYES,
    METERS,
    POTS,
    TOOLS,
    WATERS,
    Kind,
)
from shadewright.web.catalogue.lists import items, retired_items
from shadewright.web.catalogue.lots import add_lot, edit_lot
from shadewright.web.catalogue.tool_views import check_tool, leave_tool, use_tool
from shadewright.web.catalogue.water_form import use_water


def _addresses(kind: Kind) -> Iterator[URLPattern]:
    all_of, one = f"{kind.slug}/", f"{kind.slug}/<int:item_id>/"
    which = {"kind": kind}
    yield path(all_of, items, which, name=kind.slug)
    yield path(f"{all_of}retired/", retired_items, which, name=f"retired-{kind.slug}")
    yield path(f"{all_of}new/", views.add, which, name=f"add-{kind.noun}")
    yield path(one, views.item, which, name=kind.noun)
    yield path(f"{one}edit/", views.edit, which, name=f"edit-{kind.noun}")
    yield path(f"{one}retire/", views.retire, which, name=f"retire-{kind.noun}")
    yield path(f"{one}back/", views.bring_back, which, name=f"{kind.noun}-back")


urlpatterns = [
    path("dyes/<int:item_id>/sheet/", views.data_sheet, name="data-sheet"),
    path("bases/<int:item_id>/lots/new/", add_lot, name="add-mill-lot"),
    path("bases/<int:item_id>/lots/<int:lot_id>/", edit_lot, name="mill-lot"),
    path("tools/<int:item_id>/check/", check_tool, name="check-tool"),
    path("tools/<int:item_id>/use/<str:job>/", use_tool, name="use-tool"),
    path("tools/<int:item_id>/leave/<str:job>/", leave_tool, name="leave-tool"),
    path("waters/<int:item_id>/usual/", use_water, name="use-water"),
    *(
        each
        for kind in (DYES, BASES, ACIDS, WATERS, POTS, BURNERS, CIRCUITS, TOOLS, METERS)
        for each in _addresses(kind)
    ),
]
