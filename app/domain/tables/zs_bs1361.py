"""Largest Zs for older cartridge fuses, BS 1361."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="zs-bs-1361",
    title="Largest Zs for older cartridge fuses, BS 1361",
    unit="Ω",
    conditions="230 V to earth; the values of the 17th edition times Cmin 0.95.",
    standard=(
        "BS 7671:2008, Tables 41.2 and 41.4, times 0.95; no table is printed since 2011"
    ),
    columns=("In, A", "0.4 s", "5 s", "0.4 s, 17th edition", "5 s, 17th edition"),
    rows=(
        ("5", "9.93", "15.58", "10.45", "16.4"),
        ("15", "3.12", "4.75", "3.28", "5.0"),
        ("20", "1.61", "2.66", "1.7", "2.8"),
        ("30", "1.09", "1.75", "1.15", "1.84"),
        ("45", "0.55", "0.91", None, "0.96"),
        ("60", None, "0.66", None, "0.7"),
        ("80", None, "0.47", None, "0.5"),
        ("100", None, "0.34", None, "0.36"),
    ),
    basis=(
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
    ),
    notes=("BS 1361 was withdrawn in March 2010.",),
)
