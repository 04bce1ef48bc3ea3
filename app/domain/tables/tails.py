"""Meter tails, single-core, clipped."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="tails",
    title="Meter tails, single-core, clipped",
    unit="A; mV/A/m",
    conditions="30 °C, method C.",
    standard="BS 7671:2018+A2:2022, Table 4D1, method C",
    columns=("mm²", "C", "mV/A/m", "usual largest cut-out fuse, A"),
    rows=(
        ("16", "87", "2.8", "80"),
        ("25", "114", "1.75", "100"),
    ),
    basis=(
        "from memory",
        "from memory",
    ),
    notes=("Many networks limit the length of tails to 2 or 3 m; ask.",),
)
