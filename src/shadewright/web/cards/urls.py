"""Addresses of cards and tags."""

from django.urls import path

from shadewright.web.cards.printing import cards, tags
from shadewright.web.cards.views import take_back, type_card

urlpatterns = [
    path("baths/cards.pdf", cards, name="bath-cards"),
    path("baths/tags.pdf", tags, name="swatch-tags"),
    path("baths/<str:number>/card/", type_card, name="type-card"),
    path("baths/<str:number>/card/<uuid:deed>/undo/", take_back, name="undo-card"),
]
