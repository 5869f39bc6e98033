"""The migrations make the tables that the models speak of."""

from django.apps import apps
from django.db.migrations import Migration
from django.db.migrations.autodetector import MigrationAutodetector
from django.db.migrations.loader import MigrationLoader
from django.db.migrations.questioner import NonInteractiveMigrationQuestioner
from django.db.migrations.state import ProjectState
from django.db.models import TextField


def changes(state: ProjectState) -> dict[str, list[Migration]]:
    """Return the migrations that would still have to be made."""
    loader = MigrationLoader(None)
    questioner = NonInteractiveMigrationQuestioner(dry_run=True)
    detector = MigrationAutodetector(loader.project_state(), state, questioner)
    return dict(detector.changes(graph=loader.graph))


def test_no_migration_is_missing() -> None:
    assert changes(ProjectState.from_apps(apps)) == {}


def test_a_missing_migration_is_seen() -> None:
    state = ProjectState.from_apps(apps)
    (label, model), *_ = state.models
    state.add_field(label, model, "unheard_of", TextField(null=True), False)
    assert set(changes(state)) == {label}


def test_migrations_have_one_end() -> None:
    assert MigrationLoader(None).detect_conflicts() == {}
