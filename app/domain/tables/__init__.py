"""Reference tables: one module each, found by itself.

Every value carries its basis; what is from memory says so wherever it is shown.  A
lookup never leaves a table: it raises :class:`OutsideTableError`.
"""

from __future__ import annotations

import sys

from app.domain.tables._table import (
    BASES,
    EDITION,
    NEWER,
    OutsideTableError,
    Table,
    tables_in,
)

TABLES = tables_in(sys.modules[__name__])

__all__ = ["BASES", "EDITION", "NEWER", "TABLES", "OutsideTableError", "Table"]
