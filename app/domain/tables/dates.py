"""When requirements came."""

from __future__ import annotations

from app.domain.tables._table import Table, line

TABLE = Table(
    slug="dates",
    title="When requirements came",
    unit="",
    conditions="New work from that day; none of them looks back.",
    standard="BS 7671",
    number="several editions",
    columns=("Requirement", "From", "Where"),
    rows=(
        line(
            "S",
            "30 mA RCD for sockets to 20 A, bathrooms, hidden cables",
            "1 July 2008",
            "411.3.3, 701, 522.6",
        ),
        line("C", "Zs tables with Cmin 0.95", "1 July 2015", "41.2 to 41.4"),
        line("C", "board enclosure that does not burn", "1 January 2016", "421.1.201"),
        line("C", "30 mA RCD for sockets to 32 A", "1 January 2019", "411.3.3"),
        line("M", "30 mA RCD for lights of a home", "1 January 2019", "411.3.4"),
        line("S", "surge protection, unless declined", "27 September 2022", "443.4.1"),
        line(
            "C",
            "arc fault detection in some shared homes",
            "27 September 2022",
            "421.1.7",
        ),
        line("C", "Amendment 4, its tables not read", "15 October 2026", "not read"),
    ),
)
