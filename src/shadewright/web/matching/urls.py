"""Addresses of finding a recipe and of the wanted colours."""

from django.urls import path

from shadewright.web.matching.saving_views import (
    bring_back,
    keep,
    retire,
    retired_wanted,
    save,
    wanted,
)
from shadewright.web.matching.views import answers, find, stop

urlpatterns = [
    path("find/", find, name="find"),
    path("find/answers/", answers, name="find-answers"),
    path("find/stop/", stop, name="find-stop"),
    path("find/save/", save, name="find-save"),
    path("wanted/", wanted, name="wanted"),
    path("wanted/keep/", keep, name="keep-wanted"),
    path("wanted/retired/", retired_wanted, name="retired-wanted"),
    path("wanted/<int:wanted_id>/retire/", retire, name="retire-wanted"),
    path("wanted/<int:wanted_id>/back/", bring_back, name="wanted-back"),
]
