"""What an experienced eye would remark on, from the record alone.

One module a remark, found by itself: add a file with a docstring in sections, ``KIND``
and ``look``.  A remark reads the sight and the tables, never another remark.
"""

from __future__ import annotations

import sys
from datetime import date

from app.domain.record import Record
from app.domain.remarks._kind import (
    GROUPS,
    RANKS,
    Figure,
    Need,
    Rank,
    Remark,
    RemarkKind,
)
from app.domain.remarks._look import Unit, in_order, run, units_in, with_asides
from app.domain.remarks._sight import Sight, sight

UNITS = units_in(sys.modules[__name__])

__all__ = [
    "GROUPS",
    "RANKS",
    "UNITS",
    "Figure",
    "Need",
    "Rank",
    "Remark",
    "RemarkKind",
    "Sight",
    "Unit",
    "in_order",
    "remarks",
    "run",
    "sight",
    "with_asides",
]


def remarks(record: Record, today: date) -> tuple[Remark, ...]:
    """Return what an experienced eye would remark on, the worst first.

    The same for the same record in any order; what cannot be told comes last, each
    with what it needs.
    """
    look = sight(record, today)
    found = (remark for unit in UNITS.values() for remark in run(unit, look))
    return in_order(with_asides(record, found))
