"""What is said when the line itself is wrong: an option missing, unknown or twice."""

import click

from shadewright.cli.commands import option_name


def fault_in_words(error: click.ClickException) -> str:
    """Return one sentence that names the option, and where to read on."""
    match error:
        case click.MissingParameter():
            said = _missing(error)
        case click.BadParameter(param=click.Parameter(type=click.IntRange())):
            said = _whole_number(error)
        case click.NoSuchOption():
            said = f"There is no option {error.option_name}. {_meant(error)}"
        case click.exceptions.NoSuchCommand():
            said = f"There is no command “{error.command_name}”. {_help(error)}"
        case click.BadOptionUsage():
            said = f"{error.option_name} needs something behind it. {_help(error)}"
        case click.UsageError() if "unexpected extra argument" in error.message:
            said = _loose(error)
        case _:
            said = error.format_message()
    return said


def _loose(error: click.UsageError) -> str:
    """Say which words belong to nothing, and how words are held together."""
    words = error.message[error.message.find("(") + 1 :].rstrip(")")
    return (
        f"“{words}” belongs to no option. Words that belong together stand in quotes, "
        "as “cylinder 500ml B”."
    )


def _missing(error: click.MissingParameter) -> str:
    """Say what is missing, and how it is written."""
    command = error.ctx.command.help if error.ctx else ""
    says = getattr(error.param, "help", None) or command or ""
    return f"{option_name(error.param)} is missing: {says}"


def _whole_number(error: click.BadParameter) -> str:
    """Say which whole numbers will do."""
    kind = error.param.type if error.param else None
    limits = (
        f" from {kind.min} to {kind.max}" if isinstance(kind, click.IntRange) else ""
    )
    return f"{option_name(error.param)} must be a whole number{limits}."


def _meant(error: click.NoSuchOption) -> str:
    """Name the option that is spelt most like it."""
    if error.possibilities:
        return f"Did you mean {' or '.join(error.possibilities)}?"
    return _help(error)


def _help(error: click.UsageError) -> str:
    """Say where all that can be typed is listed."""
    return f"See {error.ctx.command_path} --help." if error.ctx else ""
