"""Largest earth loop with an RCD: 50 V ÷ IΔn."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="zs-rcd",
    title="Largest earth loop with an RCD: 50 V ÷ IΔn",
    unit="Ω",
    conditions="TT, and wherever an RCD gives the fault protection; not time-delayed.",
    standard="BS 7671:2018+A2:2022, Table 41.5",
    columns=("IΔn, mA", "Zs"),
    rows=(
        ("10", "5000"),
        ("30", "1667"),
        ("100", "500"),
        ("300", "167"),
        ("500", "100"),
    ),
    basis=(
        "derived",
        "confirmed",
        "confirmed",
        "derived",
        "derived",
    ),
    notes=(
        "An electrode above 200 Ω may not be stable as the ground dries; from memory.",
    ),
)
