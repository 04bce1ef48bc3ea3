"""An outline: rows that feed one another, as lines from the top of a sheet to its foot.

The last thing that a row feeds goes on in its lane; those before it branch off to the
next lane, so that no line ever crosses another.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from app.drawing.ink import DASHES, HEAVY
from app.drawing.row import (
    BAND,
    BOX,
    Row,
    change_of_hands,
    draw_row,
    lane_x,
    plain_words,
    words_x,
)
from app.drawing.scene import Box, Frame, Part, Stroke, Thing

_BELOW, _BETWEEN, _TURN = 10.0, 22.0, 4.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """Rows by reference, and which feeds which.

    Attributes:
        roots: Where lines begin.
        fed: What each row feeds, in order; each row is fed once at most.
        begins: For a root, what to say of what feeds it, if that is not recorded.
        owners: Words for the owners' codes.
        weight: Width of the line.
    """

    roots: Sequence[str]
    rows: Mapping[str, Row]
    fed: Mapping[str, Sequence[str]]
    begins: Mapping[str, str]
    owners: Mapping[str, str]
    weight: float = HEAVY
    dashes: str | None = None


@dataclass(frozen=True, slots=True)
class _Placed:
    lane: int
    entry: float
    start: float
    top: float
    foot: float


@dataclass(slots=True)
class _Sheet:
    y: float
    parts: list[Part | Thing] = field(default_factory=list)
    placed: dict[str, _Placed] = field(default_factory=dict)


def lay_out(outline: Outline, y: float) -> tuple[list[Part | Thing], float]:
    """Return an outline's parts from y downwards, lines first, and where it ends."""
    sheet = _Sheet(y)
    waiting = [(root, 0, "") for root in reversed(outline.roots)]
    while waiting:
        ref, lane, feeder = waiting.pop()
        _place(outline, sheet, ref, lane, feeder)
        fed = outline.fed.get(ref, ())
        steps = [lane + 1] * (len(fed) - 1) + [lane]
        waiting += reversed([(r, at, ref) for r, at in zip(fed, steps, strict=False)])
    lines = [
        line for ref in sheet.placed for line in _lines(outline, sheet.placed, ref)
    ]
    return [*lines, *sheet.parts], sheet.y


def _place(outline: Outline, sheet: _Sheet, ref: str, lane: int, feeder: str) -> None:
    row, entry = outline.rows[ref], sheet.y
    before = outline.rows[feeder].owner if feeder else row.owner
    if not feeder and sheet.placed:
        entry = sheet.y = sheet.y + _BETWEEN - _BELOW
    if not feeder and outline.begins.get(ref):
        text, sheet.y = plain_words(outline.begins[ref], words_x(lane), sheet.y)
        sheet.parts += text
    branches = feeder and sheet.placed[feeder].lane != lane
    start = sheet.y + (_TURN + HEAVY if branches else 0)
    if before != row.owner and before is not None and row.owner is not None:
        mark, sheet.y = change_of_hands(
            _word(outline, before), _word(outline, row.owner), lane, sheet.y + _BELOW
        )
        sheet.parts += mark
        start = sheet.y
    sheet.y += _BELOW
    thing = draw_row(row, lane, sheet.y)
    sheet.parts.append(thing)
    sheet.placed[ref] = _Placed(lane, entry, start, sheet.y, thing.box.bottom)
    sheet.y = thing.box.bottom


def _word(outline: Outline, owner: str) -> str:
    return outline.owners.get(owner, owner).lower()


def _lines(outline: Outline, placed: Mapping[str, _Placed], ref: str) -> list[Part]:
    """Return the band beside a row and the lines to all that it feeds."""
    here, row = placed[ref], outline.rows[ref]
    x, below = lane_x(here.lane), here.top + BOX
    fed = [placed[r] for r in outline.fed.get(ref, ())]
    parts: list[Part] = [_branch(outline, x, below, child) for child in fed]
    straight = [child.entry for child in fed if child.lane == here.lane]
    if row.owner is None:
        return parts + _beginning(outline, ref, x, here)
    end = max([here.foot, *straight])
    band = Box(x - BOX / 2 - BAND - 2, here.start, BAND, end - here.start)
    unknown = row.owner == "unknown"
    frame = Frame(box=band, weight=1.0, dashed=unknown, hatch=row.owner)
    return [frame, *parts, *_beginning(outline, ref, x, here)]


def _beginning(outline: Outline, ref: str, x: float, here: _Placed) -> list[Part]:
    if not outline.begins.get(ref):
        return []
    down = ((x, here.entry), (x, here.top))
    return [Stroke(places=down, weight=outline.weight, dashes=DASHES)]


def _branch(outline: Outline, x: float, below: float, child: _Placed) -> Stroke:
    to = lane_x(child.lane)
    turn = child.entry + _TURN
    bend = () if to == x else ((x, turn), (to, turn))
    places = ((x, below), *bend, (to, child.top))
    return Stroke(places=places, weight=outline.weight, dashes=outline.dashes)
