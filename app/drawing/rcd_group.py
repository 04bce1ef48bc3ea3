"""Which devices stand behind an RCD of the same board, as brackets over the row."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Device
from app.drawing.face import words_of
from app.drawing.ink import LINE, SMALL, shortened, text_width
from app.drawing.phrase import residual
from app.drawing.scene import Box, Part, Stroke, Text

LEVEL = 24.0


@dataclass(frozen=True, slots=True)
class Bracket:
    """Neighbouring devices behind one RCD.

    Attributes:
        head: The RCD.
        first: Place of the first of them.
        last: Place of the last of them.
        level: How many brackets lie between it and the devices.
    """

    head: Device
    first: int
    last: int
    level: int


def brackets(devices: Sequence[Device], breaks: frozenset[int]) -> tuple[Bracket, ...]:
    """Return the brackets over a board's devices, the inner ones first.

    Args:
        devices: The board's devices in order.
        breaks: Places at which a new row begins.
    """
    behind = {d.ref: _behind(devices, d) for d in devices if _is_rcd(d)}
    heads = [d for d in devices if behind.get(d.ref)]
    heads.sort(key=lambda head: len(behind[head.ref]))
    levels: list[set[int]] = []
    found: list[Bracket] = []
    for head in heads:
        places = {at for at, d in enumerate(devices) if d.ref in behind[head.ref]}
        level = next((n for n, used in enumerate(levels) if not used & places), None)
        if level is None:
            level = len(levels)
            levels.append(set())
        levels[level] |= places
        found += [Bracket(head, *run, level) for run in _runs(sorted(places), breaks)]
    return tuple(found)


def draw_bracket(bracket: Bracket, box: Box) -> Iterator[Part]:
    """Draw a bracket along the foot of a box, with the RCD's name above it."""
    left, right, y = box.x + 4, box.right - 4, box.bottom - 7
    places = ((left, y + 6), (left, y), (right, y), (right, y + 6))
    yield Stroke(places=places, weight=LINE)
    names = _names(bracket.head)
    fitting = (n for n in names if text_width(n, SMALL) <= right - left)
    name = next(fitting, shortened(names[-1], right - left, SMALL))
    whole = names[0] if name != names[0] else None
    yield Text(x=left, y=y - 4, text=name, whole=whole, size=SMALL)


def _is_rcd(device: Device) -> bool:
    protects = DEVICE_KINDS[device.kind].protects
    return "earth_leakage" in protects or bool(device.residual_current_ma)


def _behind(devices: Sequence[Device], head: Device) -> frozenset[str]:
    fed: Mapping[str, set[str | None]] = {
        d.ref: {d.fed_from, d.second_feed} for d in devices
    }
    reached = {head.ref}
    while more := {ref for ref, by in fed.items() if by & reached} - reached:
        reached |= more
    return frozenset(reached - {head.ref})


def _runs(places: Sequence[int], breaks: frozenset[int]) -> Iterator[tuple[int, int]]:
    first = last = places[0]
    for at in places[1:]:
        if at != last + 1 or at in breaks:
            yield first, last
            first = at
        last = at
    yield first, last


def _names(head: Device) -> tuple[str, ...]:
    """Return names of a group, the longest first."""
    label = words_of(head)
    short = DEVICE_KINDS[head.kind].short
    name = f"“{label}”" if label else f"way {head.way}" if head.way else head.ref
    figures = residual(head)
    milliamps = figures.split(" · ", maxsplit=1)[0]
    own = name if label and short.lower() in label.lower() else f"{short} {name}"
    return (
        f"behind {own} · {figures}",
        f"behind {own} · {milliamps}",
        f"{own} · {milliamps}",
        f"{name} {milliamps}",
        *([name] if label else []),
        milliamps,
    )
