"""What was known of a tie before work was done on the things that it joins."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.record import Circuit, Device, Item, Point, Record, Tie, Work


def aged_ties(record: Record) -> dict[str, Work]:
    """Return the ties that work has put in doubt, each with the latest such work.

    Work touches a tie when it names the point, its room, the circuit, a way of that
    circuit or its board; for a point behind another one, those of that one as well.  A
    tie or work without a day counts as the tie being the older: nobody can tell.  What
    is seen on the last day that work can have been done on, or later, is newer.
    """
    works = [w for w in record.works if w.state == "done" and w.about]
    if not works:
        return {}
    found = {}
    for tie in record.ties:
        things = set(_joined(record, tie))
        since = [w for w in works if things & set(w.about) and _is_later(w, tie)]
        if since and tie.grade != "0":
            found[tie.ref] = max(since, key=lambda w: str(w.no_later_than or ""))
    return found


def _is_later(work: Work, tie: Tie) -> bool:
    latest = work.no_later_than
    return not latest or not tie.seen_on or latest > tie.seen_on


def _joined(record: Record, tie: Tie) -> Iterator[str]:
    """Yield the references of everything that a tie joins, near or far."""
    seen: set[str] = set()
    waiting = [tie.point, tie.tied_to]
    while waiting:
        ref = waiting.pop()
        if ref in seen:
            continue
        seen.add(ref)
        yield ref
        waiting += _beside(record, record.by_ref.get(ref), start=ref == tie.point)


def _beside(record: Record, item: Item | None, *, start: bool) -> list[str]:
    if isinstance(item, Circuit):
        return list(item.ways)
    if isinstance(item, Device):
        return [item.board]
    if not isinstance(item, Point):
        return []
    further = () if start else (t.tied_to for t in record.ties_of(item.ref))
    return [*([item.room] if item.room else []), *further]
