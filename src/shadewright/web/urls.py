"""Every address. Each room brings its own; they are listed in docs/guide/pages.md."""

from django.templatetags.static import static
from django.urls import path
from django.views.generic import RedirectView

from shadewright.web.health import healthz
from shadewright.web.person import choose_person
from shadewright.web.undo import undo

urlpatterns = [
    path("healthz", healthz, name="healthz"),
    path("favicon.ico", RedirectView.as_view(url=static("shadewright/favicon.svg"))),
    path("person/", choose_person, name="choose-person"),
    path("undo/<uuid:deed>/", undo, name="undo"),
]

handler400 = "shadewright.web.faults.bad_request"
handler403 = "shadewright.web.faults.forbidden"
handler404 = "shadewright.web.faults.not_found"
handler500 = "shadewright.web.faults.broken"
