"""An address as a QR code (ISO/IEC 18004): for the screen, and for a terminal."""

from __future__ import annotations

from dataclasses import dataclass
from io import StringIO

import segno

# The quiet zone that the standard asks for, in modules.
QUIET = 4


@dataclass(frozen=True, slots=True)
class QrCode:
    """A code as one path.

    Attributes:
        size: Width and height, quiet zone included, in modules.
        path: Its dark modules, as the data of an SVG path.
    """

    size: int
    path: str


def qr_code(text: str) -> QrCode:
    """Return the code of a text."""
    rows = segno.make_qr(text).matrix
    path = "".join(
        f"M{x + QUIET} {y + QUIET}h1v1h-1z"
        for y, row in enumerate(rows)
        for x, dark in enumerate(row)
        if dark
    )
    return QrCode(len(rows) + 2 * QUIET, path)


def qr_lines(text: str) -> tuple[str, ...]:
    """Return the code in half blocks, to be shown light on dark."""
    out = StringIO()
    segno.make_qr(text).terminal(out, compact=True, border=QUIET)
    return tuple(out.getvalue().splitlines())
