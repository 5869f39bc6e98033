"""Addresses of the orders."""

from django.urls import path

from shadewright.web.orders.listing import closed_orders, open_orders, what_to_dye
from shadewright.web.orders.par_views import pars
from shadewright.web.orders.views import close, open_again, order, promised, share
from shadewright.web.orders.writing import change, new_order

urlpatterns = [
    path("", open_orders, name="orders"),
    path("closed/", closed_orders, name="closed-orders"),
    path("new/", new_order, name="order-new"),
    path("pars/", pars, name="pars"),
    path("to-dye/", what_to_dye, name="to-dye"),
    path("<int:number>/", order, name="order"),
    path("<int:number>/edit/", change, name="order-edit"),
    path("<int:number>/promise/", promised, name="order-promise"),
    path("<int:number>/close/", close, name="order-close"),
    path("<int:number>/open/", open_again, name="order-open"),
    path("<int:number>/lines/<int:position>/", share, name="order-share"),
]
