"""How often the RCD notice asks for its button."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="test-button",
    title="How often the RCD notice asks for its button",
    unit="months",
    conditions="Where the maker does not say otherwise.",
    standard="BS 7671",
    number="514.12.2",
    columns=("Notice of", "Months"),
    rows=(
        line("M", "17th edition and before", "3"),
        line("M", "18th edition, from 2018", "6"),
    ),
)
