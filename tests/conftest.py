"""Where every test runs: a studio folder of its own, SQLite or PostgreSQL.

Django's settings read the environment once, so it is set here before Django
starts; that is why pyproject.toml does not name the settings module.
"""

import os
import shutil
import signal
import tempfile
import uuid
from pathlib import Path
from random import Random
from types import SimpleNamespace
from typing import Literal

import django
import hypothesis
import pytest

from tests import postgres

pytest_plugins = ["tests.browser"]

TESTS = Path(__file__).parent
STUDIO = pytest.StashKey[Path]()
SERVER = pytest.StashKey[postgres.Server]()
KEYS = Random()  # ruff: ignore[suspicious-non-cryptographic-random-usage]
STORE_FIXTURES = {"db", "transactional_db", "django_db_reset_sequences", "live_server"}


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add ``--postgres``."""
    parser.addoption(
        "--postgres",
        action="store_true",
        help="run on a PostgreSQL that is started for it; use with -m store",
    )


def pytest_configure(config: pytest.Config) -> None:
    """Fix the studio's folder and its database for this run."""
    folder = Path(tempfile.mkdtemp(prefix="shadewright-test-"))
    config.stash[STUDIO] = folder
    # Small matrices are done before a second thread has woken up.
    for library in ("OPENBLAS", "OMP", "MKL"):
        os.environ.setdefault(f"{library}_NUM_THREADS", "1")
    _choose_draws(config)
    os.environ["SHADEWRIGHT_DATA"] = str(folder)
    os.environ["SHADEWRIGHT_DEMO"] = "0"
    os.environ["SHADEWRIGHT_DATABASE"] = ""
    os.environ["DJANGO_SETTINGS_MODULE"] = "shadewright.settings"
    os.environ.pop("SHADEWRIGHT_PORT", None)
    if config.getoption("--postgres"):
        # A run that is told to end ends as one that is interrupted, with its server.
        signal.signal(signal.SIGTERM, signal.default_int_handler)
        config.stash[SERVER] = _server()
        os.environ["SHADEWRIGHT_DATABASE"] = config.stash[SERVER].url
    django.setup()
    _fit_no_palette_unasked()


def pytest_unconfigure(config: pytest.Config) -> None:
    """Stop the server and clear the folder away."""
    if server := config.stash.get(SERVER, None):
        server.stop()
    if folder := config.stash.get(STUDIO, None):
        shutil.rmtree(folder, ignore_errors=True)


def pytest_ignore_collect(
    collection_path: Path, config: pytest.Config
) -> Literal[True] | None:
    """Do not even read a file whose tests ``-m`` leaves out for where they stand."""
    if collection_path.is_dir() or TESTS not in collection_path.parents:
        return None
    path = collection_path.relative_to(TESTS)
    return True if leaves_out(config.option.markexpr, path) else None


def leaves_out(words: str, path: Path) -> bool:
    """Say whether ``-m`` takes no test of a file, whatever each is marked beside."""
    part = _part(path.parts)
    is_other = words == "core" and part != "core"
    return is_other or (bool(part) and f"not {part}" in words and " or " not in words)


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark tests by what they use; put those with a browser last.

    Once Playwright's event loop stands, Django's guard against it is off. A test
    with a browser is three programs and a clock: one that fails is asked once more,
    and listed as such.
    """
    for item in items:
        used = set(getattr(item, "fixturenames", ()))
        if part := _part(item.path.relative_to(TESTS).parts):
            item.add_marker(part)
        if "browser" in used:
            item.add_marker("browser")
            item.add_marker(pytest.mark.flaky(reruns=1))
        elif item.get_closest_marker("one_store"):
            continue
        elif used & STORE_FIXTURES or item.get_closest_marker("django_db"):
            item.add_marker("store")
    items.sort(key=lambda item: item.get_closest_marker("browser") is not None)


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Let a test draw the keys that it drew last time: bottles' codes hang on them."""
    KEYS.seed(item.nodeid)


@pytest.fixture(scope="session")
def django_db_modify_db_settings(request: pytest.FixtureRequest) -> None:
    """Keep the SQLite of the tests in a file, as a studio's is; not in memory."""
    from django.db import connections

    entry = connections["default"].settings_dict
    if entry["ENGINE"].endswith("sqlite3"):
        folder = request.config.stash[STUDIO]
        entry["TEST"]["NAME"] = str(folder / "test.sqlite3")


def _choose_draws(config: pytest.Config) -> None:
    """Let a run draw the same keys and examples as the last, or new ones if asked.

    How long an example takes says what else the machine does, so none has a deadline.
    """
    hypothesis.settings.register_profile("same", deadline=None, derandomize=True)
    hypothesis.settings.register_profile("new", deadline=None)
    if not config.getoption("--hypothesis-profile"):
        hypothesis.settings.load_profile("same")
        # The keys of deeds come from here, not from the machine's noise.
        drawn = SimpleNamespace(**{**vars(os), "urandom": KEYS.randbytes})
        uuid.os = drawn  # type: ignore[attr-defined]


def _part(parts: tuple[str, ...]) -> str:
    """Return whether a test is of core, or of a page that asks through workflows.

    The catalogue's pages ask the store themselves, so they are no such pages.
    """
    if parts[0] == "core":
        return "core"
    is_page = parts[0] == "web" and parts[1] != "catalogue"
    return "page" if is_page else ""


def _server() -> postgres.Server:
    try:
        return postgres.start()
    except postgres.NoServerError:
        message = "PostgreSQL 15 or newer is missing: sudo apt install postgresql"
        raise pytest.UsageError(message) from None


def _fit_no_palette_unasked() -> None:
    """Leave the palette alone, but where a test sets ``REFITS`` to "at once"."""
    from django.conf import settings

    settings.REFITS = "never"
