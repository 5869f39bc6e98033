"""How commands are found, and how their faults name the option."""

from collections.abc import Mapping
from dataclasses import dataclass
from importlib import import_module
from typing import cast

import click

from shadewright.errors import StudioError


def option_name(param: click.Parameter | None) -> str:
    """Return a parameter as a person types it: ``--volume``, or ``PORTION``."""
    if param is None:
        return ""
    if isinstance(param, click.Option):
        return max(param.opts, key=len)
    return param.human_readable_name


class SumCommand(click.Command):
    """A command whose faults name the option, not the core's parameter."""

    def invoke(self, ctx: click.Context) -> object:
        """Run the command; a fault leaves with the option's name in it."""
        try:
            return super().invoke(ctx)
        except StudioError as error:
            error.argument = self.option_for(error.argument)
            raise

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Refuse an option that stands twice: the first would be lost unseen."""
        _values, _rest, order = self.make_parser(ctx).parse_args(list(args))
        for param in {p for p in order if order.count(p) > 1}:
            if isinstance(param, click.Option) and not param.multiple:
                twice = f"{option_name(param)} stands there twice: write it once."
                raise click.UsageError(twice, ctx)
        return super().parse_args(ctx, args)

    def option_for(self, argument: str) -> str:
        """Return the option that feeds a parameter: ``volume_ml`` is ``--volume``."""
        feeding = [
            param
            for param in self.params
            if param.name and f"{argument}_".startswith(f"{param.name}_")
        ]
        if not feeding:
            return argument if argument.startswith("--") else ""
        return option_name(max(feeding, key=lambda param: len(param.name or "")))


class SumGroup(click.Group):
    """A group of sums: ``shadewright stock ...``."""

    command_class = SumCommand


@dataclass(frozen=True, kw_only=True)
class Listed:
    """Where a command stands, and what the list of commands says of it."""

    module: str
    says: str


class LazyGroup(click.Group):
    """A group that imports a command only when it is asked for."""

    def __init__(
        self,
        *,
        name: str,
        says: str,
        listed: Mapping[str, Listed],
        params: list[click.Parameter],
    ) -> None:
        """Keep the list; a command is named as its function in its module."""
        super().__init__(
            name=name,
            help=says,
            params=params,
            context_settings={"help_option_names": ["-h", "--help"]},
        )
        self.listed = listed

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the names in the order of the list."""
        del ctx
        return list(self.listed)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Import the command that was asked for."""
        del ctx
        if cmd_name not in self.listed:
            return None
        module = import_module(self.listed[cmd_name].module)
        return cast("click.Command", getattr(module, cmd_name))

    def format_commands(
        self, ctx: click.Context, formatter: click.HelpFormatter
    ) -> None:
        """Write the list of commands without importing any of them."""
        del ctx
        with formatter.section("Commands"):
            formatter.write_dl([(name, at.says) for name, at in self.listed.items()])
