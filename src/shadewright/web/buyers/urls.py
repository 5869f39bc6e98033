"""Addresses of buyers."""

from django.urls import path

from shadewright.web.buyers.complaining import (
    close,
    complaint,
    complaints,
    its_lot,
    new_complaint,
    photo,
)
from shadewright.web.buyers.recalling import recall, recall_list
from shadewright.web.buyers.sending import out

urlpatterns = [
    path("lots/<str:number>/out/", out, name="lot-out"),
    path("lots/<str:number>/recall/", recall, name="recall"),
    path("lots/<str:number>/recall.csv", recall_list, name="recall-list"),
    path("complaints/", complaints, name="complaints"),
    path("complaints/new/", new_complaint, name="complaint-new"),
    path("complaints/<int:number>/", complaint, name="complaint"),
    path("complaints/<int:number>/close/", close, name="complaint-close"),
    path("complaints/<int:number>/lot/", its_lot, name="complaint-lot"),
    path("complaints/<int:number>/photo.jpg", photo, name="complaint-photo"),
]
