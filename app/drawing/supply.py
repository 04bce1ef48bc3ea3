"""Which sources, intake items, boards and devices the street's drawing shows, and how.

Each is shown once, under what feeds it.  A device is shown by itself only where it is
not fed through its own board; what is behind a board's ways hangs on the board.
"""

from __future__ import annotations

from collections.abc import Container, Iterator
from dataclasses import dataclass

from app.domain.kinds import INTAKE_KINDS
from app.domain.record import Board, Circuit, Device, IntakeItem, Item, Record, Source

NOT_RECORDED = "What feeds this is not recorded"


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """The shown items as a forest.

    Attributes:
        roots: Where lines begin: the sources, then what nothing is known to feed.
        fed: What hangs on each.
        begins: What to say of what feeds a root that is no source.
        through: Between a thing and what it hangs on, if anything is.
    """

    roots: tuple[str, ...]
    fed: dict[str, tuple[str, ...]]
    begins: dict[str, str]
    through: dict[str, str]


def supply_of(record: Record) -> Supply:
    """Return what is shown of a record's supply."""
    shown = {item.ref: item for item in _shown(record)}
    feeder = {ref: _feeder(record, item) for ref, item in shown.items()}
    above = {ref: _hung_on(record, feeder[ref], shown) for ref in shown}
    above = {ref: over if over in shown else None for ref, over in above.items()}
    open_circles(above)
    fed: dict[str, tuple[str, ...]] = {}
    for ref, over in above.items():
        if over:
            fed[over] = (*fed.get(over, ()), ref)
    loose = [ref for ref, over in above.items() if not over]
    return Supply(
        roots=tuple(loose),
        fed=fed,
        begins={r: _begins(record, feeder[r]) for r in loose if _is_fed(shown[r])},
        through={
            ref: _title(record, feeder[ref])
            for ref, over in above.items()
            if over and over != feeder[ref]
        },
    )


def carries(record: Record, item: IntakeItem) -> bool:
    """Return whether an item is part of the supply line, by its kind or the record."""
    return INTAKE_KINDS[item.kind].carries_supply or item.ref in _feeding(record)


def feeds_into(item: Item) -> tuple[str, ...]:
    """Return the references of what feeds an item, its second feed too."""
    feeds = (getattr(item, name, None) for name in ("fed_from", "second_feed"))
    return tuple(str(ref) for ref in feeds if ref)


def _feeding(record: Record) -> frozenset[str]:
    fed = (*record.intake, *record.boards, *record.devices)
    return frozenset(ref for item in fed for ref in feeds_into(item))


def board_of(record: Record, ref: str | None) -> str | None:
    """Return the board that a way, a circuit or a point behind one hangs on."""
    found = _hung_on(record, ref, frozenset())
    return found if record.find(Board, found) else None


def _hung_on(record: Record, ref: str | None, shown: Container[str]) -> str | None:
    """Walk up to the nearest thing shown, or to a board, intake item or source."""
    passed: set[str] = set()
    while ref and ref not in passed and ref not in shown:
        passed.add(ref)
        item = record.by_ref.get(ref)
        if isinstance(item, Board | IntakeItem | Source):
            return item.ref
        if isinstance(item, Device):
            return item.board if record.find(Board, item.board) else None
        ties = [t.tied_to for t in record.ties_of(ref) if t.role == "feeds"]
        ref = next(iter(item.ways if isinstance(item, Circuit) else ties), None)
    return ref if ref in shown else None


def _shown(record: Record) -> Iterator[Item]:
    feeding = _feeding(record)
    for source in record.sources:
        if source.present != "no" or source.ref in feeding:
            yield source
    yield from (item for item in record.intake if carries(record, item))
    yield from record.boards
    yield from (d for d in record.devices if _stands_alone(record, d))


def _stands_alone(record: Record, device: Device) -> bool:
    """A device fed from elsewhere than its board, or whose board is not recorded."""
    board = record.find(Board, device.board)
    if board is None:
        return True
    feeder = record.by_ref.get(device.fed_from or "")
    if feeder is None or feeder.ref in (board.ref, _feeder(record, board)):
        return False
    return board_of(record, feeder.ref) != board.ref


def _feeder(record: Record, item: Item) -> str | None:
    """What feeds an item; for a board that does not say, what feeds its devices."""
    if isinstance(item, Source):
        return None
    own: str | None = getattr(item, "fed_from", None)
    if own or not isinstance(item, Board):
        return own
    outside = (
        d.fed_from
        for d in record.devices_of(item.ref)
        if d.fed_from in record.by_ref and board_of(record, d.fed_from) != item.ref
    )
    return next(outside, None)


def open_circles(above: dict[str, str | None]) -> None:
    """Cut each circle at its first thing, so that every thing hangs on a root."""
    for start in list(above):
        passed, over = {start}, above[start]
        while over and over not in passed:
            passed.add(over)
            over = above[over]
        if over == start:
            above[start] = None


def _is_fed(item: Item) -> bool:
    return not isinstance(item, Source)


def _begins(record: Record, feeder: str | None) -> str:
    if not feeder:
        return NOT_RECORDED
    if feeder not in record.by_ref:
        return f"Fed from {feeder}, which is not in the record"
    return f"Fed from {_title(record, feeder)}, by the record; no source leads there"


def _title(record: Record, ref: str | None) -> str:
    item = record.by_ref.get(ref or "")
    return item.title if item else ref or "?"
