"""k for the adiabatic equation."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="adiabatic-k",
    title="k for the adiabatic equation",
    unit="A·√s/mm²",
    conditions="Up to 300 mm².",
    standard="BS 7671:2018+A2:2022, Tables 43.1 and 54.2 to 54.6",
    columns=("conductor", "k", "table"),
    rows=(
        ("copper in cable, 70 °C thermoplastic", "115", "54.3"),
        ("copper in cable, 90 °C thermoplastic", "100", "54.3"),
        ("copper in cable, 90 °C thermosetting", "143", "54.3"),
        ("copper by itself, 70 °C thermoplastic", "143", "54.2"),
        ("copper by itself, 90 °C thermosetting", "176", "54.2"),
        ("aluminium in cable, 70 °C thermoplastic", "76", "54.3"),
        ("steel armour, 70 °C thermoplastic", "51", "54.4"),
        ("steel armour, 90 °C thermosetting", "46", "54.4"),
        ("steel conduit, 70 °C thermoplastic", "47", "54.5"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "confirmed",
        "derived",
        "confirmed",
        "confirmed",
        "confirmed",
    ),
)
