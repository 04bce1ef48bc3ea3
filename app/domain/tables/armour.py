"""Resistance of the steel armour of a cable."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="armour",
    title="Resistance of steel armour at 20 °C",
    unit="mΩ/m",
    conditions="The armour alone.",
    standard="BS 5467 and BS 6346",
    number="",
    edition="",
    columns=(
        "Size in mm²",
        "Two cores",
        "Three cores",
        "Four cores",
    ),
    rows=(
        line("S", "1.5", "10.2", "9.5", "8.8"),
        line("S", "2.5", "8.8", "8.2", "7.7"),
        line("S", "4", "7.9", "7.5", "6.8"),
        line("S", "6", "7", "6.7", "4.3"),
    ),
    notes=("Larger sizes could not be read in the copy that was seen.",),
)
