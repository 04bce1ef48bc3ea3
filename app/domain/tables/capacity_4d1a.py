"""Capacity of single-core cables, 70 °C."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="capacity-4d1a",
    title="Capacity of single-core cables, 70 °C",
    unit="A; mV/A/m",
    conditions="30 °C, two cables of one circuit.",
    standard="BS 7671:2018+A2:2022, Table 4D1",
    columns=("mm²", "A", "B", "C", "mV/A/m"),
    rows=(
        ("1", "11", "13.5", "15.5", "44"),
        ("1.5", "14.5", "17.5", "20", "29"),
        ("2.5", "20", "24", "27", "18"),
        ("4", "26", "32", "37", "11"),
        ("6", "34", "41", "47", "7.3"),
        ("10", "46", "57", "65", "4.4"),
        ("16", "61", "76", "87", "2.8"),
        ("25", "80", "101", "114", "1.75"),
        ("35", "99", "125", "141", "1.25"),
    ),
    basis=(
        "one source for A and B; C from memory",
        "one source for A and B; C from memory",
        "one source for A and B; C from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
    ),
)
