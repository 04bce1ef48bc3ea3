"""A picture with the spots that are marked on it; and where one was touched.

A browser without a script says where an image button was touched, in pixels from its
corner, but not how large it was shown.  So the picture is there in a few sizes, each a
button of its own name; the style sheet shows the one that has room.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from app.domain.record import Attachment, Record, Spot
from app.pictures import size_of
from app.services.files import shown
from app.web.addresses import delete_url, edit_url, item_url
from app.web.files_view import folder, picture_url

# Longer side of a drawing, in its own units; and of the buttons, in pixels.
UNITS = 640
BOXES = (280, 340, 560, 840)
WHOLE = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotView:
    """A spot as a page shows it.

    Attributes:
        number: By which picture and list name it.
        ref: Its reference.
        words: Its words, else what it shows.
        about: What it shows, with its address; None when nothing of the record.
        across: From the left of the drawing.
        down: From its top.
        edit: Address of its form.
        delete: Address where deleting is asked about.
    """

    number: int
    ref: str
    words: str
    about: tuple[str, str] | None
    across: int
    down: int
    edit: str
    delete: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkedPicture:
    """A picture with its spots.

    Attributes:
        url: Address of the picture.
        title: What it is called.
        width: Width of the drawing, in its own units.
        height: Its height.
        spots: The spots.
    """

    url: str
    title: str
    width: int
    height: int
    spots: tuple[SpotView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A picture to touch, at one size.

    Attributes:
        name: What its coordinates are sent under.
        side: The size, as the style sheet knows it.
        width: In pixels.
        height: In pixels.
    """

    name: str
    side: int
    width: int
    height: int


def marked_picture(record: Record, item: Attachment) -> MarkedPicture | None:
    """Return a picture with its spots; None when its file is not here."""
    jpeg = shown(folder(), item, "large")
    if jpeg is None:
        return None
    width, height = fitted(size_of(jpeg), UNITS)
    return MarkedPicture(
        url=picture_url(record.home.ref, item, "large"),
        title=item.title,
        width=width,
        height=height,
        spots=tuple(
            _spot(record, spot, number, (width, height))
            for number, spot in enumerate(record.spots_of(item.ref), 1)
        ),
    )


def fitted(size: tuple[int, int], side: int) -> tuple[int, int]:
    """Return a size made larger or smaller so that its longer side is as given."""
    width, height = size
    longer = max(size)
    return max(round(width * side / longer), 1), max(round(height * side / longer), 1)


def boxes(size: tuple[int, int]) -> tuple[Box, ...]:
    """Return the pictures to touch, for a picture of a size."""
    return tuple(
        Box(name=f"at{side}", side=side, width=fit[0], height=fit[1])
        for side in BOXES
        for fit in [fitted(size, side)]
    )


def touched(sent: Mapping[str, str], size: tuple[int, int]) -> tuple[int, int] | None:
    """Return where a picture was touched, in thousandths; None when it was not.

    The keyboard says the corner, and means the picture: that is its middle.
    """
    for box in boxes(size):
        x, y = sent.get(f"{box.name}.x", ""), sent.get(f"{box.name}.y", "")
        if not (_is_number(x) and _is_number(y)):
            continue
        if x == y == "0":
            return WHOLE // 2, WHOLE // 2
        return _part(int(x), box.width), _part(int(y), box.height)
    return None


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) < 6


def _part(pixels: int, of: int) -> int:
    return min(round(pixels * WHOLE / of), WHOLE)


def _spot(record: Record, spot: Spot, number: int, size: tuple[int, int]) -> SpotView:
    home, thing = record.home.ref, record.by_ref.get(spot.about or "")
    return SpotView(
        number=number,
        ref=spot.ref,
        words=spot.words or ("" if thing else "No words"),
        about=(thing.title, item_url(home, thing)) if thing else None,
        across=round(spot.across * size[0] / WHOLE),
        down=round(spot.down * size[1] / WHOLE),
        edit=edit_url(home, spot),
        delete=delete_url(home, spot),
    )
