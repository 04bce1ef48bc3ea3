"""Allowances for diversity in one household."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="diversity",
    title="Allowances for diversity in one household",
    unit="",
    conditions="One dwelling.",
    standard="IET On-Site Guide, Table A2",
    columns=("load", "allowance"),
    rows=(
        ("lighting", "66 % of all of it"),
        ("cooking", "10 A, 30 % of the rest, 5 A for a socket in the control"),
        ("instant water heaters", "all of the two largest, 25 % of the rest"),
        ("water heating with a tank", "all of it"),
        ("floor heating", "all of it"),
        ("storage heating", "all of it"),
        ("direct heating", "all up to 10 A, 50 % of the rest"),
        ("usual socket circuits", "all of the largest, 40 % of the others"),
        ("other fixed equipment", "all of the largest, 40 % of the others"),
        ("vehicle charging", "all of it, unless its load is managed"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "one source",
    ),
)
