"""The sizes of label that can be printed, by millimetres and count.

The geometry of each sheet is common practice: sizes that many makers cut
alike. A sheet that sits differently is met by the printer's own offset.
"""

from dataclasses import dataclass

from shadewright.errors import OutOfRangeError

_DOT_MM = 25.4 / 203  # the dot of a common label printer
_QR_MODULES = 25 + 2 * 4  # version 2 with its quiet zone (ISO/IEC 18004)
_MODULE_DOTS = (8, 7, 6, 5, 4, 3)
_LEAST_CODE_MM = 5.8


@dataclass(frozen=True)
class LabelFormat:
    """One way that labels are cut; ``inset_mm`` keeps print off the edges."""

    key: str
    paper: str
    page_mm: tuple[float, float]
    label_mm: tuple[float, float]
    grid: tuple[int, int] = (1, 1)
    first_mm: tuple[float, float] = (0.0, 0.0)
    pitch_mm: tuple[float, float] = (0.0, 0.0)
    inset_mm: float = 1.5

    @property
    def per_page(self) -> int:
        """How many labels a page holds."""
        return self.grid[0] * self.grid[1]

    @property
    def name(self) -> str:
        """The format in words."""
        size = f"{self.label_mm[0]:g} × {self.label_mm[1]:g} mm"
        if self.per_page == 1:
            return f"{self.paper}, {size}"
        return f"{self.paper}, {self.per_page} labels of {size}"

    @property
    def corners_mm(self) -> tuple[tuple[float, float], ...]:
        """The top left corner of each label, row by row."""
        (left, top), (across, down) = self.first_mm, self.pitch_mm
        columns, rows = map(range, self.grid)
        return tuple((left + x * across, top + y * down) for y in rows for x in columns)

    @property
    def square_code_mm(self) -> float:
        """The side of the square code: whole printer dots, its quiet zone within."""
        width, height = (side - 2 * self.inset_mm for side in self.label_mm)
        most = min(0.38 * width, height - _LEAST_CODE_MM)
        sides = [_QR_MODULES * dots * _DOT_MM for dots in _MODULE_DOTS]
        return next((side for side in sides if side <= most), sides[-1])


def _single(width_mm: float, height_mm: float) -> LabelFormat:
    size = (width_mm, height_mm)
    key = f"single-{width_mm:g}x{height_mm:g}"
    return LabelFormat(key, "Single label", page_mm=size, label_mm=size)


_A4 = (210.0, 297.0)
_LETTER = (215.9, 279.4)

LABEL_FORMATS: tuple[LabelFormat, ...] = (
    LabelFormat(
        key="a4-21",
        paper="A4 sheet",
        page_mm=_A4,
        label_mm=(63.5, 38.1),
        grid=(3, 7),
        first_mm=(7.2, 15.15),
        pitch_mm=(66.0, 38.1),
    ),
    LabelFormat(
        key="a4-24",
        paper="A4 sheet",
        page_mm=_A4,
        label_mm=(70.0, 37.0),
        grid=(3, 8),
        first_mm=(0.0, 0.5),
        pitch_mm=(70.0, 37.0),
        inset_mm=4.5,
    ),
    LabelFormat(
        key="a4-14",
        paper="A4 sheet",
        page_mm=_A4,
        label_mm=(99.1, 38.1),
        grid=(2, 7),
        first_mm=(4.65, 15.15),
        pitch_mm=(101.6, 38.1),
    ),
    LabelFormat(
        key="a4-8",
        paper="A4 sheet",
        page_mm=_A4,
        label_mm=(99.1, 67.7),
        grid=(2, 4),
        first_mm=(4.65, 13.1),
        pitch_mm=(101.6, 67.7),
        inset_mm=2.5,
    ),
    LabelFormat(
        key="a4-65",
        paper="A4 sheet",
        page_mm=_A4,
        label_mm=(38.1, 21.2),
        grid=(5, 13),
        first_mm=(4.75, 10.7),
        pitch_mm=(40.6, 21.2),
        inset_mm=1.2,
    ),
    LabelFormat(
        key="letter-30",
        paper="US Letter sheet",
        page_mm=_LETTER,
        label_mm=(66.7, 25.4),
        grid=(3, 10),
        first_mm=(4.75, 12.7),
        pitch_mm=(69.85, 25.4),
    ),
    LabelFormat(
        key="letter-10",
        paper="US Letter sheet",
        page_mm=_LETTER,
        label_mm=(101.6, 50.8),
        grid=(2, 5),
        first_mm=(3.97, 12.7),
        pitch_mm=(106.36, 50.8),
        inset_mm=2.0,
    ),
    _single(62, 29),
    _single(57, 32),
    _single(50, 30),
    _single(89, 36),
    _single(102, 51),
)


def label_format(key: str) -> LabelFormat:
    """Return the label format of that key."""
    for known in LABEL_FORMATS:
        if known.key == key:
            return known
    keys = ", ".join(known.key for known in LABEL_FORMATS)
    raise OutOfRangeError(
        name="The label format",
        given=f"“{key[:30]}”",
        allowed=f"one of {keys}",
        argument="format",
    )
