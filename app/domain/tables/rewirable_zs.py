"""Loop impedance limits of rewirable fuses, BS 3036."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="rewirable-zs",
    title="Largest Zs for rewirable fuses, BS 3036",
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
        line("S", "5", "9.1", "16.8"),
        line("S S MD", "15", "2.43", "5.08"),
        line("MD", "20", "1.68", "3.64"),
        line("S S MD", "30", "1.04", "2.51"),
        line("MD", "45", "0.56", "1.51"),
        line("MD", "60", None, "1.07"),
        line("MD", "100", None, "0.51"),
    ),
    notes=(
        (
            "60 A at 0.4 s: no source could be found, so none is given. 100 A at "
            "0.4 s is not in the tables."
        ),
    ),
)
