"""What a public supply usually is."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="supply",
    title="What a public supply usually is",
    unit="",
    conditions="Great Britain, low voltage.",
    standard="SI 2002/2665, regs 27 and 28; ENA ER P23",
    columns=("what", "usual"),
    rows=(
        ("voltage, V", "230"),
        ("voltage, least, V", "216.2"),
        ("voltage, most, V", "253"),
        ("Ze, TN-C-S, Ω", "0.35"),
        ("Ze, TN-S, Ω", "0.8"),
        ("Ze, TT without the electrode, Ω", "21"),
        ("fault current declared, one phase, kA", "16"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
    ),
    notes=("The values of Ze are typical, no guarantee: measure or ask.",),
)
