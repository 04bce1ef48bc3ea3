"""How circuit-breakers trip."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="circuit-breaker-bands",
    title="How circuit-breakers trip",
    unit="times In",
    conditions="30 °C.",
    standard="BS EN 60898-1, 61009-1",
    columns=("what", "times In"),
    rows=(
        ("B trips at once", "3 to 5"),
        ("C trips at once", "5 to 10"),
        ("D trips at once", "10 to 20"),
        ("does not trip within an hour", "1.13"),
        ("trips within an hour", "1.45"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
        "from memory",
        "from memory",
    ),
)
