"""Largest Zs for plug and connection unit fuses, BS 1362."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="zs-bs-1362",
    title="Largest Zs for plug and connection unit fuses, BS 1362",
    unit="Ω",
    conditions="230 V to earth, Cmin 0.95.",
    standard="BS 7671:2018+A2:2022, Tables 41.2 and 41.4",
    columns=("In, A", "0.4 s", "5 s"),
    rows=(
        ("3", "15.6", "22.0"),
        ("13", "2.3", "3.64"),
    ),
    basis=(
        "from memory, agrees",
        "from memory, agrees",
    ),
)
