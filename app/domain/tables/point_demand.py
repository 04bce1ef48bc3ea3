"""How much current a point is taken to draw."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="point-demand",
    title="Current that a point is taken to draw",
    unit="",
    conditions="Households.",
    standard="IET On-Site Guide",
    number="Table A1",
    edition="",
    columns=(
        "Point",
        "Counts as",
    ),
    rows=(
        line(
            "M",
            "light",
            "its load, at least 100 W a lampholder; a fixed LED its own load",
        ),
        line("M", "clock, shaver unit, bell transformer", "nothing"),
        line("M", "2 A socket-outlet", "at least 0.5 A"),
        line("M", "other socket-outlet, not 13 A", "its rating"),
        line(
            "C",
            "cooking",
            "10 A, 30 % of the rest, 5 A for a socket in the control unit",
        ),
        line("M", "other fixed equipment", "its rated or normal current"),
    ),
    notes=("13 A socket-outlets are counted by circuit, in the table of diversity.",),
)
