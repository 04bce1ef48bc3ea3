"""Largest Zs for cartridge fuses, BS 88-3."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="zs-bs-88-3",
    title="Largest Zs for cartridge fuses, BS 88-3",
    unit="Ω",
    conditions="230 V to earth, Cmin 0.95.",
    standard="BS 7671:2018+A2:2022, Tables 41.2 and 41.4",
    columns=("In, A", "0.4 s", "5 s"),
    rows=(
        ("5", "9.93", "14.6"),
        ("16", "2.3", "3.9"),
        ("20", "1.93", "3.2"),
        ("32", "0.91", "1.6"),
        ("45", "0.57", "1.0"),
        ("63", "0.36", "0.68"),
        ("80", None, "0.51"),
        ("100", None, "0.38"),
    ),
    basis=(
        "from memory, agrees",
        "from memory, agrees",
        "from memory, agrees",
        "confirmed at 0.4 s; from memory, agrees, at 5 s",
        "from memory, uncertain",
        "from memory, uncertain at 0.4 s; agrees at 5 s",
        "from memory, agrees",
        "from memory, agrees",
    ),
    notes=("Not to be used for BS 1361 fuses: their curves differ.",),
)
