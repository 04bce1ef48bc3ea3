"""Longest disconnection times."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="disconnection-times",
    title="Longest disconnection times",
    unit="s",
    conditions="Above 120 V to 230 V, a.c.",
    standard="BS 7671:2018+A2:2022, Table 41.1 and 411.3.2",
    columns=("circuit", "TN", "TT"),
    rows=(
        ("final: to 63 A with sockets, to 32 A fixed loads", "0.4", "0.2"),
        ("distribution and the rest", "5", "1"),
    ),
    basis=(
        "confirmed",
        "confirmed",
    ),
    notes=("The 17th edition drew the line at 32 A for all final circuits.",),
)
