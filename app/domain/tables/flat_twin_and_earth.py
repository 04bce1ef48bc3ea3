"""What flat twin and earth carries, and its voltage drop."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="flat-twin-and-earth",
    title="Flat twin and earth: capacity and voltage drop",
    unit="A",
    conditions="30 °C round it, one circuit alone, 70 °C conductor, single-phase.",
    standard="BS 7671",
    number="Table 4D5",
    columns=(
        "Size in mm²",
        "100",
        "101",
        "102",
        "103",
        "C",
        "A",
        "Drop (mV/A/m)",
    ),
    rows=(
        line("M M M M M S M MD", "1", "13", "10.5", "13", "8", "16", "11.5", "44"),
        line("M M M M M S M MD", "1.5", "16", "13", "16", "10", "20", "14.5", "29"),
        line("M M M M M M M MD", "2.5", "21", "17", "21", "13.5", "27", "20", "18"),
        line("M M M M M M M MD", "4", "27", "22", "27", "17.5", "37", "26", "11"),
        line("M M M M M M M MD", "6", "34", "27", "35", "23.5", "47", "32", "7.3"),
        line("S S S M S S M S", "10", "45", "36", "47", "32", "64", "44", "4.4"),
        line("M M M M M S M MD", "16", "57", "46", "63", "42.5", "85", "57", "2.8"),
    ),
    notes=(
        (
            "The columns are the ways of laying it: 100 above a ceiling under up "
            "to 100 mm of insulation, 101 under more, 102 in a wall with "
            "insulation and touching its inside, 103 touching nothing, C clipped,"
            " A in conduit in an insulated wall."
        ),
        (
            "The table is from memory. A single source was seen for parts of "
            "column C and for 10 mm²; the drop agrees with the resistance of the "
            "copper to 1.5 %."
        ),
    ),
)
