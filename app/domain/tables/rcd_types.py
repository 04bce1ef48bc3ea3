"""What each type of RCD senses."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="rcd-types",
    title="What each type of RCD senses",
    unit="",
    conditions="Households.",
    standard="BS 7671",
    number="531.3.3; BS EN 62423",
    columns=(
        "Type",
        "Senses",
        "For",
    ),
    rows=(
        line(
            "S",
            "AC",
            "alternating current",
            "fixed equipment known to hold no electronics",
        ),
        line(
            "S",
            "A",
            "that, and pulsating direct current",
            "most circuits of a household",
        ),
        line(
            "M",
            "F",
            "as A, and mixed frequencies",
            "single-phase drives, such as some washing machines and heat pumps",
        ),
        line(
            "S",
            "B",
            "as F, and smooth direct current",
            "vehicle chargers without a sensor of their own, solar inverters",
        ),
        line("M", "S", "time-delayed, whatever else it is", "ahead of other RCDs"),
    ),
)
