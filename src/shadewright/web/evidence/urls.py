"""Addresses of evidence."""

from django.urls import path

from shadewright.web.evidence import judging, predicting, views

urlpatterns = [
    path("shades/fits/", views.fits, name="fits"),
    path("shades/fits/status/", views.fit_status, name="fit-status"),
    path("shades/fits/now/", views.fit_now, name="fit-now"),
    path("shades/predictions/", predicting.predictions, name="predictions"),
    path(
        "shades/swatches/<int:swatch_id>/set-aside/",
        judging.set_aside,
        name="set-aside",
    ),
    path("shades/swatches/<int:swatch_id>/again/", judging.restore, name="restore"),
    path("shades/swatches/<int:swatch_id>/trust/", judging.trust, name="trust"),
    path("shades/lots/teach/", judging.teach_lots, name="teach-lots"),
    path("shades/lots/<str:number>/teach/", judging.teach_lot, name="teach-lot"),
    path("shades/lots/<str:number>/leave/", judging.leave_lot, name="leave-lot"),
]
