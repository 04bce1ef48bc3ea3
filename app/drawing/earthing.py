"""The earthing as a group beside the supply, and what only gives orders."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from app.domain.kinds import INTAKE_KINDS
from app.domain.record import IntakeItem, Record
from app.domain.record.choices import BASES, EARTHINGS, OWNERS
from app.drawing.ink import LINE
from app.drawing.outline import Outline
from app.drawing.phrase import hours, joined, rating_of, seen_of
from app.drawing.row import Fact, Row
from app.drawing.scene import Linker
from app.drawing.supply import carries
from app.drawing.symbols import EARTH, symbol_of

# In the order of the line from the means of earthing to what is bonded.
_KINDS = ("earthing_conductor", "earthing_terminal", "main_bonding", "earth_electrode")
_EXPECTED = _KINDS[:3]
_DASH_DOT = "9 3 1.5 3"


def earthing_outline(record: Record, link: Linker, lit: frozenset[str]) -> Outline:
    """Return the earthing: its arrangement, and each item of it, found or missing."""
    rows = [_arrangement(record, link, lit)]
    for kind in _KINDS:
        found = [item for item in record.intake if _is_earthing(record, item, kind)]
        rows += [_item_row(record, item, link, lit) for item in found]
        missing = not any(item.kind == kind for item in record.intake)
        if missing and (kind in _EXPECTED or record.home.earthing == "tt"):
            rows.append(_missing(kind))
    return _one_line(rows)


def other_items(record: Record, link: Linker, lit: frozenset[str]) -> Outline:
    """Return what hangs on the wall but carries no supply, such as a hub."""
    rows = [
        _item_row(record, item, link, lit)
        for item in record.intake
        if item.kind not in _KINDS and not carries(record, item)
    ]
    refs = [row.ref for row in rows]
    return Outline(
        roots=refs,
        rows=dict(zip(refs, rows, strict=True)),
        fed={},
        begins={},
        owners=OWNERS,
    )


def _one_line(rows: list[Row]) -> Outline:
    refs = [row.ref for row in rows]
    return Outline(
        roots=refs[:1],
        rows=dict(zip(refs, rows, strict=True)),
        fed={one: (other,) for one, other in pairwise(refs)},
        begins={},
        owners=OWNERS,
        weight=LINE,
        dashes=_DASH_DOT,
    )


def _is_earthing(record: Record, item: IntakeItem, kind: str) -> bool:
    return item.kind == kind and not carries(record, item)


def _arrangement(record: Record, link: Linker, lit: frozenset[str]) -> Row:
    home = record.home
    known = home.earthing != "unknown"
    words = EARTHINGS[home.earthing] if known else "Earthing not known"
    basis = BASES[home.earthing_basis].lower()
    said = [f"how that is known: {basis}" if known else "find out; never guess it"]
    return Row(
        ref=home.ref,
        symbol=EARTH,
        title=words,
        facts=tuple(Fact(text) for text in (*said, home.earthing_note) if text),
        dashed=not known,
        lit=home.ref in lit,
        href=link(home.ref),
    )


def _missing(kind: str) -> Row:
    return Row(
        ref=f"no {kind}",
        symbol=symbol_of("intake", kind),
        title=INTAKE_KINDS[kind].label,
        facts=(Fact("none recorded"),),
        dashed=True,
    )


def _item_row(
    record: Record, item: IntakeItem, link: Linker, lit: frozenset[str]
) -> Row:
    rating, known = rating_of(item)
    facts = [
        joined([OWNERS[item.owner], rating]),
        seen_of(item),
        *_orders(record, item),
    ]
    is_earthing = item.kind in _KINDS
    if is_earthing and item.basis == "unknown":
        facts.append("how this is known: not said")
    when = hours(item.when)
    return Row(
        ref=item.ref,
        symbol=symbol_of("intake", item.kind),
        title=item.title,
        facts=(
            *(Fact(text) for text in facts if text),
            *([Fact(when, framed=True)] if when else []),
        ),
        dashed=not known or (is_earthing and item.basis == "unknown"),
        lit=item.ref in lit,
        href=link(item.ref),
    )


def _orders(record: Record, item: IntakeItem) -> Iterator[str]:
    for control in record.controls:
        other = record.by_ref.get(control.controlled)
        if control.controller == item.ref and other:
            yield f"switches {other.title}"
