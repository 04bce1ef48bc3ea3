"""R1+R2 of flat twin and earth."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="r1r2",
    title="R1+R2 of flat twin and earth at 20 °C",
    unit="mΩ/m",
    conditions="Line and protective conductor together.",
    standard="IET On-Site Guide",
    number="Table I1",
    edition="",
    columns=(
        "Line and protective conductor in mm²",
        "R1+R2",
    ),
    rows=(
        line("D", "1/1", "36.2"),
        line("C", "1.5/1", "30.2"),
        line("D", "2.5/1", "25.51"),
        line("C", "2.5/1.5", "19.51"),
        line("C", "4/1.5", "16.71"),
        line("D", "4/2.5", "12.02"),
        line("C", "6/2.5", "10.49"),
        line("C", "10/4", "6.44"),
        line("C", "16/6", "4.23"),
    ),
    notes=("2.5/1.0 is an old cable, up to about 1982.",),
)
