"""Circuit arithmetic: every figure with its working, exact until it is shown.

A :class:`Working` says what was put in and where each number came from; a
:class:`Check` holds one against another, or says what is missing.
"""

from __future__ import annotations

from app.domain.circuits.adiabatic import adiabatic, least_size
from app.domain.circuits.cable import capacity
from app.domain.circuits.drop import (
    circuit_drop,
    drop_at,
    drop_check,
    from_origin,
    radial_drop,
    ring_drop_at,
)
from app.domain.circuits.figures import CircuitFigures, circuit_figures
from app.domain.circuits.loop import (
    RingFigures,
    measured_limit,
    r1_r2,
    rcd_limit,
    ring_figures,
    zs,
    zs_check,
    zs_limit,
)
from app.domain.circuits.overload import overload, rewirable, ring_rule
from app.domain.circuits.working import ORIGINS, Check, Input, Working

__all__ = [
    "ORIGINS",
    "Check",
    "CircuitFigures",
    "Input",
    "RingFigures",
    "Working",
    "adiabatic",
    "capacity",
    "circuit_drop",
    "circuit_figures",
    "drop_at",
    "drop_check",
    "from_origin",
    "least_size",
    "measured_limit",
    "overload",
    "r1_r2",
    "radial_drop",
    "rcd_limit",
    "rewirable",
    "ring_drop_at",
    "ring_figures",
    "ring_rule",
    "zs",
    "zs_check",
    "zs_limit",
]
