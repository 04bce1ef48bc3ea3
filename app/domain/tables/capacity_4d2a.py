"""Capacity of two-core cables without armour, 70 °C."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="capacity-4d2a",
    title="Capacity of two-core cables without armour, 70 °C",
    unit="A; mV/A/m",
    conditions="30 °C, one circuit.",
    standard="BS 7671:2018+A2:2022, Table 4D2",
    columns=("mm²", "A", "B", "C", "E", "mV/A/m"),
    rows=(
        ("1", "11", "13", "15", "17", "44"),
        ("1.5", "14", "16.5", "19.5", "22", "29"),
        ("2.5", "18.5", "23", "27", "30", "18"),
        ("4", "25", "30", "36", "40", "11"),
        ("6", "32", "38", "46", "51", "7.3"),
        ("10", "43", "52", "63", "70", "4.4"),
        ("16", "57", "69", "85", "94", "2.8"),
    ),
    basis=(
        "from memory",
        "from memory",
        "from memory",
        "one source for B; the rest from memory",
        "one source for A, B and C; E from memory",
        "confirmed for A; one source for B and C; E from memory",
        "one source for A, B and C; E from memory",
    ),
)
