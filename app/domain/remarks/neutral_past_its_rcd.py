"""A line and its neutral do not pass the same RCD.

Looks at:
    Points with a neutral tie of their own: the RCDs before their line, and those before
    the circuit by which their neutral returns.
Why it matters:
    An RCD trips when what goes out by the line does not come back by the neutral. This
    one would trip as soon as the point is used. If it does not, a tie is wrong, or the
    RCD does not work.
What to do:
    Look again at both ties. If both are right, ask an electrician, and use it no more
    until then.
Source:
    How an RCD works: BS EN 61008 and 61009, the residual current is the sum of the
    currents of all its poles (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.chain import Chain, chains, is_rcd
from app.domain.record import Point
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacking
from app.domain.remarks._sight import Sight

KIND = RemarkKind(code="neutral-past-its-rcd", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each point whose line and neutral do not pass the same RCDs."""
    not_known = []
    for point in sight.record.points:
        ties = sight.record.ties_of(point.ref)
        if not any(tie.role == "neutral" for tie in ties):
            continue
        line = sight.chains(point.ref)
        neutral = chains(sight.net, point.ref, "neutral")
        out, back = _only_on(line, neutral), _only_on(neutral, line)
        past = (*(out if _whole(neutral) else ()), *(back if _whole(line) else ()))
        if past:
            yield _found(sight, point, past, out=past[0] in out)
        elif out or back:
            not_known.append(point.ref)
    if not_known:
        what = "from which way each circuit starts, of its line and of its neutral"
        yield lacking(tuple(not_known), what)


def _only_on(some: tuple[Chain, ...], others: tuple[Chain, ...]) -> tuple[str, ...]:
    """Return the RCDs that are on all of some chains and on none of the others."""
    every = [dict.fromkeys(s.ref for s in c.steps if is_rcd(s)) for c in some]
    elsewhere = {step.ref for chain in others for step in chain.steps}
    first = every[0] if every else {}
    return tuple(
        ref for ref in first if ref not in elsewhere and all(ref in e for e in every)
    )


def _whole(every: tuple[Chain, ...]) -> bool:
    return all(chain.begins_at_source for chain in every)


def _found(sight: Sight, point: Point, past: tuple[str, ...], *, out: bool) -> Found:
    line = sight.net.circuits_at.get(point.ref, ())
    neutral = sight.net.neutral_circuits_at.get(point.ref, ())
    one, other = ("line", "neutral") if out else ("neutral", "line")
    rcd = sight.name(past[0])
    return Found(
        tuple(dict.fromkeys((point.ref, *past, *line, *neutral))),
        f"The {one} of {sight.name(point.ref)} passes {rcd}, its {other} does not: "
        f"{rcd} would trip as soon as it is used. One of the two ties is wrong, or "
        "there is a fault.",
    )
