"""Types of RCD."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="rcd-types",
    title="Types of RCD",
    unit="",
    conditions="Household.",
    standard="BS 7671:2018+A2:2022, 531.3.3; BS EN 62423",
    columns=("type", "sees", "for"),
    rows=(
        (
            "AC",
            "a.c. only",
            "loads known to make no d.c.; not for general use since 2022",
        ),
        ("A", "a.c. and pulsing d.c.", "most circuits of a home"),
        ("F", "also mixed frequencies", "some drives and heat pumps"),
        (
            "B",
            "also smooth d.c.",
            "vehicle chargers without 6 mA d.c. detection, some inverters",
        ),
        ("S", "as its type, later", "before other RCDs"),
    ),
    basis=(
        "one source",
        "one source",
        "from memory",
        "one source",
        "one source",
    ),
)
