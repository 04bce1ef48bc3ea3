"""The key of the house: every circuit's line with its tag, name and way, by board."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Board, Circuit, Device, Record
from app.drawing.house import House
from app.drawing.ink import PLAIN, SMALL, STRONG, wrapped
from app.drawing.line import TAG, Line, drawn_line, drawn_tag, way_of
from app.drawing.room import WIDTH, Lit
from app.drawing.scene import Box, Linker, Part, Scene, Text, Thing
from app.drawing.supply import board_of

_EDGE, _SAMPLE = 12.0, 74.0


def key_scenes(house: House, link: Linker, lit: Lit) -> tuple[Scene, ...]:
    """Return the key: one drawing a board, then circuits of none, then sources."""
    return tuple(
        _key(house, title, refs, link, lit, ident=f"key-{code}")
        for code, title, refs in _parts(house)
    )


def _parts(house: House) -> Iterator[tuple[str, str, list[str]]]:
    record = house.record
    boards = {c.ref: board_of(record, way_of(record, c)) for c in record.circuits}
    for board in record.boards:
        refs = [ref for ref, on in boards.items() if on == board.ref]
        if refs:
            yield board.ref, board.title, refs
    loose = [ref for ref, on in boards.items() if record.find(Board, on) is None]
    if loose:
        yield "no-board", "Circuits on no board, by the record", loose
    used = {ref for s in house.storeys for b in s.blocks for g in b.groups
            if g.line for ref in [g.line.ref]}  # fmt: skip
    sources = [source.ref for source in record.sources if source.ref in used]
    if sources:
        yield "sources", "Without a circuit", sources


def _key(
    house: House, title: str, refs: list[str], link: Linker, lit: Lit, *, ident: str
) -> Scene:
    parts: list[Part | Thing] = []
    y = 8.0
    for text in wrapped(title, WIDTH - 2 * _EDGE, STRONG, most=2, bold=True):
        y += STRONG + 3
        whole = title if text.endswith("…") else None
        parts.append(Text(x=_EDGE, y=y, text=text, whole=whole, size=STRONG, bold=True))
    y += 12
    for ref in refs:
        thing = _row(house, house.lines[ref], link(ref), y, lit=lit.ref == ref)
        parts.append(thing)
        y = thing.box.bottom + 4
    return Scene(
        ident=ident,
        title=f"Key: {title}",
        description="; ".join(p.title for p in parts if isinstance(p, Thing)),
        width=WIDTH,
        height=y + 6,
        parts=tuple(parts),
    )


def _row(house: House, line: Line, href: str | None, y: float, *, lit: bool) -> Thing:
    frame, tag = drawn_tag(line.tag, _EDGE, y + 2, lit=lit)
    left = max(frame.box.right, _EDGE + 40)
    sample = ((frame.box.right, y + 12), (left + _SAMPLE, y + 12))
    where = where_from(house.record, line.ref)
    words = [*_words(line.title, y + 16, PLAIN, left + _SAMPLE + 10, bold=lit)]
    below = words[-1].y + 16 if words else y + 16
    words += _words(where, below, SMALL, left + _SAMPLE + 10)
    foot = max([y + TAG + 4, *(text.box.bottom for text in words)]) + 3
    return Thing(
        ref=line.ref,
        title=f"{line.tag}: {line.title}. {where}" + (". Brought forward" * lit),
        box=Box(_EDGE - 4, y, WIDTH - 2 * _EDGE + 8, foot - y),
        parts=(frame, tag, *drawn_line(sample, line.marks, lit=lit), *words),
        href=href,
        lit=lit,
    )


def _words(
    text: str, y: float, size: float, x: float, *, bold: bool = False
) -> Iterator[Text]:
    for at, line in enumerate(
        wrapped(text, WIDTH - _EDGE - x, size, most=2, bold=bold)
    ):
        yield Text(
            x=x,
            y=y + at * (size + 3),
            text=line,
            whole=text if line.endswith("…") else None,
            size=size,
            bold=bold,
        )


def where_from(record: Record, ref: str) -> str:
    """Say from which ways a circuit goes out, or that it is not recorded."""
    circuit = record.find(Circuit, ref)
    if circuit is None:
        return "no circuit between"
    ways = [record.by_ref[w] for w in circuit.ways if w in record.by_ref]
    said = [
        f"way {w.way}" if isinstance(w, Device) and w.way else w.title for w in ways
    ]
    return " and ".join(said) or "its way is not recorded"
