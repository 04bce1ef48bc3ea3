"""Factor for rewirable fuses."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="fuse-factor",
    title="Factor for rewirable fuses",
    unit="",
    conditions=(
        "The rating of the fuse is at most this share of the capacity of its cable."
    ),
    standard="BS 7671",
    number="433.1.202",
    columns=(
        "Device",
        "Factor",
    ),
    rows=(
        line("C", "rewirable", "0.725"),
        line("C", "other", "1"),
    ),
    notes=(
        (
            "A wire melts at twice its rating where a breaker opens at 1.45 "
            "times: 1.45 / 2."
        ),
    ),
)
