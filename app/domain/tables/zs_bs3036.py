"""Largest Zs for rewirable fuses, BS 3036."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="zs-bs-3036",
    title="Largest Zs for rewirable fuses, BS 3036",
    unit="Ω",
    conditions="230 V to earth, Cmin 0.95.",
    standard="BS 7671:2018+A2:2022, Tables 41.2 and 41.4",
    columns=("In, A", "0.4 s", "5 s", "Ia at 0.4 s, A", "Ia at 5 s, A"),
    rows=(
        ("5", "9.1", "16.8", "24", "13"),
        ("15", "2.43", "5.08", "90", "43"),
        ("20", "1.68", "3.64", "130", "60"),
        ("30", "1.04", "2.51", "210", "87"),
        ("45", "0.56", "1.51", "390", "145"),
        ("60", None, "1.07", None, "205"),
        ("100", None, "0.51", None, "430"),
    ),
    basis=(
        "one source, for the older edition; from memory, agrees",
        "one source at 0.4 s; from memory, agrees, at 5 s",
        "from memory, agrees",
        "one source at 0.4 s; from memory, agrees, at 5 s",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
    ),
    notes=("60 A at 0.4 s is left open: no source was found.",),
)
