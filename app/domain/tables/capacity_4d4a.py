"""Capacity of two-core armoured cable, 70 °C."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="capacity-4d4a",
    title="Capacity of two-core armoured cable, 70 °C",
    unit="A; mV/A/m",
    conditions="C and E at 30 °C in air; D in the ground at 20 °C.",
    standard="BS 7671:2018+A2:2022, Table 4D4",
    columns=("mm²", "C", "E", "D", "mV/A/m"),
    rows=(
        ("1.5", "21", "22", "22", "29"),
        ("2.5", "28", "31", "29", "18"),
        ("4", "38", "41", "37", "11"),
        ("6", "49", "53", "46", "7.3"),
        ("10", "67", "72", "60", "4.4"),
        ("16", "89", "97", "78", "2.8"),
        ("25", "118", "128", "99", "1.75"),
    ),
    basis=(
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
    ),
)
