"""Factor for cables that lie together."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="grouping",
    title="Factor for cables that lie together, Cg",
    unit="",
    conditions=(
        "The circuits alike and loaded together. A circuit that carries under"
        " a third of what it may, or lies two diameters off, is not counted."
    ),
    standard="BS 7671",
    number="Table 4C1",
    columns=(
        "Circuits",
        "In a bunch",
        "In one layer",
    ),
    rows=(
        line("M", "1", "1", "1"),
        line("M", "2", "0.8", "0.85"),
        line("M", "3", "0.7", "0.79"),
        line("M", "4", "0.65", "0.75"),
        line("M", "5", "0.6", "0.73"),
        line("M", "6", "0.57", "0.72"),
        line("M", "7", "0.54", "0.72"),
        line("S", "8", "0.52", "0.71"),
        line("M", "9", "0.5", "0.7"),
        line("M", "12", "0.45", None),
        line("M", "16", "0.41", None),
        line("M", "20", "0.38", None),
    ),
    notes=("Between two rows the larger number of circuits is taken.",),
)
