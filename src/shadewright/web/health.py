"""Tell a starter whether pages can be served."""

from django.http import HttpRequest, JsonResponse

from shadewright.workflows.opening import is_open


def healthz(_request: HttpRequest) -> JsonResponse:
    """Answer 200 once the database answers and holds every migration."""
    if is_open():
        return JsonResponse({"status": "ok"})
    return JsonResponse({"status": "not ready"}, status=503)
