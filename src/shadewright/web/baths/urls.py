"""Addresses of the baths."""

from django.urls import path

from shadewright.web.baths.acts import change, give_up_bath
from shadewright.web.baths.plan_views import plan
from shadewright.web.baths.views import bath, baths

urlpatterns = [
    path("", baths, name="baths"),
    path("new/", plan, name="plan-bath"),
    path("<slug:number>/", bath, name="bath"),
    path("<slug:number>/doses/<slug:step>/", change, name="change-bottle"),
    path("<slug:number>/give-up/", give_up_bath, name="give-up-bath"),
]
