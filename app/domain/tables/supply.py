"""Usual figures of the supply."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="supply",
    title="Usual figures of the supply",
    unit="",
    conditions=(
        "Great Britain, low voltage. The usual worst, no promise: measure or ask."
    ),
    standard="SI 2002/2665; ENA ER P23/1",
    number="",
    edition="",
    columns=(
        "What",
        "Figure",
    ),
    rows=(
        line("C", "declared voltage (V)", "230"),
        line("C", "highest voltage (V)", "253"),
        line("C", "lowest voltage (V)", "216.2"),
        line("C", "Ze, TN-C-S (Ω)", "0.35"),
        line("C", "Ze, TN-S (Ω)", "0.8"),
        line("C", "Ze, TT, without your electrode (Ω)", "21"),
        line("C", "fault current, single-phase (kA)", "16"),
        line("C", "fault current, three-phase (kA)", "25"),
    ),
    notes=(
        (
            "A cut-out that is printed 100 A may hold a smaller fuse: only the "
            "network can say what is in it."
        ),
    ),
)
