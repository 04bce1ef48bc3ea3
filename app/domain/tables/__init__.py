"""Reference tables: one module each, found by themselves.

``TABLES`` holds them by slug.  ``TABLES["breaker-zs"].at(Decimal(32), "B")`` returns a
`Value`: figure, unit, source, basis.  What a table does not give is refused with
`OutsideTableError`, whose text is a sentence; nothing is interpolated.
``next_at`` takes the next row on the cautious side, for factors that fall.
"""

from __future__ import annotations

import sys

from app.domain.tables._table import (
    AMENDMENT,
    BASES,
    FROM_MEMORY,
    Basis,
    Cell,
    OutsideTableError,
    Row,
    Table,
    Value,
    found_in,
)

TABLES = found_in(sys.modules[__name__])

__all__ = [
    "AMENDMENT",
    "BASES",
    "FROM_MEMORY",
    "TABLES",
    "Basis",
    "Cell",
    "OutsideTableError",
    "Row",
    "Table",
    "Value",
]
