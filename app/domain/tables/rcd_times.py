"""Longest operating times of RCDs."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="rcd-times",
    title="Longest operating times of RCDs",
    unit="ms",
    conditions="General and S types.",
    standard="BS EN 61008-1, 61009-1; BS 7671 Table 3A",
    columns=("RCD", "IΔn", "2 IΔn", "5 IΔn"),
    rows=(
        ("general", "300", "150", "40"),
        ("S, least and most", "130 to 500", "60 to 200", "50 to 150"),
        ("older: BS 4293, BS 7288", "200", None, "40"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
    ),
    notes=("The test at 5 IΔn is no longer asked for since Amendment 2.",),
)
