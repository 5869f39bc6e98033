"""The migrations as a later program would have them: ours and one more."""

from shadewright.records import migrations

__path__ = [*migrations.__path__, *__path__]
