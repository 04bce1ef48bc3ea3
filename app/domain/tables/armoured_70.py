"""What armoured PVC cable carries, and its voltage drop."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="armoured-70",
    title="Armoured cable, PVC: capacity and voltage drop",
    unit="A",
    conditions=(
        "C and E with 30 °C round it; D in the ground at 20 °C, 2.5 K·m/W. 70"
        " °C conductor, two cores, single-phase."
    ),
    standard="BS 7671",
    number="Tables 4D4A and 4D4B",
    columns=(
        "Size in mm²",
        "C",
        "E",
        "D",
        "Drop (mV/A/m)",
    ),
    rows=(
        line("M", "1.5", "21", "22", "22", "29"),
        line("M", "2.5", "28", "31", "29", "18"),
        line("M", "4", "38", "41", "37", "11"),
        line("M", "6", "49", "53", "46", "7.3"),
        line("M", "10", "67", "72", "60", "4.4"),
        line("M", "16", "89", "97", "78", "2.8"),
        line("M", "25", "118", "128", "99", "1.75"),
    ),
)
