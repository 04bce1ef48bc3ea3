"""Factor for the temperature around a cable, Ca."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="ambient",
    title="Factor for the temperature around a cable, Ca",
    unit="factor",
    conditions="70 °C thermoplastic; the second column 90 °C thermosetting.",
    standard="BS 7671:2018+A2:2022, Table 4B1",
    columns=("°C", "70 °C cable", "90 °C cable"),
    rows=(
        ("25", "1.03", "1.02"),
        ("30", "1.0", "1.0"),
        ("35", "0.94", "0.96"),
        ("40", "0.87", "0.91"),
        ("45", "0.79", "0.87"),
        ("50", "0.71", "0.82"),
        ("55", "0.61", "0.76"),
        ("60", "0.5", "0.71"),
    ),
    basis=(
        "one source",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
    ),
)
