"""Limits of voltage drop."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="voltage-drop-limits",
    title="Limits of voltage drop",
    unit="%",
    conditions="From the origin to any point, public supply.",
    standard="BS 7671:2018+A2:2022, Appendix 4, section 6.4",
    columns=("use", "%", "V at 230 V"),
    rows=(
        ("lighting", "3", "6.9"),
        ("other", "5", "11.5"),
        ("lighting, private supply", "6", "13.8"),
        ("other, private supply", "8", "18.4"),
    ),
    basis=(
        "confirmed",
        "confirmed",
        "from memory",
        "from memory",
    ),
    notes=("Before 2008 the limit was 4 % in all.",),
)
