"""Zones around a bath or shower."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="bath-zones",
    title="Zones around a bath or shower",
    unit="m",
    conditions="",
    standard="BS 7671:2018+A2:2022, section 701",
    columns=("zone", "reaches", "least IP"),
    rows=(
        ("0", "inside bath or tray", "IPX7"),
        (
            "1",
            "above it, to 2.25 m or the head; 1.2 m round a head without tray",
            "IPX4",
        ),
        ("2", "0.6 m beyond zone 1", "IPX4"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
    ),
    notes=(
        (
            "Sockets: 2.5 m from zone 1 since Amendment 2, 3 m before; the 2.5 "
            "from memory."
        ),
    ),
)
