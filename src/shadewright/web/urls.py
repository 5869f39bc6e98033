"""Every address. Each room brings its own; they are listed in docs/guide/pages.md."""

from django.templatetags.static import static
from django.urls import include, path
from django.views.generic import RedirectView

from shadewright.web.health import healthz
from shadewright.web.person import choose_person
from shadewright.web.undo import undo

urlpatterns = [
    path("healthz", healthz, name="healthz"),
    path("favicon.ico", RedirectView.as_view(url=static("shadewright/favicon.svg"))),
    path("person/", choose_person, name="choose-person"),
    path("undo/<uuid:deed>/", undo, name="undo"),
    path("", include("shadewright.web.start.urls")),
    path("", include("shadewright.web.buyers.urls")),
    path("", include("shadewright.web.corrections.urls")),
    path("", include("shadewright.web.tags.urls")),
    path("", include("shadewright.web.checks.urls")),
    path("", include("shadewright.web.causes.urls")),
    path("", include("shadewright.web.lots.urls")),
    path("", include("shadewright.web.shelf.urls")),
    path("", include("shadewright.web.levers.urls")),
    path("", include("shadewright.web.turnover.urls")),
    path("", include("shadewright.web.jars.urls")),
    path("", include("shadewright.web.catalogue.urls")),
    path("", include("shadewright.web.today.urls")),
    path("", include("shadewright.web.labels.urls")),
    path("", include("shadewright.web.bottles.urls")),
    path("stocks/", include("shadewright.web.stocks.urls")),
    path("", include("shadewright.web.phones.urls")),
    path("", include("shadewright.web.acidity.urls")),
    path("", include("shadewright.web.day_papers.urls")),
    path("recipes/", include("shadewright.web.recipes.urls")),
    path("days/", include("shadewright.web.dye_days.urls")),
    path("days/", include("shadewright.web.day_baths.urls")),
    path("orders/", include("shadewright.web.orders.urls")),
    path("baths/", include("shadewright.web.baths.urls")),
    path("bench/", include("shadewright.web.bench.urls")),
    path("", include("shadewright.web.cards.urls")),
    path("", include("shadewright.web.evidence.urls")),
    path("shades/", include("shadewright.web.palettes.urls")),
    path("shades/", include("shadewright.web.matching.urls")),
    path("shades/", include("shadewright.web.mixes.urls")),
    path("shades/", include("shadewright.web.swatches.urls")),
    path("shades/", include("shadewright.web.swatch_files.urls")),
    path("shades/", include("shadewright.web.swatch_plans.urls")),
]

handler400 = "shadewright.web.faults.bad_request"
handler403 = "shadewright.web.faults.forbidden"
handler404 = "shadewright.web.faults.not_found"
handler500 = "shadewright.web.faults.broken"
