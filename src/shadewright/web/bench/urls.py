"""Addresses of the bench."""

from django.urls import path

from shadewright.web.bench.bottle_views import check_bottle
from shadewright.web.bench.list_views import bench_list, clocks
from shadewright.web.bench.photo_views import add_bench_photo, bench_photo
from shadewright.web.bench.tap_views import tap_one, taps, undo_one
from shadewright.web.bench.views import bench, bench_now

urlpatterns = [
    path("", bench_list, name="bench-list"),
    path("taps/", taps, name="taps"),
    path("clocks/", clocks, name="clocks"),
    path("<str:number>/", bench, name="bench"),
    path("<str:number>/now/", bench_now, name="bench-now"),
    path("<str:number>/tap/", tap_one, name="bench-tap"),
    path("<str:number>/undo/", undo_one, name="bench-undo"),
    path("<str:number>/photo/", add_bench_photo, name="bench-photo"),
    path("<str:number>/photos/<uuid:deed>.jpg", bench_photo, name="bench-picture"),
    path("<str:number>/bottle/", check_bottle, name="bench-bottle"),
]
