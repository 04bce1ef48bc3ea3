"""The face of a device: its way, kind and rating, its label, what it feeds."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device
from app.drawing.ink import (
    FINE,
    HEAVY,
    LINE,
    LIT,
    SMALL,
    STRONG,
    shortened,
    text_width,
    wrapped,
)
from app.drawing.phrase import device_rating, quantity
from app.drawing.scene import Anchor, Box, Frame, Part, Stroke, Symbol, Text, Thing
from app.drawing.symbols import symbol_of

MODULE, EDGE = 52.0, 6.0
LONGEST = 150.0
_LEADING, _PRINT = 14.5, 73.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """What is drawn of one device.

    Attributes:
        feeds: What it feeds by the record; written above it.
        label: The label found, or that there is none; written below it.
    """

    device: Device
    feeds: str
    label: str
    href: str | None = None
    lit: bool = False

    @property
    def modules(self) -> int:
        """How wide it is, in modules: as recorded, else as its kind usually is."""
        return self.device.modules or DEVICE_KINDS[self.device.kind].modules

    @property
    def in_doubt(self) -> bool:
        """Whether it is a way that nobody has said to be in use or spare."""
        outgoing = DEVICE_KINDS[self.device.kind].outgoing
        return outgoing and self.device.in_use == "unknown"


@dataclass(frozen=True, slots=True)
class Column:
    """Where a device stands: its face, and the ends of the words above and below."""

    face: Box
    top: float
    foot: float
    bottom: float


def label_of(device: Device) -> str:
    """Return the label as found in quotes, or why there are no words."""
    if device.label_found is None:
        return "blank" if device.kind == "blank" else "label not noted"
    return f"“{device.label_found}”" if words_of(device) else "nothing written"


def words_of(device: Device) -> str:
    """Return the words of its label; a lone hyphen says that there are none."""
    return "" if device.label_found in (None, "-") else device.label_found or ""


def draw_face(face: Face, column: Column) -> Thing:
    """Draw a device, with the words above and below it."""
    box = column.face
    below = box.bottom + EDGE
    return Thing(
        ref=face.device.ref,
        title=_spoken(face),
        box=Box(box.x, column.top, box.width, column.bottom - column.top),
        parts=(
            *_turned(face.feeds, face, box, column.foot, "start"),
            *_case(face, box),
            *_printed(face, box),
            *_turned(face.label, face, box, below, "end"),
        ),
        href=face.href,
        lit=face.lit,
    )


def face_height(faces: Sequence[Face]) -> float:
    """Return how tall faces must be for all that stands on any of them."""
    most = max((len(_lines(face)) for face in faces), default=0)
    return _PRINT + max(most, 3) * _LEADING


def words_length(text: str, face: Face) -> float:
    """Return how far a device's turned words reach."""
    lines = turned_lines(text, face)
    return max((text_width(line, SMALL) for line in lines), default=0)


def turned_lines(text: str, face: Face) -> tuple[str, ...]:
    """Break words that stand turned above or below a device."""
    most = min(4, int((face.modules * MODULE - 4) // _LEADING))
    return wrapped(text, LONGEST, SMALL, most=most)


def _turned(
    text: str, face: Face, box: Box, y: float, anchor: Anchor
) -> Iterator[Text]:
    lines = turned_lines(text, face)
    whole = text if any(line.endswith("…") for line in lines) else None
    middle = box.x + box.width / 2 + SMALL * 0.35
    first = middle - _LEADING * (len(lines) - 1) / 2
    for at, line in enumerate(lines):
        yield Text(
            x=first + at * _LEADING,
            y=y,
            text=line,
            whole=whole,
            size=SMALL,
            anchor=anchor,
            turned=True,
        )


def _case(face: Face, box: Box) -> Iterator[Part]:
    inner = Box(box.x + 2, box.y, box.width - 4, box.height)
    is_main = face.device.kind == "main_switch"
    yield Frame(
        box=inner,
        weight=LIT if face.lit or is_main else LINE,
        dashed=face.in_doubt,
        lit=face.lit,
        corner=2,
    )
    if is_main:
        bar = ((inner.x + 6, box.y + 28), (inner.right - 6, box.y + 28))
        yield Stroke(places=bar, weight=HEAVY)
    if face.device.kind == "blank":
        below = Box(inner.x + 5, box.y + 32, inner.width - 10, box.height - 38)
        yield Frame(box=below, weight=FINE, hatch="blank")
    if face.lit:
        yield _arrow(box)


def _arrow(box: Box) -> Stroke:
    x = box.x + box.width / 2
    head = ((x - 7, box.y - 12), (x + 7, box.y - 12), (x, box.y - 3))
    return Stroke(places=head, filled=True)


def _printed(face: Face, box: Box) -> Iterator[Part]:
    device, middle = face.device, box.x + box.width / 2
    yield _centred(_heading(face), box, box.y + 21, size=STRONG, bold=True)
    if device.kind == "blank":
        return
    symbol = symbol_of("device", device.kind)
    yield Symbol(x=middle - 12, y=box.y + 32, drawn=symbol)
    for at, line in enumerate(_lines(face)):
        rating = line == device_rating(device)
        y = box.y + _PRINT + at * _LEADING
        yield _centred(line, box, y, size=SMALL, bold=rating)


def _centred(text: str, box: Box, y: float, *, size: float, bold: bool) -> Text:
    room = box.width - 4
    fits = text_width(text, size, bold=bold) <= room
    size = size if fits else SMALL
    line = shortened(text, room, size, bold=bold)
    return Text(
        x=box.x + box.width / 2,
        y=y,
        text=line,
        whole=text if line != text else None,
        size=size,
        bold=bold,
        anchor="middle",
    )


def _heading(face: Face) -> str:
    """Return the way number; what is no way is headed by what it is."""
    device, kind = face.device, DEVICE_KINDS[face.device.kind]
    if device.way or device.kind == "blank":
        return device.way
    if device.kind == "main_switch":
        return "Main switch" if face.modules > 1 else "Main"
    return "way ?" if kind.outgoing else kind.short


def _lines(face: Face) -> Sequence[str]:
    """Return what stands on a face below its symbol."""
    device = face.device
    kind = DEVICE_KINDS[device.kind]
    lines = [kind.short] if device.way or kind.outgoing else []
    if "rated_current_a" in kind.fields or device.rated_current_a:
        lines.append(device_rating(device))
    if "earth_leakage" in kind.protects or device.residual_current_ma:
        known = device.rcd_type != "unknown"
        lines.append(quantity(device.residual_current_ma, "mA"))
        lines.append(f"type {device.rcd_type}" if known else "type ?")
    if face.lit:
        return [*lines, "here"]
    if device.in_use == "spare":
        return [*lines, "spare"]
    return [*lines, "in use?"] if face.in_doubt else lines


def _spoken(face: Face) -> str:
    device = face.device
    kind = DEVICE_KINDS[device.kind].label
    said = [device.title, kind, *_lines(face), face.feeds]
    if device.kind == "blank":
        said = [device.title, kind]
    if face.lit:
        said.append("This one")
    return ". ".join(bit for bit in said if bit and bit != "here")
