"""Zones around a bath or shower."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="bath-zones",
    title="Zones around a bath or shower",
    unit="",
    conditions="Rooms with a bath or shower.",
    standard="BS 7671",
    number="section 701",
    columns=("Zone", "Reaches", "Least IP"),
    rows=(
        line("C", "zone 0", "inside the bath or tray", "IPX7"),
        line(
            "C",
            "zone 1",
            "above it, to 2.25 m or the fixed head; without a tray 1.2 m round",
            "IPX4",
        ),
        line(
            "C", "zone 2", "0.6 m beyond zone 1, as high; none without a tray", "IPX4"
        ),
        line(
            "M",
            "13 A sockets",
            "2.5 m from zone 1 since 2022, 3 m before",
            "none asked",
        ),
    ),
)
