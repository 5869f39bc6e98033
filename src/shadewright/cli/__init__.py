"""The terminal: the same verbs and sums, for a keyboard or a script.

Every command answers in one JSON object with ``--json``, and in a short,
aligned text without it. What cannot be done is refused in one sentence on
standard error, with exit status 2.

A sum starts almost as fast as Python itself: each command is imported when it
is asked for, and no sum touches Django, numpy or the printing parts.

Contents: ``entry`` (where the program starts), ``commands`` (how commands are
found and how their faults are told), ``faults`` (a line that is wrong),
``answers`` (JSON or text), ``words`` (how amounts are written), then one file for
each command.
"""

from shadewright.cli.entry import main, run

__all__ = ["main", "run"]
