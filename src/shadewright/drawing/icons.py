"""Line icons on a 24 by 24 grid; always beside words, so always silent."""

from shadewright.drawing.svg import Box, drawing

ICONS: dict[str, str] = {
    "today": '<circle cx="12" cy="12" r="8.5"/><path d="M12 7v5l3.5 2"/>',
    "shelf": '<path d="M9.5 3h5M10 3v4l-3 3.5V20h10v-9.5L14 7V3M7 14h10"/>',
    "shades": '<path d="M4 4h9v9H4zM11 11h9v9h-9z"/>',
    "recipe": '<path d="M6 3.5h12v17H6zM9 8h6M9 12h6M9 16h4"/>',
    "days": '<path d="M3 6h9M8 12h10M5 18h12M15 6h2M21 12h.5"/>',
    "tick": '<path d="M4.5 12.5l5 5L19.5 7"/>',
    "undo": '<path d="M8.5 5L4 9.5 8.5 14M4 9.5h10a5.5 5.5 0 010 11h-3"/>',
    "caution": '<path d="M12 3.5L22 20.5H2zM12 10v5M12 17.2v.8"/>',
    "problem": (
        '<path d="M8.2 3h7.6L21 8.2v7.6L15.8 21H8.2L3 15.8V8.2z'
        'M12 7.5v5.5M12 15.8v.8"/>'
    ),
    "note": '<path d="M4 20l1-4L16 5l3 3L8 19z"/>',
    "drop": ('<path d="M12 3.5c4 5 6 7.5 6 10.5a6 6 0 01-12 0c0-3 2-5.5 6-10.5z"/>'),
    "eye": (
        '<path d="M2.5 12C6 6.5 18 6.5 21.5 12 18 17.5 6 17.5 2.5 12z"/>'
        '<circle cx="12" cy="12" r="2.8"/>'
    ),
    "jar": '<path d="M6 3.5h12v4H6zM7 7.5c-2 1.5-2 3-2 5V20h14v-7.5c0-2 0-3.5-2-5"/>',
    "yarn": (
        '<circle cx="12" cy="12" r="8.5"/><path d="M5 8c5 0 10 4 11 11'
        'M8.5 4.3C14 6 18.5 10 19.5 15M4 14c3 0 5.5 2 6.5 6"/>'
    ),
    "person": '<circle cx="12" cy="8" r="4"/><path d="M4.5 20.5a7.5 7.5 0 0115 0"/>',
    "photo": (
        '<path d="M3 7.5h4.5L9 5h6l1.5 2.5H21V19H3z"/><circle cx="12" cy="13" r="3.5"/>'
    ),
    "plus": '<path d="M12 5v14M5 12h14"/>',
    "print": '<path d="M7 8V3.5h10V8M7 17H4V8h16v9h-3M7 14h10v6.5H7z"/>',
}


def icon(name: str) -> str:
    """Draw the icon of that name."""
    body = (
        '<g fill="none" stroke="currentColor" stroke-width="2" '
        f'stroke-linecap="round" stroke-linejoin="round">{ICONS[name]}</g>'
    )
    return drawing("icon", Box(24, 24), body)
