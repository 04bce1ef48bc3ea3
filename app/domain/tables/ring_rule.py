"""What a ring final needs."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="ring-rule",
    title="What a ring final needs",
    unit="",
    conditions="A ring final for sockets.",
    standard="BS 7671",
    number="433.1.204",
    columns=(
        "What",
        "Figure",
    ),
    rows=(
        line("S", "rating, lower (A)", "30"),
        line("S", "rating, upper (A)", "32"),
        line("S", "smallest line and neutral (mm²)", "2.5"),
        line("M", "smallest, mineral insulated (mm²)", "1.5"),
        line("S", "smallest capacity of the cable (A)", "20"),
    ),
    notes=(
        (
            "The load in no part of the ring should exceed the capacity of the "
            "cable for long. The rule stands as printed for a rewirable fuse too."
        ),
    ),
)
