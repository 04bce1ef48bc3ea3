"""How resistance grows with warmth."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="warmth",
    title="Resistance of copper by warmth",
    unit="",
    conditions="Times the resistance at 20 °C; 0.4 % for each degree.",
    standard="IET On-Site Guide",
    number="Tables I2 and I3",
    edition="",
    columns=(
        "Conductor",
        "Factor",
    ),
    rows=(
        line("C", "in cable, 70 °C", "1.2"),
        line("M", "separate, 70 °C", "1.04"),
        line("MD", "in cable, 90 °C", "1.28"),
        line("MD", "at 5 °C", "0.94"),
        line("MD", "at 10 °C", "0.96"),
        line("MD", "at 15 °C", "0.98"),
        line("MD", "at 20 °C", "1"),
        line("MD", "at 25 °C", "1.02"),
    ),
    notes=(
        (
            "In cable: the protective conductor is as warm as the line beside it."
            " Separate: it is not."
        ),
    ),
)
