"""Open a studio, copy it, put a copy back."""

import os
from collections.abc import Sequence
from pathlib import Path

import click

from shadewright.cli.colour_files import on_one_thread
from shadewright.cli.serving import OwnStudio, free_port, serve_pages
from shadewright.errors import ConflictError

_FOLDER = click.Path(file_okay=False, resolve_path=True, path_type=Path)
_data = click.option(
    "--data", type=_FOLDER, help="Folder of the studio; by default your own."
)
_port = click.option(
    "--port",
    type=click.IntRange(1, 65535),
    help="Port to serve the pages on; by default 8000 or the next that is free.",
)
_no_browser = click.option(
    "--no-browser", is_flag=True, help="Do not open the pages in a browser."
)

_lan = click.option(
    "--lan", is_flag=True, help="Let paired phones in, on your network at home."
)


@click.command("serve")
@_port
@_lan
@_no_browser
@_data
def serve(*, port: int | None, lan: bool, no_browser: bool, data: Path | None) -> None:
    """Open your own studio in the browser."""
    _open(data, is_demo=False, is_lan=lan)
    _serve("Your studio", port=port, is_browser_opened=not no_browser)


@click.command("demo")
@_port
@_lan
@_no_browser
@_data
def demo(*, port: int | None, lan: bool, no_browser: bool, data: Path | None) -> None:
    """Open the demo studio, kept apart from your own."""
    _open(data, is_demo=True, is_lan=lan)
    _build_demo()
    from shadewright.workflows.studio import own_studio_wanted

    own = OwnStudio()
    own_studio_wanted.connect(own.open)
    try:
        _serve("The demo studio", port=port, is_browser_opened=not no_browser)
    finally:
        own.close()


@click.command("backup")
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@_data
def backup(*, file: Path, data: Path | None) -> None:
    """Write the whole studio to FILE."""
    _open(data, is_demo=False)
    from shadewright.workflows.opening import write_backup

    write_backup(file)
    click.echo(f"The whole studio is in {file}.")


@click.command("restore")
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@_data
def restore(*, file: Path, data: Path | None) -> None:
    """Put the studio back as it stands in FILE."""
    _open(data, is_demo=False)
    from shadewright.workflows.opening import restore as put_back

    kept = put_back(file.read_bytes())
    click.echo(f"The studio is as it was in {file}.")
    if kept is not None:
        click.echo(f"As it was before, it is kept in {kept}.")


def _serve(what: str, *, port: int | None, is_browser_opened: bool) -> None:
    from django.conf import settings

    at_home = settings.HOME_ADDRESSES
    serve_pages(
        port=free_port(port, at_home),
        is_browser_opened=is_browser_opened,
        what=what,
        at_home=at_home,
    )


def open_own(data: Path | None) -> None:
    """Open a studio of one's own for a command that answers on standard output."""
    for line in _opened(data, is_demo=False):
        click.echo(line, err=True)


def _open(data: Path | None, *, is_demo: bool, is_lan: bool = False) -> None:
    for line in _opened(data, is_demo=is_demo, is_lan=is_lan):
        click.echo(line)


def _opened(data: Path | None, *, is_demo: bool, is_lan: bool = False) -> Sequence[str]:
    """Say which studio is meant, before Django reads its settings; then open it."""
    os.environ["DJANGO_SETTINGS_MODULE"] = "shadewright.settings"
    os.environ["SHADEWRIGHT_DEMO"] = str(data or 1) if is_demo else "0"
    if data is not None and not is_demo:
        os.environ["SHADEWRIGHT_DATA"] = str(data)
    os.environ["SHADEWRIGHT_LAN"] = "1" if is_lan else "0"
    on_one_thread()
    import django

    django.setup()
    _refuse_no_network(is_lan=is_lan)
    from shadewright.workflows.opening import open_studio

    return open_studio()


def _refuse_no_network(*, is_lan: bool) -> None:
    from django.conf import settings

    if is_lan and not settings.HOME_ADDRESSES:
        raise ConflictError(
            why="This computer has no address in a network at home.",
            advice="Join the Wi-Fi or plug the cable in, or open it without --lan.",
            argument="--lan",
        )


def _build_demo() -> None:
    from django.utils import timezone

    from shadewright.workflows.demo import build_demo

    build_demo(timezone.localtime())
