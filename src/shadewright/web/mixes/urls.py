"""The addresses of mixes."""

from django.urls import path

from shadewright.web.mixes.carry_views import carry
from shadewright.web.mixes.gradient_views import (
    gradient,
    plan_gradient,
    save_gradient,
)
from shadewright.web.mixes.views import mix, mix_doses, mix_told, save_mix

urlpatterns = [
    path("mix/", mix, name="mix"),
    path("mix/told/", mix_told, name="mix-told"),
    path("mix/doses/", mix_doses, name="mix-doses"),
    path("mix/save/", save_mix, name="save-mix"),
    path("carry/<int:version_id>/", carry, name="carry"),
    path("gradient/", gradient, name="gradient"),
    path("gradient/swatches/", plan_gradient, name="plan-gradient"),
    path("gradient/save/", save_gradient, name="save-gradient"),
]
