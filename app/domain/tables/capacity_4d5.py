"""Capacity of flat twin and earth, 70 °C."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="capacity-4d5",
    title="Capacity of flat twin and earth, 70 °C",
    unit="A; mV/A/m",
    conditions="30 °C, one circuit, conductors at 70 °C.",
    standard="BS 7671:2018+A2:2022, Table 4D5",
    columns=("mm²", "100", "101", "102", "103", "C", "A", "mV/A/m"),
    rows=(
        ("1", "13", "10.5", "13", "8", "16", "11.5", "44"),
        ("1.5", "16", "13", "16", "10", "20", "14.5", "29"),
        ("2.5", "21", "17", "21", "13.5", "27", "20", "18"),
        ("4", "27", "22", "27", "17.5", "37", "26", "11"),
        ("6", "34", "27", "35", "23.5", "47", "32", "7.3"),
        ("10", "45", "36", "47", "32", "64", "44", "4.4"),
        ("16", "57", "46", "63", "42.5", "85", "57", "2.8"),
    ),
    basis=(
        "one source for method C; the rest from memory; mV/A/m agrees",
        "one source for method C; the rest from memory; mV/A/m agrees",
        "from memory; the ring rule and mV/A/m agree",
        "from memory; the ring rule and mV/A/m agree",
        "from memory; mV/A/m agrees",
        "one source for methods 100, 101, 103, C and mV/A/m; the rest from memory",
        "one source for method C; the rest from memory; mV/A/m agrees",
    ),
    notes=("No method B: in surface conduit Table 4D2A is used.",),
)
