"""What armoured XLPE cable carries, and its voltage drop."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="armoured-90",
    title="Armoured cable, XLPE: capacity and voltage drop",
    unit="A",
    conditions=(
        "As for PVC, with a conductor at 90 °C. Only where the terminals may "
        "be that warm; else the table for PVC."
    ),
    standard="BS 7671",
    number="Tables 4E4A and 4E4B",
    columns=(
        "Size in mm²",
        "C",
        "E",
        "D",
        "Drop (mV/A/m)",
    ),
    rows=(
        line("M", "1.5", "27", "29", "25", "31"),
        line("M", "2.5", "36", "39", "33", "19"),
        line("M", "4", "49", "52", "43", "12"),
        line("M", "6", "62", "66", "53", "7.9"),
        line("M", "10", "85", "90", "71", "4.7"),
        line("M", "16", "110", "115", "91", "2.9"),
    ),
)
