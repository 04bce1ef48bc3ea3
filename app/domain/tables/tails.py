"""What meter tails carry."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="tails",
    title="Meter tails: capacity and voltage drop",
    unit="A",
    conditions="Single cores clipped to a surface, 30 °C round them.",
    standard="BS 7671",
    number="Table 4D1A",
    columns=(
        "Size in mm²",
        "C",
        "Drop (mV/A/m)",
        "Usual largest supply fuse",
    ),
    rows=(
        line("M", "16", "87", "2.8", "80"),
        line("M", "25", "114", "1.75", "100"),
    ),
    notes=(
        (
            "Many networks allow tails of 2 to 3 m before they want a switch-fuse"
            " (from memory)."
        ),
    ),
)
