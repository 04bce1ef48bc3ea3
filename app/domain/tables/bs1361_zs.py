"""Loop impedance limits of older cartridge fuses, BS 1361."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="bs1361-zs",
    title="Largest Zs for older cartridge fuses, BS 1361",
    unit="Ω",
    conditions="230 V to earth; printed without Cmin, here times 0.95.",
    standard="BS 7671",
    number="Tables 41.2 and 41.4",
    edition="BS 7671:2008",
    columns=(
        "Rating in A",
        "0.4 s",
        "5 s",
        "2008, 0.4 s",
        "2008, 5 s",
    ),
    rows=(
        line("MD", "5", "9.93", "15.58", "10.45", "16.4"),
        line("MD", "15", "3.12", "4.75", "3.28", "5"),
        line("MD", "20", "1.61", "2.66", "1.7", "2.8"),
        line("MD", "30", "1.09", "1.75", "1.15", "1.84"),
        line("MD", "45", "0.55", "0.91", None, "0.96"),
        line("MD", "60", None, "0.66", None, "0.7"),
        line("MD", "80", None, "0.47", None, "0.5"),
        line("MD", "100", None, "0.34", None, "0.36"),
    ),
    notes=(
        (
            "The kind of fuse left the tables in 2011. The columns that are used "
            "are the 2008 ones times 0.95; 45 A at 0.4 s comes from an older "
            "edition still."
        ),
    ),
)
