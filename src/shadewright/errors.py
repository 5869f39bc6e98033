"""The one tree of errors: every sentence that tells a person what went wrong.

::

    StudioError                 anything that Shadewright says no to
    ├── InputError              what was given cannot be used
    │   ├── OutOfRangeError     a number, a date or a choice outside what is allowed
    │   ├── UnitError           a quantity without its unit, or with the wrong one
    │   ├── MissingError        something needed was left out
    │   └── UnreadableError     a file, a photo or a text that cannot be read
    ├── NoAnswerError           the question has no answer
    │   └── NotConvergedError   a search or an iteration did not settle
    └── RecordError             what is remembered stands in the way
        ├── NotFoundError       no such record
        ├── ConflictError       the record says otherwise
        ├── NewerStudioError    the studio was kept by a newer version
        └── TooManyTriesError   wrong codes came too fast, or too many

Each error keeps its parts as fields and makes its own sentence: what was
asked, what was given with its unit, what is allowed, what to do. ``argument``
is the name of the parameter at fault, so that a form can put the sentence by
its field and the command line can name its option.
"""

from dataclasses import dataclass


class StudioError(Exception):
    """Anything that Shadewright says no to, in one plain sentence."""

    argument: str = ""

    @property
    def sentence(self) -> str:
        """The whole message, as a person reads it."""
        return str(self)


class InputError(StudioError):
    """What was given cannot be used."""


@dataclass(eq=False, kw_only=True)
class OutOfRangeError(InputError):
    """A number, a date or a choice lies outside what is allowed.

    ``name`` is the quantity in the dyer's words, capitalised ("Strength");
    ``given`` and ``allowed`` carry their units ("-1 %", "above 0 and at most
    50 %"); ``advice`` is a whole sentence, or empty.
    """

    name: str
    given: str
    allowed: str
    advice: str = ""
    argument: str = ""

    def __str__(self) -> str:
        """Say what must hold, what was given and what to do."""
        said = f"{self.name} must be {self.allowed}; got {self.given}."
        return f"{said} {self.advice}".rstrip()


@dataclass(eq=False, kw_only=True)
class UnitError(InputError):
    """A quantity came without its unit, or with one that does not fit."""

    name: str
    given: str
    allowed: str
    argument: str = ""

    def __str__(self) -> str:
        """Say how the quantity is written."""
        return f"{self.name} is written as {self.allowed}; got “{self.given}”."


@dataclass(eq=False, kw_only=True)
class MissingError(InputError):
    """Something needed was left out; ``name`` is a noun, ``advice`` a sentence."""

    name: str
    advice: str = ""
    argument: str = ""

    def __str__(self) -> str:
        """Say what is missing and what to do."""
        return f"{self.name} is missing. {self.advice}".rstrip()


@dataclass(eq=False, kw_only=True)
class UnreadableError(InputError):
    """A file, a photo or a text cannot be read; ``why`` is a whole sentence."""

    name: str
    why: str
    advice: str = ""
    argument: str = ""

    def __str__(self) -> str:
        """Say what could not be read, why, and what to do."""
        return f"{self.name} cannot be read. {self.why} {self.advice}".rstrip()


class NoAnswerError(StudioError):
    """The question has no answer."""


@dataclass(eq=False, kw_only=True)
class NotConvergedError(NoAnswerError):
    """A search or an iteration did not settle within its steps."""

    name: str
    steps: int
    argument: str = ""

    def __str__(self) -> str:
        """Say what did not settle."""
        return f"{self.name} did not settle within {self.steps} steps."


class RecordError(StudioError):
    """What is remembered stands in the way."""


@dataclass(eq=False, kw_only=True)
class NotFoundError(RecordError):
    """No such record; ``kind`` is the noun ("bottle"), ``key`` what was asked for."""

    kind: str
    key: str
    advice: str = ""
    argument: str = ""

    def __str__(self) -> str:
        """Say what was looked for in vain."""
        return f"There is no {self.kind} “{self.key}”. {self.advice}".rstrip()


@dataclass(eq=False, kw_only=True)
class ConflictError(RecordError):
    """The record says otherwise; ``why`` and ``advice`` are whole sentences."""

    why: str
    advice: str = ""
    argument: str = ""

    def __str__(self) -> str:
        """Say what stands in the way and what to do."""
        return f"{self.why} {self.advice}".rstrip()


@dataclass(eq=False, kw_only=True)
class NewerStudioError(RecordError):
    """The studio's records were kept by a newer version of the program."""

    where: str
    unknown: tuple[str, ...]
    argument: str = ""

    def __str__(self) -> str:
        """Say that nothing was touched and what to do."""
        return (
            f"The studio in {self.where} was kept by a newer Shadewright "
            f"(it knows of {', '.join(self.unknown)}). Nothing was changed. "
            "Update the program, then open the studio again."
        )


@dataclass(eq=False, kw_only=True)
class TooManyTriesError(RecordError):
    """Wrong codes came too fast; ``wait_s`` is None where waiting does not help."""

    wait_s: int | None
    argument: str = ""

    def __str__(self) -> str:
        """Say when the next try is heard, or who must act."""
        if self.wait_s is None:
            return (
                "Too many wrong codes were tried, so no phone is let in. "
                "At the desk, open pairing again."
            )
        noun = "second" if self.wait_s == 1 else "seconds"
        return (
            f"A wrong code was tried a moment ago. Try again in {self.wait_s} {noun}."
        )
