"""Maximum demand, what it goes through, one load more, and two RCDs that differ."""

from __future__ import annotations

from app.domain.load.against import (
    SHOWN,
    Against,
    RcdLoad,
    against_supply,
    loads_behind,
    rcd_loads,
    supply_fuse,
)
from app.domain.load.demand import (
    RULES,
    Demand,
    Load,
    Row,
    cooking,
    demand,
    loads_of,
    managed,
)
from app.domain.load.two_rcds import TwoRcds, two_rcds
from app.domain.load.what_if import KINDS, WhatIf, added_load, what_if

__all__ = [
    "KINDS",
    "RULES",
    "SHOWN",
    "Against",
    "Demand",
    "Load",
    "RcdLoad",
    "Row",
    "TwoRcds",
    "WhatIf",
    "added_load",
    "against_supply",
    "cooking",
    "demand",
    "loads_behind",
    "loads_of",
    "managed",
    "rcd_loads",
    "supply_fuse",
    "two_rcds",
    "what_if",
]
