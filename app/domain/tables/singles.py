"""What single cores carry, and their voltage drop."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="singles",
    title="Single cores: capacity and voltage drop",
    unit="A",
    conditions="30 °C round it, one circuit alone, 70 °C conductor, single-phase.",
    standard="BS 7671",
    number="Tables 4D1A and 4D1B",
    columns=(
        "Size in mm²",
        "A",
        "B",
        "C",
        "Drop (mV/A/m)",
    ),
    rows=(
        line("S S S M M", "1", "11", "13.5", "15.5", "44"),
        line("S S S M M", "1.5", "14.5", "17.5", "20", "29"),
        line("S S S M M", "2.5", "20", "24", "27", "18"),
        line("M", "4", "26", "32", "37", "11"),
        line("M", "6", "34", "41", "47", "7.3"),
        line("M", "10", "46", "57", "65", "4.4"),
        line("M", "16", "61", "76", "87", "2.8"),
        line("M", "25", "80", "101", "114", "1.75"),
        line("M", "35", "99", "125", "141", "1.25"),
    ),
    notes=(
        (
            "For 25 and 35 mm² the drop is that of method C; method B has 1.80 "
            "and 1.30 (from memory)."
        ),
    ),
)
