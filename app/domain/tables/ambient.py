"""Factor for the warmth round a cable."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="ambient",
    title="Factor for the warmth round a cable, Ca",
    unit="",
    conditions="In air; the tables of capacity are for 30 °C.",
    standard="BS 7671",
    number="Table 4B1",
    columns=(
        "Air in °C",
        "70 °C cable",
        "90 °C cable",
    ),
    rows=(
        line("S", "25", "1.03", "1.02"),
        line("C", "30", "1", "1"),
        line("C", "35", "0.94", "0.96"),
        line("C", "40", "0.87", "0.91"),
        line("C", "45", "0.79", "0.87"),
        line("C", "50", "0.71", "0.82"),
        line("C", "55", "0.61", "0.76"),
        line("C", "60", "0.5", "0.71"),
    ),
    notes=(
        (
            "At 25 °C other standards print 1.06; the lower figure stands here. "
            "Between two rows the warmer is taken."
        ),
    ),
)
