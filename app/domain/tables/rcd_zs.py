"""Earth resistance with which an RCD cuts off a fault."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="rcd-zs",
    title="Largest Zs or earth resistance with an RCD",
    unit="Ω",
    conditions="50 V / IΔn; not time-delayed.",
    standard="BS 7671",
    number="Table 41.5, 411.5.3",
    columns=(
        "IΔn in mA",
        "Limit",
    ),
    rows=(
        line("D", "10", "5000"),
        line("C", "30", "1667"),
        line("C", "100", "500"),
        line("D", "300", "167"),
        line("D", "500", "100"),
    ),
    notes=(
        (
            "An electrode above 200 Ω may not keep its figure as the ground dries"
            " or freezes (from memory)."
        ),
    ),
)
