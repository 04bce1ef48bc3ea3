"""Loop impedance limits of circuit-breakers and RCBOs."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="breaker-zs",
    title="Largest Zs for circuit-breakers and RCBOs",
    unit="Ω",
    conditions=(
        "230 V to earth, Cmin 0.95, conductors as warm as in use. B and C "
        "hold for 0.4 s and 5 s alike."
    ),
    standard="BS 7671",
    number="Table 41.3",
    columns=(
        "Rating in A",
        "B",
        "C",
        "D, 0.4 s",
        "D, 5 s",
    ),
    rows=(
        line("MD MD D D D", "3", "14.57", "7.28", "3.64", "7.28"),
        line("C C MD MD D", "6", "7.28", "3.64", "1.82", "3.64"),
        line("C C MD MD D", "10", "4.37", "2.19", "1.09", "2.19"),
        line("D D D D D", "13", "3.36", "1.68", "0.84", "1.68"),
        line("C C MD MD D", "16", "2.73", "1.37", "0.68", "1.37"),
        line("C C MD MD D", "20", "2.19", "1.09", "0.55", "1.09"),
        line("C C MD MD D", "25", "1.75", "0.87", "0.44", "0.87"),
        line("C C MD MD D", "32", "1.37", "0.68", "0.34", "0.68"),
        line("C C MD MD D", "40", "1.09", "0.55", "0.27", "0.55"),
        line("D D D D D", "45", "0.97", "0.49", "0.24", "0.49"),
        line("C C MD MD D", "50", "0.87", "0.44", "0.22", "0.44"),
        line("MD MD MD MD D", "63", "0.69", "0.35", "0.17", "0.35"),
        line("MD MD MD MD D", "80", "0.55", "0.27", "0.14", "0.27"),
        line("MD MD MD MD D", "100", "0.44", "0.22", "0.11", "0.22"),
        line("MD MD MD MD D", "125", "0.35", "0.17", "0.09", "0.17"),
    ),
    notes=(
        (
            "Worked out as 230 × 0.95 / (multiple × rating), with the multiples 5"
            " for B, 10 for C and 20 for D; the printed table rounds to two "
            "places. At 5 s, D counts with 10."
        ),
        (
            "13 A and 45 A are not printed: these rows follow from the formula. "
            "Nor are C and D at 3 A."
        ),
    ),
)
