"""How much of the connected load counts at once."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="diversity",
    title="Diversity in one household",
    unit="",
    conditions="One dwelling, a flat in a block included.",
    standard="IET On-Site Guide",
    number="Table A2",
    edition="",
    columns=(
        "Load",
        "Rule",
    ),
    rows=(
        line("C", "lighting", "66 % of all of it"),
        line(
            "C",
            "heating and power not named below",
            "100 % up to 10 A, 50 % of the rest",
        ),
        line(
            "C",
            "cooking",
            "10 A, 30 % of the rest, 5 A for a socket in the control unit",
        ),
        line("C", "motors, lifts left out", "not for households"),
        line(
            "C", "instant water heaters", "100 % of the two largest, 25 % of the rest"
        ),
        line("C", "water heaters with a tank", "all of it"),
        line("C", "floor warming", "all of it"),
        line("C", "storage heating", "all of it"),
        line(
            "C", "standard socket circuits", "100 % of the largest, 40 % of every other"
        ),
        line(
            "C",
            "other sockets and fixed equipment",
            "100 % of the largest, 40 % of every other",
        ),
        line(
            "S",
            "vehicle charging",
            "all of it, unless it is held back when the home draws much",
        ),
    ),
    notes=(
        (
            "The guide speaks of the demand of a circuit, not the rating of its "
            "device; for a socket circuit the rating stands in, since nothing "
            "better is known."
        ),
        "Vehicle charging: BS 7671 722.311.201.",
    ),
)
