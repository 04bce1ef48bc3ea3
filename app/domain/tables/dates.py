"""When requirements came."""

from __future__ import annotations

from app.domain.tables._table import Table

TABLE = Table(
    code="dates",
    title="When requirements came",
    unit="",
    conditions="New work from that day; not retrospective.",
    standard="Editions of BS 7671",
    columns=("what", "from", "where"),
    rows=(
        (
            "30 mA RCD for sockets to 20 A, bathrooms, cables in walls",
            "1 July 2008",
            "411.3.3, 701, 522.6",
        ),
        ("metal or like enclosure of a board in a home", "1 January 2016", "421.1.201"),
        ("Cmin in the Zs tables", "1 July 2015", "41.2 to 41.4"),
        ("30 mA RCD for sockets to 32 A", "1 January 2019", "411.3.3"),
        ("30 mA RCD for lights in homes", "1 January 2019", "411.3.4"),
        (
            "surge protection, unless the owner declines it",
            "27 September 2022",
            "443.4.1",
        ),
        ("arc fault detection in some shared homes", "27 September 2022", "421.1.7"),
        ("brown and blue only", "1 April 2006", "BS 7671:2001, A2:2004"),
        ("Amendment 4", "15 October 2026", "not read"),
    ),
    basis=(
        "one source",
        "confirmed",
        "confirmed",
        "confirmed",
        "from memory",
        "one source",
        "confirmed; the list of premises from memory",
        "one source",
        "confirmed",
    ),
)
