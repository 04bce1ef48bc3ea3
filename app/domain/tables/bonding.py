"""Smallest bonding and earthing conductors."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="bonding",
    title="Smallest bonding and earthing conductors",
    unit="mm²",
    conditions="Copper.",
    standard="BS 7671",
    number="Tables 54.1, 54.7 and 54.8, 544",
    columns=(
        "What",
        "Size",
    ),
    rows=(
        line("S", "main bonding, TN-C-S, neutral up to 35", "10"),
        line("S", "main bonding, TN-C-S, neutral over 35 to 50", "16"),
        line("S", "main bonding, TN-C-S, neutral over 50 to 95", "25"),
        line("S", "main bonding, TN-C-S, neutral over 95 to 150", "35"),
        line("S", "main bonding, TN-C-S, neutral over 150", "50"),
        line("M", "main bonding, TN-S or TT, at least", "6"),
        line("M", "main bonding, TN-S or TT, need not exceed", "25"),
        line("C", "earthing conductor with 25 mm² tails", "16"),
        line("M", "earthing conductor, buried, guarded from corrosion", "16"),
        line("M", "earthing conductor, buried, bare", "25"),
        line("C", "protective conductor of its own, guarded from knocks", "2.5"),
        line("C", "protective conductor of its own, not guarded", "4"),
        line("S", "supplementary bonding, not guarded", "4"),
        line("S", "supplementary bonding, guarded", "2.5"),
    ),
    notes=(
        (
            "TN-S or TT: half the earthing conductor, within those two figures. A"
            " network may ask for more."
        ),
    ),
)
