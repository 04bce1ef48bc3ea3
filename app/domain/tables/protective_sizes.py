"""Smallest protective, earthing and bonding conductors."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="protective-sizes",
    title="Smallest protective, earthing and bonding conductors",
    unit="mm² copper",
    conditions="Same material as the line.",
    standard="BS 7671:2018+A2:2022, Table 54.7, 544.1.1, Table 54.8, Table 54.1",
    columns=("conductor", "least, mm²"),
    rows=(
        ("protective, line up to 16", "as the line"),
        ("protective, line 16 to 35", "16"),
        ("protective, line above 35", "half the line"),
        ("protective, not in the cable", "2.5 protected, 4 not"),
        ("main bonding, TN-S or TT", "half the earthing conductor, 6 at least"),
        ("main bonding, TN-C-S, supply neutral to 35", "10"),
        ("main bonding, TN-C-S, supply neutral to 50", "16"),
        ("earthing conductor with 25 mm² tails", "16"),
        ("earthing conductor in the ground, not protected", "25"),
        ("supplementary bonding", "2.5 protected, 4 not"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "from memory",
        "one source",
        "one source",
        "confirmed",
        "from memory",
        "one source",
    ),
)
