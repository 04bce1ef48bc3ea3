"""Generation shares an RCD with other circuits.

Looks at:
    Circuits that bring in solar or battery power, and the RCDs before them.
Why it matters:
    A trip takes the generation off with the rest; and what feeds back can keep the
    shared circuits live after the RCD has opened: for a moment where it needs the
    network, and for as long as it runs where it does not.
What to do:
    Ask whoever looks after the solar panels or the battery; it is normally given a way
    clear of shared RCDs.
Source:
    BS 7671:2018+A2:2022, 551.7.1 (from memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.feedback import may_go_on
from app.domain.network import feeders_of
from app.domain.record import Circuit, Source
from app.domain.remarks._kind import Found, Outcome, RemarkKind, lacks
from app.domain.remarks._sight import Sight, refs_of

KIND = RemarkKind(code="generation-on-shared-rcd", rank="electrician", group="rcd")


def look(sight: Sight) -> Iterator[Outcome]:
    """Yield each RCD that generation shares with other circuits."""
    for circuit in sight.record.circuits:
        sources = _joining(sight, circuit)
        if not sources and circuit.use not in ("generation", "battery"):
            continue
        if not feeders_of(sight.net, circuit.ref):
            yield lacks(circuit.ref, "the way it starts from")
        for step in sight.rcds(circuit.ref):
            others = [c for c in sight.circuits_below(step.ref) if c != circuit]
            if others and step.sort == "device":
                yield Found(
                    (circuit.ref, step.ref, *refs_of(sight.ways(circuit))),
                    f"{sight.name(circuit.ref)} shares {sight.name(step.ref)} with "
                    f"{sight.names(refs_of(others))}.{_goes_on(sight, sources)}",
                )
                break


def _joining(sight: Sight, circuit: Circuit) -> tuple[Source, ...]:
    """Return the sources that join a circuit, or one of its ways."""
    there = {circuit.ref, *circuit.ways}
    return tuple(s for s in sight.sources() if s.joins in there)


def _goes_on(sight: Sight, sources: tuple[Source, ...]) -> str:
    """Return what keeps the others live for longer than a moment, as a sentence."""
    going_on = [source for source in sources if may_go_on(source)]
    if not going_on:
        return ""
    return (
        f" {sight.names(refs_of(going_on))} may run without the network: with "
        "that RCD open, what shares it may stay live."
    )
