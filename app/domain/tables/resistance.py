"""Resistance of copper conductors at 20 °C."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="conductor-resistance",
    title="Resistance of copper conductors at 20 °C",
    unit="mΩ/m",
    conditions="Largest d.c. resistance at 20 °C, class 1 and 2.",
    standard="BS EN 60228, Tables 1 and 2",
    columns=("mm²", "20 °C", "70 °C"),
    rows=(
        ("1", "18.1", "21.72"),
        ("1.5", "12.1", "14.52"),
        ("2.5", "7.41", "8.892"),
        ("4", "4.61", "5.532"),
        ("6", "3.08", "3.696"),
        ("10", "1.83", "2.196"),
        ("16", "1.15", "1.38"),
        ("25", "0.727", "0.872"),
        ("35", "0.524", "0.629"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "one source",
        "confirmed",
        "one source",
        "one source",
        "one source",
    ),
)
