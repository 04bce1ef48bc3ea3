"""Loop impedance limits of plug fuses, BS 1362."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="bs1362-zs",
    title="Largest Zs for plug fuses, BS 1362",
    unit="Ω",
    conditions="230 V to earth, Cmin 0.95, conductors as warm as in use.",
    standard="BS 7671",
    number="Tables 41.2 and 41.4",
    columns=(
        "Rating in A",
        "0.4 s",
        "5 s",
    ),
    rows=(
        line("MD", "3", "15.6", "22"),
        line("MD", "13", "2.3", "3.64"),
    ),
)
