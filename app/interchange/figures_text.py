"""Load and circuit figures as text for a terminal, and as values for JSON."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from typing import Any

from app.domain.circuits import ORIGINS, Check, CircuitFigures, Working
from app.domain.load import Demand, WhatIf, rcd_loads, two_rcds
from app.domain.load.against import SHOWN, Against
from app.domain.network import Network
from app.domain.tables import NEWER

CALCULATED = f"Calculated from your record. {NEWER}"


def load_text(net: Network, found: WhatIf) -> str:
    """Return the load as text."""
    lines = [*_demand("Today", found.today)]
    if found.then != found.today:
        lines += _demand("With what is thought of", found.then)
    lines += [f"  {a.title}: {a.sentence}" for a in found.against_then]
    lines += [f"First: {sentence}" for sentence in found.first]
    for board in two_rcds(net):
        lines += [f"RCDs of {board.board.name}", *(f"  {s}" for s in board.sentences)]
    return "\n".join((*lines, "", CALCULATED))


def load_json(net: Network, found: WhatIf) -> dict[str, Any]:
    """Return the load as values: currents in amperes, as numbers."""
    return {
        "home": net.record.home.ref,
        "calculated": CALCULATED,
        "today": _demand_json(found.today),
        "then": _demand_json(found.then),
        "then_managed_a": (
            _number(found.then_managed.total) if found.then_managed else None
        ),
        "against_today": [_against_json(each) for each in found.against_today],
        "against_then": [_against_json(each) for each in found.against_then],
        "first": list(found.first),
        "rcds": [
            {
                "ref": each.device.ref,
                "rated_a": _number(each.rated),
                "before_a": _number(each.before),
                "ways_a": _number(each.ways),
                "demand_a": _number(each.demand.total),
                "verdict": each.verdict,
                "words": SHOWN[each.verdict],
            }
            for each in rcd_loads(net)
        ],
    }


def figures_text(found: CircuitFigures) -> str:
    """Return the figures of a circuit as text."""
    lines = [f"Counted with {found.design.value:.1f} A: {found.design.note}"]
    for check in found.checks:
        lines += [f"{check.title} {_answer(check)}"]
        lines += [
            f"    {line}" for w in (check.figure, check.limit) for line in _lines(w)
        ]
    for working in found.workings:
        lines += _lines(working)
    return "\n".join((*lines, "", CALCULATED))


def figures_json(found: CircuitFigures) -> dict[str, Any]:
    """Return the figures of a circuit as values, rounded to six places."""
    return {
        "calculated": CALCULATED,
        "device": found.device.ref if found.device else None,
        "design_current_a": _number(found.design.value),
        "checks": [
            {
                "title": check.title,
                "holds": check.holds,
                "needs": list(check.needs),
                "figure": _working_json(check.figure),
                "limit": _working_json(check.limit),
                "note": check.note,
            }
            for check in found.checks
        ],
        "figures": [_working_json(each) for each in found.workings],
    }


def _demand(title: str, found: Demand) -> Iterator[str]:
    yield (
        f"{title}: {found.total:.1f} A on paper, cautious "
        f"({found.low:.0f} to {found.high:.0f} A)"
    )
    for row in found.rows:
        yield f"  {row.amps:6.1f} A  {row.rule}: {row.words}"
        for load in row.loads:
            assumed = "assumed, " if load.assumed else ""
            yield f"            {load.title}: {load.amps:.1f} A, {assumed}{load.basis}"
    for load in found.left_out:
        yield f"  not in the sum: {load.title}, {load.basis}"


def _demand_json(found: Demand) -> dict[str, Any]:
    return {
        "total_a": _number(found.total),
        "low_a": _number(found.low),
        "high_a": _number(found.high),
        "rows": [
            {
                "rule": row.rule,
                "words": row.words,
                "source": row.source,
                "amps": _number(row.amps),
                "loads": [
                    {
                        "circuit": load.circuit,
                        "title": load.title,
                        "amps": _number(load.amps),
                        "basis": load.basis,
                        "assumed": load.assumed,
                    }
                    for load in row.loads
                ],
            }
            for row in found.rows
        ],
        "left_out": [load.title for load in found.left_out],
    }


def _against_json(each: Against) -> dict[str, Any]:
    return {
        "title": each.title,
        "rated_a": _number(each.rated),
        "demand_a": _number(each.amps),
        "verdict": each.verdict,
        "sentence": each.sentence,
    }


def _answer(check: Check) -> str:
    if check.holds is None:
        return f"Cannot tell: needs {', '.join(check.needs)}."
    return "Yes." if check.holds else "No."


def _lines(working: Working) -> Iterator[str]:
    yield f"{working.title}: {working.shown}"
    for each in working.inputs:
        where = ORIGINS[each.origin] + (f", {each.note}" if each.note else "")
        yield f"    {each.name} = {each.value} {each.unit} ({where})"


def _working_json(working: Working) -> dict[str, Any]:
    return {
        "title": working.title,
        "value": _number(working.value),
        "unit": working.unit,
        "shown": working.shown,
        "formula": working.formula,
        "source": working.source,
        "needs": list(working.needs),
        "inputs": [
            {
                "name": each.name,
                "value": _number(each.value),
                "unit": each.unit,
                "origin": each.origin,
                "note": each.note,
            }
            for each in working.inputs
        ],
    }


def _number(value: Decimal | None) -> float | None:
    return None if value is None else round(float(value), 6)
