"""How large a fault a device can break."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="short-circuit",
    title="Fault current that a device can break",
    unit="kA",
    conditions="Rated breaking capacity.",
    standard="The standards of the devices",
    number="IET On-Site Guide, Table 7.2.7",
    edition="",
    columns=(
        "Device",
        "Breaks",
    ),
    rows=(
        line("S", "circuit-breaker of a household, BS EN 60898", "6"),
        line("C", "circuit-breaker, BS EN 60898, at most", "25"),
        line("C", "rewirable fuse, S1", "1"),
        line("C", "rewirable fuse, S2", "2"),
        line("C", "rewirable fuse, S4", "4"),
        line("M", "cartridge fuse, BS 1361 type I", "16.5"),
        line("M", "cartridge fuse, BS 1361 type II", "33"),
        line("M", "cartridge fuse, BS 88-3 type I", "16"),
        line("M", "cartridge fuse, BS 88-3 type II", "31.5"),
        line("M", "plug fuse, BS 1362", "6"),
        line("C", "consumer unit behind a 100 A supply fuse", "16"),
    ),
)
