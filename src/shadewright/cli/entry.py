"""Where the program starts, and the last place that a fault can reach."""

import io
import os
import sys
from collections.abc import Sequence

import click

from shadewright import __version__
from shadewright.cli.commands import LazyGroup, Listed
from shadewright.errors import StudioError

REFUSED = 2
STOPPED = 130

COMMANDS = {
    "stock": Listed(
        module="shadewright.cli.stock",
        says="Make, rescue, dilute and merge stock solutions.",
    ),
    "bath": Listed(
        module="shadewright.cli.bath",
        says="Doses, water, acid and salt for a bath.",
    ),
    "acid": Listed(
        module="shadewright.cli.acid",
        says="How sour water and acid are, without any fibre.",
    ),
    "heat": Listed(
        module="shadewright.cli.heat",
        says="Energy and minutes to bring a bath to a temperature.",
    ),
    "difference": Listed(
        module="shadewright.cli.difference",
        says="How far two colours are apart, and which way.",
    ),
    "palette": Listed(
        module="shadewright.cli.palette",
        says="Learn a palette from swatches; foretell mixes, find recipes.",
    ),
    "day": Listed(
        module="shadewright.cli.day",
        says="Plan a dye day with too few burners.",
    ),
    "lot": Listed(
        module="shadewright.cli.lot",
        says="Trace a lot back to the jars; find what changed in it.",
    ),
    "serve": Listed(
        module="shadewright.cli.studio", says="Open your studio in the browser."
    ),
    "demo": Listed(
        module="shadewright.cli.studio", says="Open the invented demo studio."
    ),
    "backup": Listed(
        module="shadewright.cli.studio", says="Keep the whole studio in one file."
    ),
    "restore": Listed(
        module="shadewright.cli.studio", says="Bring a studio back from its backup."
    ),
}

shadewright = LazyGroup(
    listed=COMMANDS,
    name="shadewright",
    says="The working record and the reckoning of a small dye studio.",
    params=[
        click.Option(
            ["--version"],
            is_flag=True,
            is_eager=True,
            expose_value=False,
            callback=lambda ctx, _param, wanted: _say_version(ctx, wanted=wanted),
            help="Say which version this is.",
        )
    ],
)


def main() -> int:
    """Run the command that was typed and return its exit status."""
    return run(sys.argv[1:])


def run(arguments: Sequence[str]) -> int:
    """Run one command; whatever goes wrong leaves as a sentence."""
    _write_any_sign()
    try:
        status = shadewright.main(
            list(arguments), prog_name="shadewright", standalone_mode=False
        )
        sys.stdout.flush()
    except StudioError as error:
        return _refuse(_named(error))
    except click.ClickException as error:
        return _refuse(_fault(error))
    except click.Abort:
        return STOPPED
    except BrokenPipeError:
        _let_the_reader_go()
        return 1
    return status if isinstance(status, int) else 0


def _say_version(ctx: click.Context, *, wanted: bool) -> None:
    if wanted:
        click.echo(f"shadewright {__version__}")
        ctx.exit()


def _fault(error: click.ClickException) -> str:
    from shadewright.cli.faults import fault_in_words  # no sum needs it

    return fault_in_words(error)


def _named(error: StudioError) -> str:
    """Return the sentence with the option at fault before it."""
    return f"{error.argument}: {error}" if error.argument else str(error)


def _refuse(sentence: str) -> int:
    click.echo(sentence, err=True)
    return REFUSED


def _write_any_sign() -> None:
    """Let a terminal that knows no ± or − show a question mark, not a traceback."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _let_the_reader_go() -> None:
    """Throw away what a closed pipe (``| head``) did not take."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, sys.stdout.fileno())
