"""Battery: stores electricity and can feed the home.

It is a cabinet on a wall or a floor, with an inverter in it or beside it. With the
network off it may go on feeding some circuits or outlets. Record it as a source too,
and write down its isolators, its rating, and whether it has a backup output. It cannot
be emptied by switching off; smoke, hissing or swelling: get out and ring 999.
"""

from __future__ import annotations

from app.domain.kinds._kind import PointKind

KIND = PointKind(
    code="battery",
    label="Battery",
    order=330,
    symbol=(
        '<path d="M1.5 12H6M6 5v14M13.5 5v14M18 12h4.5M9.8 12h.9"/>'
        '<path d="M9 8.5v7M17.2 8.5v7" stroke-width="2.6"/>'
    ),
    group="fixed",
)
