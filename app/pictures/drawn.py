"""Pictures for the demo home: drawn, so that none shows a real one."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO

from PIL import Image, ImageDraw, ImageFont

WIDTH, HEIGHT = 1200, 800
WALL, WOOD, CARRIER, LABEL, INK = "#b9b3a6", "#6b4a2f", "#e9e4d6", "#f8f4e4", "#2b2b2b"
EDGE, GAP = 120, 30


def board_with_labels(labels: Sequence[str]) -> bytes:
    """Return a JPEG of an open board: a row of fuse carriers, a label under each."""
    image = Image.new("RGB", (WIDTH, HEIGHT), WALL)
    pen = ImageDraw.Draw(image)
    font = ImageFont.load_default(26)
    pen.rectangle((EDGE - 60, 150, WIDTH - EDGE + 60, 700), fill=WOOD)
    for left, right, label in _places(labels):
        pen.rounded_rectangle((left, 220, right, 520), 14, fill=CARRIER, outline=INK)
        pen.ellipse((left + 30, 340, right - 30, 400), outline=INK, width=4)
        pen.rectangle((left, 560, right, 640), fill=LABEL)
        middle = ((left + right) / 2, 600)
        pen.text(middle, label, fill=INK, font=font, anchor="mm")
    file = BytesIO()
    image.save(file, "JPEG", quality=85)
    return file.getvalue()


def middle_of(labels: Sequence[str], number: int) -> tuple[int, int]:
    """Return where a carrier is on such a picture, in thousandths."""
    left, right, _ = _places(labels)[number]
    return round((left + right) / 2 * 1000 / WIDTH), round(370 * 1000 / HEIGHT)


def _places(labels: Sequence[str]) -> list[tuple[int, int, str]]:
    wide = (WIDTH - 2 * EDGE) // len(labels)
    return [
        (EDGE + n * wide + GAP // 2, EDGE + (n + 1) * wide - GAP // 2, label)
        for n, label in enumerate(labels)
    ]
