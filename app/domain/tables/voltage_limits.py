"""How much voltage may be lost."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="voltage-limits",
    title="Largest voltage drop from the origin",
    unit="%",
    conditions="Public low-voltage supply, 230 V; from the origin to the point.",
    standard="BS 7671",
    number="525.202, Appendix 4",
    columns=(
        "Use",
        "Share",
        "Drop (V)",
    ),
    rows=(
        line("C", "lighting", "3", "6.9"),
        line("C", "other uses", "5", "11.5"),
        line("M", "lighting, private LV supply", "6", "13.8"),
        line("M", "other, private LV supply", "8", "18.4"),
    ),
    notes=("Before 2008 it was 4 % for everything.",),
)
