"""How much of a limit a cold measurement may reach."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="measured-factor",
    title="Share of the limit that a measured Zs may reach",
    unit="",
    conditions="Conductors at about 20 °C when measured.",
    standard="BS 7671",
    number="Appendix 3",
    columns=(
        "Measured",
        "Factor",
    ),
    rows=(line("C", "cold", "0.8"),),
    notes=("A cold conductor measures less than a warm one. Older books used 0.75.",),
)
