"""How fast a fault must be cut off."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="times",
    title="Longest time to cut off an earth fault",
    unit="s",
    conditions="120 V to 230 V to earth.",
    standard="BS 7671",
    number="Table 41.1, 411.3.2",
    columns=(
        "Circuit",
        "TN",
        "TT",
    ),
    rows=(
        line("C", "final", "0.4", "0.2"),
        line("C", "other", "5", "1"),
    ),
    notes=(
        (
            "Final: up to 63 A with a socket-outlet on it, or up to 32 A with "
            "fixed equipment only. Other: the rest, and circuits that feed a "
            "board."
        ),
    ),
)
