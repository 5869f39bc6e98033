"""How a colour can be come by here: by eye, off a photo, with one of the meters."""

from dataclasses import dataclass

from shadewright.records.models import ColourReading
from shadewright.records.models.swatches import ReadBy
from shadewright.workflows.shades.meters import meters

_SIMPLE = {
    ReadBy.EYE: "Picked on a screen beside the yarn",
    ReadBy.PHOTO: "Off a photo",
    ReadBy.PHOTO_CARD: "Off a photo with a grey card in it",
    ReadBy.CHART: "Off the maker’s chart",
}


@dataclass(frozen=True, kw_only=True)
class Way:
    """A way to come by a colour: one tap of a form."""

    words: str
    read_by: ReadBy
    meter_id: int | None = None

    @property
    def key(self) -> str:
        """What a form sends for it."""
        by = self.read_by.value
        return by if self.meter_id is None else f"{by}:{self.meter_id}"


def ways_to_read() -> tuple[Way, ...]:
    """Return every way there is here; without a meter of its own, any meter’s Lab."""
    simple = tuple(Way(words=words, read_by=by) for by, words in _SIMPLE.items())
    own = tuple(
        Way(words=f"Read by {each.words}", read_by=ReadBy.METER, meter_id=each.id)
        for each in meters()
    )
    any_meter = Way(words="Read by a meter: Lab (D65, 10°)", read_by=ReadBy.METER)
    return (*simple, *(own or (any_meter,)))


def last_way() -> Way:
    """Return the way that was taken last, else the simplest."""
    ways = ways_to_read()
    newest = ColourReading.objects.filter(undoes=None).order_by("-id").first()
    if newest is None:
        return ways[0]
    is_meter = newest.read_by in {ReadBy.METER, ReadBy.LIGHTS, ReadBy.SPECTRUM}
    wanted = (ReadBy.METER if is_meter else newest.read_by, newest.meter_id)
    return next((w for w in ways if (w.read_by, w.meter_id) == wanted), ways[0])
