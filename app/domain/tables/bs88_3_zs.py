"""Loop impedance limits of household cartridge fuses, BS 88-3."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="bs88-3-zs",
    title="Largest Zs for cartridge fuses, BS 88-3",
    unit="Ω",
    conditions=(
        "230 V to earth, Cmin 0.95, conductors as warm as in use. Fuse system C."
    ),
    standard="BS 7671",
    number="Tables 41.2 and 41.4",
    columns=(
        "Rating in A",
        "0.4 s",
        "5 s",
    ),
    rows=(
        line("MD", "5", "9.93", "14.6"),
        line("MD", "16", "2.3", "3.9"),
        line("MD", "20", "1.93", "3.2"),
        line("C C MD", "32", "0.91", "1.6"),
        line("M", "45", "0.57", "1"),
        line("MD M MD", "63", "0.36", "0.68"),
        line("MD", "80", None, "0.51"),
        line("MD", "100", None, "0.38"),
    ),
    notes=(
        ("BS 1361 has a curve of its own: never read one in the table of the other."),
        "45 A, and 63 A at 0.4 s, are the weakest figures here.",
    ),
)
