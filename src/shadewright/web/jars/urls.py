"""Addresses of the jars."""

from django.urls import path

from shadewright.web.jars.views import hand_in, jar, jars, receive, weigh

urlpatterns = [
    path("jars/", jars, name="jars"),
    path("jars/new/", receive, name="receive-jar"),
    path("jars/<int:jar_id>/", jar, name="jar"),
    path("jars/<int:jar_id>/weigh/", weigh, name="weigh-jar"),
    path("jars/<int:jar_id>/hand-in/", hand_in, name="hand-in-jar"),
]
