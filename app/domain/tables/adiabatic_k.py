"""The k of the adiabatic equation."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="adiabatic-k",
    title="k of the adiabatic equation",
    unit="",
    conditions="Conductors up to 300 mm²; A·√s/mm².",
    standard="BS 7671",
    number="Tables 43.1 and 54.2 to 54.6",
    columns=(
        "Conductor",
        "k",
    ),
    rows=(
        line("C", "copper, 70 °C PVC, in cable", "115"),
        line("C", "copper, 90 °C PVC, in cable", "100"),
        line("C", "copper, 90 °C XLPE, in cable", "143"),
        line("C", "copper, 70 °C PVC, separate", "143"),
        line("C", "copper, 90 °C XLPE, separate", "176"),
        line("C", "aluminium, 70 °C PVC, separate", "95"),
        line("D", "aluminium, 70 °C PVC, in cable", "76"),
        line("C", "steel armour, 70 °C PVC", "51"),
        line("C", "steel armour, 90 °C XLPE", "46"),
        line("C", "steel conduit, 70 °C PVC", "47"),
        line("S", "steel conduit, 90 °C XLPE", "58"),
        line("MD", "bare copper, in sight", "228"),
        line("MD", "bare copper, normal", "159"),
        line("MD", "bare copper, fire risk", "138"),
    ),
)
