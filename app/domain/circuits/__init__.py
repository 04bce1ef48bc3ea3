"""Circuit arithmetic: exact decimals, each answer with its working.

``circuit_figures(net, circuit)`` returns a `CircuitAnswer` whose parts carry a code:
``load overload ring drop drop-spread drop-own r1r2 ring-r1 ring-rn ring-r2 zs
zs-measured rcd adiabatic``.  A part has what was ``found``, its ``limit``, a ``sign``
(within, beyond, open) and a sentence.

An outcome is a `Working` (value, formula, figures put in with where each came from,
rounding, source, and what is assumed) or `CannotTell` (what it needs).  `Figure` says
of each number: from the record, measured, from a table, assumed, calculated.

From a record: ``Subject(net, circuit)``, then ``load_current``, ``design_current``
(of a cooker, with diversity), ``cable_capacity``,
``own_drop``, ``drop_from_origin``, ``own_r1r2``, ``loop_impedance``, ``device_limit``,
``rcd_earth_limit``, ``conductor_needed``.
From numbers alone: the modules ``capacity``, ``voltage``, ``ring``, ``loop``, ``fault``
and ``measured``.
"""

from __future__ import annotations

from app.domain.circuits._working import (
    CAME,
    COMMON_PRACTICE,
    CannotTell,
    Figure,
    Need,
    Outcome,
    Working,
    assumed,
    measured,
    plain,
    recorded,
    result,
    tabled,
    worked,
)
from app.domain.circuits.cable import cable_capacity, drop_from_origin, own_drop
from app.domain.circuits.current import design_current, load_current
from app.domain.circuits.earth import (
    conductor_needed,
    device_limit,
    loop_impedance,
    outside_loop,
    own_r1r2,
    rcd_earth_limit,
)
from app.domain.circuits.figures import CircuitAnswer, circuit_figures
from app.domain.circuits.part import Part
from app.domain.circuits.subject import Subject

__all__ = [
    "CAME",
    "COMMON_PRACTICE",
    "CannotTell",
    "CircuitAnswer",
    "Figure",
    "Need",
    "Outcome",
    "Part",
    "Subject",
    "Working",
    "assumed",
    "cable_capacity",
    "circuit_figures",
    "conductor_needed",
    "design_current",
    "device_limit",
    "drop_from_origin",
    "load_current",
    "loop_impedance",
    "measured",
    "outside_loop",
    "own_drop",
    "own_r1r2",
    "plain",
    "rcd_earth_limit",
    "recorded",
    "result",
    "tabled",
    "worked",
]
