"""When an RCD is shown not to be overloaded."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="rcd-rating",
    title="Rated current of an RCD against what is round it",
    unit="",
    conditions="An RCD has no overload protection of its own.",
    standard="BS 7671",
    number="536.4.3.2, 536.4.202",
    columns=(
        "Rule",
        "Says",
    ),
    rows=(
        line(
            "M",
            "of the standard",
            (
                "a fuse or breaker before it, or those behind it together, must keep "
                "within what its maker allows; diversity alone is not enough"
            ),
        ),
        line(
            "D",
            "used here",
            (
                "shown where its rating is no smaller than the nearest fuse or "
                "breaker before it, or than the sum of the ways behind it; else ask "
                "for the data of its maker"
            ),
        ),
    ),
    notes=(
        (
            "Written from memory of the regulation. The instructions of its maker"
            " override all of this."
        ),
    ),
)
