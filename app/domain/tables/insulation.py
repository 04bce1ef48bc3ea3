"""Factor for a cable wholly inside insulation, Ci."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="insulation",
    title="Factor for a cable wholly inside insulation, Ci",
    unit="factor",
    conditions="Of the method C capacity, up to 10 mm².",
    standard="BS 7671:2018+A2:2022, Table 52.2",
    columns=("mm", "Ci"),
    rows=(
        ("50", "0.88"),
        ("100", "0.78"),
        ("200", "0.63"),
        ("400", "0.51"),
        ("500", "0.5"),
    ),
    basis=(
        "from memory",
        "one source",
        "from memory",
        "from memory",
        "confirmed",
    ),
    notes=("From 500 mm on: 0.5.",),
)
