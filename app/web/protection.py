"""What feeds a point and what guards it, in words, for the top of its page."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from app.domain.answers import Overcurrent, PointAnswer, Rcd
from app.domain.chain import Step
from app.domain.record.choices import POLES
from app.web.words import quantity

COVER = {
    "yes": "Yes, on every feed in the record",
    "no": "No: the record has none before it",
    "some": "On some of its feeds only",
    "unknown": None,
    "not_mains": "Not a mains point",
}


def sentence(answer: PointAnswer) -> str:
    """Return what feeds a point, in one or two sentences."""
    if not answer.circuits and not any(c.begins_at_source for c in answer.chains):
        return "What feeds it is not recorded. Treat it as live."
    circuits = " and ".join(f"{c.title} ({c.ref})" for c in answer.circuits)
    if not answer.circuits:
        sources = " and ".join(c.steps[0].title for c in answer.chains)
        return f"By the record it is fed by {sources}, without a circuit of this home."
    ways = " and ".join(_ways(answer))
    start = f"By the record it is on {circuits}"
    more = " It takes all of them to be off." if len(answer.chains) > 1 else ""
    return f"{start}, from {ways}.{more}" if ways else f"{start}.{more}"


def cautions(answer: PointAnswer) -> tuple[str, ...]:
    """Return what a hurried person must not miss about a point."""
    neutral = [t.tied_to.title for t in answer.ties if t.role == "neutral"]
    found = []
    if neutral:
        found.append(
            f"Its neutral belongs to {' and '.join(neutral)}. The line alone being off "
            "is not enough: both must be off, by switches that break line and neutral."
        )
    if answer.also_present:
        names = " and ".join(n.title for n in answer.also_present)
        found.append(f"Conductors of {names} are in its box too, whatever else is off.")
    return tuple(found)


def protection_rows(answer: PointAnswer) -> tuple[tuple[str, str | None], ...]:
    """Return what guards a point and what can switch it, label and words."""
    return (
        ("Overload and short circuit", _join(map(_overcurrent, answer.overcurrent))),
        ("RCDs before it", _join(map(_rcd, answer.rcds)) or _no_rcd(answer)),
        ("RCD of 30 mA or less", COVER[answer.within_30_ma]),
        ("RCD in the point itself", _own_rcd(answer)),
        ("What can switch it", _join(_switch(step) for step in answer.opens)),
        ("Other conductors in its box", _join(n.title for n in answer.also_present)
         or "None recorded"),
    )  # fmt: skip


def _ways(answer: PointAnswer) -> list[str]:
    """Name what each circuit starts from: the step just before it in its chain."""
    circuits = {circuit.ref for circuit in answer.circuits}
    found = []
    for chain in answer.chains:
        for before, step in pairwise(chain.steps):
            if step.ref in circuits:
                found.append(f"{before.title} ({before.ref})")
    return list(dict.fromkeys(found))


def _join(parts: Iterable[str]) -> str | None:
    return "; ".join(parts) or None


def _overcurrent(device: Overcurrent) -> str:
    curve = f" {device.curve}" if device.curve and device.curve != "unknown" else ""
    return f"{device.title},{curve} {quantity(device.rated_current_a, 'A')}"


def _rcd(rcd: Rcd) -> str:
    kind = (
        "type not known"
        if rcd.rcd_type in (None, "unknown")
        else (f"type {rcd.rcd_type}")
    )
    delayed = ", time-delayed" if rcd.time_delayed == "yes" else ""
    return f"{rcd.title}, {quantity(rcd.residual_current_ma, 'mA')}, {kind}{delayed}"


def _no_rcd(answer: PointAnswer) -> str | None:
    return "None in the record" if answer.within_30_ma == "no" else None


def _own_rcd(answer: PointAnswer) -> str:
    if answer.own_rcd_ma is None:
        return "None recorded"
    return (
        f"{answer.own_rcd_ma} mA: it guards what is behind it, not its own supply side"
    )


def _switch(step: Step) -> str:
    poles = POLES.get(step.opens, step.opens).lower()
    usual = ", as is usual for its kind" if step.opens_basis == "usual" else ""
    return f"{step.title}: {poles}{usual}"
