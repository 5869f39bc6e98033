"""Addresses of tags and tests."""

from django.urls import path

from shadewright.web.tags.region_views import edit_region, new_region
from shadewright.web.tags.tag_views import lot_tags, print_tags, tag_words
from shadewright.web.tags.test_views import cloth, lot_tests

urlpatterns = [
    path("tags/", tag_words, name="tag-words"),
    path("tags/regions/new/", new_region, name="region-new"),
    path("tags/regions/<int:region_id>/", edit_region, name="region"),
    path("lots/<str:number>/tags/", lot_tags, name="lot-tags"),
    path("lots/<str:number>/tags.pdf", print_tags, name="lot-tags-pdf"),
    path("lots/<str:number>/tests/", lot_tests, name="lot-tests"),
    path("lots/<str:number>/tests/<int:test_id>.jpg", cloth, name="cloth-photo"),
]
