"""Resistance of copper conductors."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="conductor",
    title="Resistance of copper at 20 °C",
    unit="mΩ/m",
    conditions="Largest that the standard allows; plain copper, solid or stranded.",
    standard="BS EN 60228",
    number="Tables 1 and 2",
    edition="",
    columns=(
        "Size in mm²",
        "Resistance",
    ),
    rows=(
        line("C", "1", "18.1"),
        line("C", "1.5", "12.1"),
        line("C", "2.5", "7.41"),
        line("C", "4", "4.61"),
        line("S", "6", "3.08"),
        line("C", "10", "1.83"),
        line("S", "16", "1.15"),
        line("S", "25", "0.727"),
        line("S", "35", "0.524"),
    ),
)
