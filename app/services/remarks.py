"""Remarks of a home on a day, in the shape that pages and programs read.

A remark that fails is a fault of the program: it is logged and said, and the others
are shown all the same.
"""

from __future__ import annotations

import logging
from collections.abc import Iterator
from datetime import date

from app.domain.edits import added, new_ref, removed, replaced
from app.domain.record import Aside, Record
from app.domain.remarks import (
    UNITS,
    Remark,
    Sight,
    Unit,
    in_order,
    run,
    sight,
    with_asides,
)

log = logging.getLogger(__name__)


def remarks_of(record: Record, today: date) -> tuple[Remark, ...]:
    """Return what an experienced eye would remark on, the worst first."""
    seen = sight(record, today)
    found = (remark for unit in UNITS.values() for remark in _run(unit, seen))
    return in_order(with_asides(record, found))


def set_aside(record: Record, remark: Remark, reason: str, day: date) -> Record:
    """Return the record with a remark set aside; one that came back is set anew."""
    about = remark.about[0]
    aside = Aside(
        ref=remark.aside_ref or new_ref(record, Aside),
        remark=remark.code,
        about=None if about == record.home.ref else about,
        reason=reason,
        day=day,
        facts=remark.facts,
    )
    if remark.aside_ref is not None:
        return replaced(record, remark.aside_ref, aside)
    return added(record, aside)


def brought_back(record: Record, ref: str) -> Record:
    """Return the record without what sets a remark aside."""
    return removed(record, ref)


def _run(unit: Unit, seen: Sight) -> Iterator[Remark]:
    try:
        yield from tuple(run(unit, seen))
    except Exception:
        log.exception("remark %s could not be looked for", unit.kind.code)
        yield _failed(unit, seen)


def _failed(unit: Unit, seen: Sight) -> Remark:
    return Remark(
        code=unit.kind.code,
        title=unit.title,
        rank="record",
        group="look",
        about=(seen.home,),
        sentence="This could not be looked for: the program failed at it.",
        to_do="Tell whoever looks after this program.",
        source="The program itself.",
    )
