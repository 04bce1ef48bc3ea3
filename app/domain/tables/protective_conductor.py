"""Smallest protective conductor by choice."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="protective-conductor",
    title="Smallest protective conductor by choice, without arithmetic",
    unit="",
    conditions="Copper, line and protective conductor of one material.",
    standard="BS 7671",
    number="Table 54.7",
    columns=(
        "Line conductor",
        "Protective conductor",
    ),
    rows=(
        line("C", "up to 16 mm²", "as the line"),
        line("C", "over 16 to 35 mm²", "16 mm²"),
        line("C", "over 35 mm²", "half of the line"),
    ),
    notes=("A smaller one is right where the adiabatic equation says so.",),
)
