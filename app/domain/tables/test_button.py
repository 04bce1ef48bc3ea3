"""How often the RCD notice asks for the test button."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="test-button",
    title="How often the RCD notice asks for the test button",
    unit="months",
    conditions="By the edition of the notice.",
    standard="BS 7671:2018+A2:2022, 514.12.2",
    columns=("notice of", "months"),
    rows=(
        ("17th edition and before", "3"),
        ("18th edition, from 2018", "6"),
    ),
    basis=(
        "from memory",
        "from memory",
    ),
    notes=("A maker may state another interval; that one goes first.",),
)
