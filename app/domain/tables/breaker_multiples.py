"""How many times its rating makes a circuit-breaker open at once."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="breaker-multiples",
    title="Current at which a circuit-breaker opens at once",
    unit="",
    conditions="Upper end of the band, as a multiple of the rating.",
    standard="BS EN 60898-1; BS 3871",
    number="",
    edition="",
    columns=(
        "Type",
        "Multiple",
    ),
    rows=(
        line("C", "B", "5"),
        line("C", "C", "10"),
        line("C", "D", "20"),
        line("M", "1", "4"),
        line("M", "2", "7"),
        line("M", "3", "10"),
        line("M", "4", "50"),
    ),
    notes=(
        (
            "B, C and D are marked so on the device. Types 1 to 4 are those of BS"
            " 3871, withdrawn; their figures are from memory."
        ),
    ),
)
