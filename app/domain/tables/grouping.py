"""Factor for cables beside each other, Cg."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="grouping",
    title="Factor for cables beside each other, Cg",
    unit="factor",
    conditions="Circuits in all, loaded alike and touching.",
    standard="BS 7671:2018+A2:2022, Table 4C1",
    columns=("circuits", "bunched", "single layer"),
    rows=(
        ("1", "1.0", "1.0"),
        ("2", "0.8", "0.85"),
        ("3", "0.7", "0.79"),
        ("4", "0.65", "0.75"),
        ("5", "0.6", "0.73"),
        ("6", "0.57", "0.72"),
        ("7", "0.54", "0.72"),
        ("8", "0.52", "0.71"),
        ("9", "0.5", "0.7"),
        ("12", "0.45", None),
        ("16", "0.41", None),
        ("20", "0.38", None),
    ),
    basis=(
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
        "one source",
        "from memory",
        "from memory",
        "from memory",
        "from memory",
    ),
    notes=("Cables loaded to 30 % or less do not count.",),
)
