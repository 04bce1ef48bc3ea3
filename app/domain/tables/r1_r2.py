"""R1+R2 of flat twin and earth at 20 °C."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="r1-r2",
    title="R1+R2 of flat twin and earth at 20 °C",
    unit="mΩ/m",
    conditions="Sum of both conductors; times 1.20 when warm.",
    standard="IET On-Site Guide, Table I1; derived from BS EN 60228",
    columns=("line/protective, mm²", "20 °C", "warm, × 1.20"),
    rows=(
        ("1/1", "36.2", "43.44"),
        ("1.5/1", "30.2", "36.24"),
        ("2.5/1", "25.51", "30.612"),
        ("2.5/1.5", "19.51", "23.412"),
        ("4/1.5", "16.71", "20.052"),
        ("4/2.5", "12.02", "14.424"),
        ("6/2.5", "10.49", "12.588"),
        ("10/4", "6.44", "7.728"),
        ("16/6", "4.23", "5.076"),
    ),
    basis=(
        "derived",
        "confirmed",
        "derived",
        "confirmed",
        "confirmed",
        "derived",
        "confirmed",
        "confirmed",
        "confirmed",
    ),
    notes=("2.5/1.0 is old cable.",),
)
