"""Factor for a cable within thermal insulation."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="insulation",
    title="Factor for a cable within thermal insulation, Ci",
    unit="",
    conditions=(
        "Wholly surrounded, cables up to 10 mm², on the capacity by method C."
        " From 500 mm on: 0.5."
    ),
    standard="BS 7671",
    number="Table 52.2",
    columns=(
        "Length in mm",
        "Factor",
    ),
    rows=(
        line("M", "50", "0.88"),
        line("S", "100", "0.78"),
        line("M", "200", "0.63"),
        line("M", "400", "0.51"),
        line("C", "500", "0.5"),
    ),
    notes=("Between two rows the longer is taken.",),
)
