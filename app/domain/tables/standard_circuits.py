"""Usual circuits for 13 A sockets."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="standard-circuits",
    title="Usual circuits for 13 A sockets",
    unit="",
    conditions="Household, copper.",
    standard="IET On-Site Guide, Appendix H; BS 7671, Appendix 15",
    columns=("circuit", "device, A", "least, mm²", "floor area, m²"),
    rows=(
        ("ring", "30 or 32", "2.5", "100"),
        ("radial, 32 A", "30 or 32, no rewirable fuse", "4", "75"),
        ("radial, 20 A", "20", "2.5", "50"),
    ),
    basis=(
        "one source",
        "one source for size and rating; the area from memory",
        "from memory",
    ),
    notes=("A 30 A radial on a rewirable fuse is no longer among them.",),
)
