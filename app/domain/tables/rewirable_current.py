"""Current that opens a rewirable fuse in a given time."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="rewirable-current",
    title="Current that opens a rewirable fuse in time",
    unit="A",
    conditions="BS 3036.",
    standard="BS 7671",
    number="Appendix 3, Figure 3A2",
    columns=(
        "Rating in A",
        "0.4 s",
        "5 s",
    ),
    rows=(
        line("MD", "5", "24", "13"),
        line("MD S MD", "15", "90", "43"),
        line("MD", "20", "130", "60"),
        line("MD", "30", "210", "87"),
        line("MD", "45", "390", "145"),
        line("MD", "60", None, "205"),
        line("MD", "100", None, "430"),
    ),
    notes=("Only 15 A at 0.4 s was seen in a book.",),
)
