"""Load: maximum demand with diversity, against all that carries it.

``load_answer(net, additions)`` returns a `LoadAnswer`: ``demand`` (rows with rule and
figures, total, range by the common variations, what is not counted), ``phases`` (the
same on each phase of a three-phase home), ``against`` (supply fuse, tails, switches),
``rcds`` (each with its two tests and a verdict ``shown``, ``not_shown`` or
``cannot_tell``), ``rcds_differ`` and ``what_if``.

``rcd_loading(net, device, loads_of(net))`` judges one RCD; ``addition("shower=8.5")``
reads what might be added.  A supply fuse of unknown rating gives no verdict.
"""

from __future__ import annotations

from app.domain.load.against import CAUTIOUS, Against, against
from app.domain.load.answer import LoadAnswer, load_answer
from app.domain.load.demand import Demand, Row, amps, demand
from app.domain.load.differ import RcdsDiffer, Said, rcds_differ
from app.domain.load.loads import Load, below, loads_of
from app.domain.load.phases import PhaseDemand, by_phase
from app.domain.load.rcd import RcdLoading, rcd_loading, rcd_loadings
from app.domain.load.what_if import (
    ADDABLE,
    Addition,
    Asked,
    WhatIf,
    addition,
    kilowatts,
    what_if,
)

__all__ = [
    "ADDABLE",
    "CAUTIOUS",
    "Addition",
    "Against",
    "Asked",
    "Demand",
    "Load",
    "LoadAnswer",
    "PhaseDemand",
    "RcdLoading",
    "RcdsDiffer",
    "Row",
    "Said",
    "WhatIf",
    "addition",
    "against",
    "amps",
    "below",
    "by_phase",
    "demand",
    "kilowatts",
    "load_answer",
    "loads_of",
    "rcd_loading",
    "rcd_loadings",
    "rcds_differ",
    "what_if",
]
