"""Conductor colours."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="colours",
    title="Conductor colours",
    unit="",
    conditions="Fixed wiring in the United Kingdom.",
    standard="BS 7671:2001, A2:2004",
    number="Table 51",
    columns=("Conductor", "Until 2006", "From 2004"),
    rows=(
        line("S", "line", "red", "brown"),
        line("S", "neutral", "black", "blue"),
        line(
            "MD",
            "protective",
            "green and yellow, plain green before about 1977",
            "green and yellow",
        ),
        line("M", "three lines", "red, yellow, blue", "brown, black, grey"),
    ),
)
