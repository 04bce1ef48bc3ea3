"""Generation shares an RCD with other circuits.

Looks at:
    Circuits that bring in solar or battery power, and the RCDs before them.
Why it matters:
    A trip takes the generation off with the rest; and what feeds back can keep the
    shared circuits live for a moment after the RCD has opened.
What to do:
    Ask whoever looks after the solar panels or the battery; it is normally given a way
    clear of shared RCDs.
Source:
    BS 7671:2018+A2:2022, 551.7.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.network import feeders_of
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="generation-on-shared-rcd", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each RCD that generation shares with other circuits."""
    joins = {s.joins for s in sight.sources() if s.joins}
    for circuit in sight.record.circuits:
        generates = circuit.use in ("generation", "battery") or circuit.ref in joins
        if not generates:
            continue
        if not feeders_of(sight.net, circuit.ref):
            yield lacks(circuit.ref, "the way it starts from")
        for step in sight.rcds(circuit.ref):
            others = [c for c in sight.circuits_below(step.ref) if c != circuit]
            if others and step.sort == "device":
                yield Found(
                    (circuit.ref, step.ref, *refs_of(sight.ways(circuit))),
                    f"{sight.name(circuit.ref)} shares {sight.name(step.ref)} with "
                    f"{sight.names(refs_of(others))}.",
                )
                break
