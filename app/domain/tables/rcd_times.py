"""How fast an RCD opens."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="rcd-times",
    title="Longest time in which an RCD opens",
    unit="ms",
    conditions="None opens at half of IΔn.",
    standard="BS EN 61008-1 and 61009-1; BS 4293",
    number="BS 7671 Table 3A",
    edition="",
    columns=(
        "RCD",
        "IΔn",
        "2 × IΔn",
        "5 × IΔn",
    ),
    rows=(
        line("C", "61008/61009 general", "300", "150", "40"),
        line("C", "61008/61009 S (min-max)", "130-500", "60-200", "50-150"),
        line("C", "BS 4293 / BS 7288 (old)", "200", None, "40"),
    ),
    notes=(
        (
            "Of the time-delayed kind the first figure is the shortest; 60 and 50"
            " ms are from memory. Since 2022 the test at five times is no longer "
            "asked for."
        ),
    ),
)
