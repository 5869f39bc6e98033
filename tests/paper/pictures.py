"""What a printer and a phone make of a PDF: rasters, photos and text boxes."""

import io
from collections.abc import Iterator
from dataclasses import dataclass

import pypdfium2 as pdfium
from PIL import Image, ImageChops, ImageFilter

MM_PER_POINT = 25.4 / 72
THERMAL_DPI = 203


@dataclass(frozen=True)
class Sign:
    """One printed character and its box in millimetres from the top left corner."""

    text: str
    left: float
    top: float
    right: float
    bottom: float


def thermal_print(pdf: bytes, page: int = 0) -> Image.Image:
    """The page as a label printer burns it: 203 dots an inch, black or nothing."""
    with pdfium.PdfDocument(pdf) as document:
        image = document[page].render(scale=THERMAL_DPI / 72, grayscale=True).to_pil()
    assert isinstance(image, Image.Image)
    return image.convert("1", dither=Image.Dither.NONE)


def cut_out(
    sheet: Image.Image, corner_mm: tuple[float, float], size_mm: tuple[float, float]
) -> Image.Image:
    """One label cut from the sheet."""
    dots = THERMAL_DPI / 25.4
    (left, top), (width, height) = corner_mm, size_mm
    right, bottom = left + width, top + height
    return sheet.crop((left * dots, top * dots, right * dots, bottom * dots))


def phone_photo(label: Image.Image) -> bytes:
    """The label as a phone sees it: small, tilted, from the side, blurred, half lit."""
    width, height = label.size
    table = Image.new("L", (width * 2, height * 2 + 200), 70)
    table.paste(label.convert("L").point([30] * 128 + [225] * 128), (width // 2, 100))
    turned = table.rotate(17, Image.Resampling.BICUBIC, fillcolor=70)
    lean = (1.0, 0.12, -30, 0.05, 1.0, -20, 0.00012, 0.0002)
    seen = turned.transform(
        table.size, Image.Transform.PERSPECTIVE, lean, Image.Resampling.BICUBIC
    )
    shade = Image.linear_gradient("L").rotate(90).resize(seen.size)
    shade = shade.point([90 + value * 160 // 255 for value in range(256)])
    lit = ImageChops.multiply(seen, shade).filter(ImageFilter.GaussianBlur(1.2))
    file = io.BytesIO()
    lit.convert("RGB").save(file, "JPEG", quality=70)
    return file.getvalue()


def signs_on(pdf: bytes, page: int = 0) -> Iterator[Sign]:
    """Every printed character of a page with its box; blanks have none."""
    with pdfium.PdfDocument(pdf) as document:
        sheet = document[page]
        height = sheet.get_height()
        words = sheet.get_textpage()
        for i in range(words.count_chars()):
            text = words.get_text_range(i, 1)
            left, bottom, right, top = words.get_charbox(i)
            if text.strip():
                box = (left, height - top, right, height - bottom)
                yield Sign(text, *(side * MM_PER_POINT for side in box))


def words_on(pdf: bytes) -> str:
    """All text of a PDF in reading order, its blanks made plain single ones."""
    with pdfium.PdfDocument(pdf) as document:
        pages = [page.get_textpage().get_text_bounded() for page in document]
    return " ".join(" ".join(pages).replace("\u200b", "").split())
