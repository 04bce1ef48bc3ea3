"""What multicore PVC cable carries, and its voltage drop."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="multicore",
    title="Multicore PVC cable: capacity and voltage drop",
    unit="A",
    conditions="30 °C round it, one circuit alone, 70 °C conductor, single-phase.",
    standard="BS 7671",
    number="Tables 4D2A and 4D2B",
    columns=(
        "Size in mm²",
        "A",
        "B",
        "C",
        "E",
        "Drop (mV/A/m)",
    ),
    rows=(
        line("M", "1", "11", "13", "15", "17", "44"),
        line("M", "1.5", "14", "16.5", "19.5", "22", "29"),
        line("M", "2.5", "18.5", "23", "27", "30", "18"),
        line("S M S M M M", "4", "25", "30", "36", "40", "11"),
        line("S S S S M M", "6", "32", "38", "46", "51", "7.3"),
        line("C C S S M M", "10", "43", "52", "63", "70", "4.4"),
        line("S S S S M M", "16", "57", "69", "85", "94", "2.8"),
    ),
    notes=(
        (
            "Used for flat twin and earth in conduit or trunking on a wall, which"
            " the table of that cable leaves out."
        ),
    ),
)
