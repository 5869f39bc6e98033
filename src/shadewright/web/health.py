"""Tell a starter whether pages can be served."""

from django.db import DatabaseError, connection
from django.db.migrations.executor import MigrationExecutor
from django.http import HttpRequest, JsonResponse


def healthz(_request: HttpRequest) -> JsonResponse:
    """Answer 200 once the database answers and holds every migration."""
    if _is_ready():
        return JsonResponse({"status": "ok"})
    return JsonResponse({"status": "not ready"}, status=503)


def _is_ready() -> bool:
    try:
        executor = MigrationExecutor(connection)
        wanted = executor.loader.graph.leaf_nodes()
        return not executor.migration_plan(wanted)
    except DatabaseError:
        return False
