"""Standard circuits for 13 A sockets."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="standard-circuits",
    title="Standard circuits for 13 A sockets",
    unit="",
    conditions="Households, copper.",
    standard="IET On-Site Guide",
    number="Table H2.1",
    edition="",
    columns=(
        "Circuit",
        "Device (A)",
        "Smallest size (mm²)",
        "Floor area (m²)",
    ),
    rows=(
        line("S", "ring", "30 or 32", "2.5", "100"),
        line("S S S M", "radial, not with a rewirable fuse", "30 or 32", "4", "75"),
        line("M", "radial", "20", "2.5", "50"),
    ),
)
