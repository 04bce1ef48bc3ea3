"""The sources besides the network: which are open, and what each means for a plan."""

from __future__ import annotations

from app.domain.isolation.names import called, listed
from app.domain.isolation.shapes import OnTheDay, OtherSource
from app.domain.record import Record, Source
from app.domain.record.choices import SOURCE_KINDS
from app.domain.unknowns import leads_somewhere, unanswered_sources

_MEANS = {
    "solar": "The wires from the panels are live in any daylight, whatever is off.",
    "battery": "It keeps its own wires live, and may feed its backup outlets.",
    "generator": "It must be at rest and its inlet unplugged.",
    "vehicle": "Unplug it before anything is opened.",
    "neighbour": "Next door's switches feed it. It cannot be made dead from here.",
    "landlord": "The building's switches feed it. It cannot be made dead from here.",
    "other": "Find out where it is switched off.",
}


def open_kinds(record: Record, day: OnTheDay) -> tuple[str, ...]:
    """Return the kinds of source that neither the record nor the day answers."""
    others = (s.kind for s in record.sources if s.present == "unknown")
    kinds = dict.fromkeys((*unanswered_sources(record), *others))
    answered = {kind for kind, said in day.sources.items() if said in ("yes", "no")}
    return tuple(k for k in kinds if k not in answered and k != "network")


def said_yes_unrecorded(record: Record, day: OnTheDay) -> tuple[str, ...]:
    """Return kinds that someone found on the day and the record knows nothing of."""
    recorded = {s.kind for s in record.sources if s.present == "yes"}
    return tuple(
        k for k, said in day.sources.items() if said == "yes" and k not in recorded
    )


def unplaced(record: Record) -> tuple[Source, ...]:
    """Return the sources that are there without the record saying where they join."""
    there = (s for s in record.sources if s.present == "yes")
    return tuple(s for s in there if not leads_somewhere(record, s))


def may_stay(record: Record, day: OnTheDay) -> str:
    """Return that what should go off may stay live, and for which sources; or nothing.

    Of each nobody knows whether it is there, or where it joins.
    """
    names = [called(source) for source in unplaced(record)]
    kinds = (*said_yes_unrecorded(record, day), *open_kinds(record, day))
    names += [SOURCE_KINDS[kind].lower() for kind in kinds]
    if not names:
        return ""
    return f"What should go off may stay live while these are open: {listed(names)}."


def other_sources(record: Record, day: OnTheDay) -> tuple[OtherSource, ...]:
    """Return every source besides the network, and the kinds that nobody answered."""
    known = [s for s in record.sources if s.kind != "network" and s.present == "yes"]
    found = [_recorded(source) for source in known]
    found += [
        OtherSource(
            kind=kind,
            title=SOURCE_KINDS[kind],
            known="yes",
            sentence=f"Found on the day and not recorded. {_MEANS[kind]}",
        )
        for kind in said_yes_unrecorded(record, day)
    ]
    found += [
        OtherSource(
            kind=kind,
            title=SOURCE_KINDS[kind],
            sentence=f"Not answered. If there is one: {_MEANS[kind][0].lower()}"
            f"{_MEANS[kind][1:]}",
        )
        for kind in open_kinds(record, day)
    ]
    return tuple(found)


def _recorded(source: Source) -> OtherSource:
    goes_on = {
        "yes": " It can feed when the network is off.",
        "unknown": " Whether it can feed when the network is off is not known.",
        "no": "",
    }[source.runs_without_network]
    return OtherSource(
        kind=source.kind,
        title=called(source),
        known="yes",
        sentence=f"{_MEANS[source.kind]}{goes_on}",
    )
