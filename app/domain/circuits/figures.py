"""All the arithmetic of one circuit: what was worked out, beside what limits it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Literal

from app.domain.answers import Named
from app.domain.circuits._working import CannotTell, Figure, Outcome, Working, worked
from app.domain.circuits.cable import cable_capacity, drop_from_origin, own_drop
from app.domain.circuits.capacity import fuse_limit
from app.domain.circuits.current import (
    BY_RATING_FORMULA,
    at_least,
    design_current,
    recorded_design,
)
from app.domain.circuits.earth import (
    conductor_needed,
    device_limit,
    loop_impedance,
    outside_loop,
    own_r1r2,
    rcd_earth_limit,
)
from app.domain.circuits.fault import UNSTABLE_OHM
from app.domain.circuits.loop import cold_limit, end_to_end
from app.domain.circuits.part import (
    ASK,
    Part,
    held_against,
    judged,
    open_part,
    plain_part,
)
from app.domain.circuits.ring import RingTerm, ring_terms
from app.domain.circuits.subject import Subject
from app.domain.circuits.voltage import drop_limit
from app.domain.network import Network
from app.domain.record import Circuit
from app.domain.record._field import Model, field


class CircuitAnswer(Model):
    """A circuit's figures, each with its working."""

    asks: Literal["circuit"] = "circuit"
    home: str = field("Home", ...)
    circuit: Named = field("Circuit", ...)
    parts: tuple[Part, ...] = field("Questions", ())

    def part(self, code: str) -> Part | None:
        """Return one question by its code."""
        return next((part for part in self.parts if part.code == code), None)


def circuit_figures(net: Network, circuit: Circuit) -> CircuitAnswer:
    """Return every figure that can be worked out for a circuit, and what cannot."""
    return CircuitAnswer(
        home=net.record.home.ref,
        circuit=Named(ref=circuit.ref, title=circuit.title),
        parts=tuple(_parts(Subject(net, circuit))),
    )


def _parts(subject: Subject) -> Iterator[Part]:
    capacity = cable_capacity(subject)
    yield _load(subject)
    yield (_ring if subject.is_ring else _overload)(subject, capacity)
    yield from _voltage(subject)
    yield from _conductors(subject)
    yield from _fault(subject)


def _load(subject: Subject) -> Part:
    title, found = "Load against the device", design_current(subject)
    if isinstance(found, CannotTell):
        return open_part("load", title, found)
    guard = subject.guard
    limits = tuple(guard.limits()) if guard else ()
    short = [words for words, rated in limits if rated.value < found.value]
    if found.formula == BY_RATING_FORMULA:
        return _by_rating(subject, title, found, limits)
    missing = subject.cannot(title, "rated_current_a")
    unrated = guard.unrated() if guard else ()
    if not short and (not limits or missing.needs or unrated):
        needs = (*missing.needs, *unrated)
        return open_part("load", title, missing.model_copy(update={"needs": needs}))
    words = (
        f"The load is within the rating of {_listed([words for words, _ in limits])}.",
        f"The load is more than the rating of {_listed(short)}.",
    )
    return judged("load", title, found, None, words, within=not short)


def _by_rating(
    subject: Subject, title: str, found: Working, limits: Sequence[tuple[str, Figure]]
) -> Part:
    """Return a load that is not recorded; a part of it that is may be too much."""
    known = recorded_design(subject)
    over = [words for words, each in limits if known and each.value < known.value]
    if known and over:
        says = f"The load is more than the rating of {_listed(over)}."
        least = at_least(known)
        return judged("load", title, least, None, ("", says), within=False)
    part = f"Of its load only {known.shown} is recorded" if known else ""
    says = f"{found.shown} is the rating of its device."
    short = [words for words, rated in limits if rated.value < found.value]
    less = f" Less may pass {_listed(short)}." if short else ""
    nothing = "No load is recorded"
    return plain_part("load", title, found, f"{part or nothing}: {says}{less}")


def _overload(subject: Subject, capacity: Outcome) -> Part:
    title, rated = "Device against the cable", _rated(subject)
    if isinstance(capacity, CannotTell):
        return open_part("overload", title, capacity)
    if isinstance(rated, CannotTell):
        return open_part("overload", title, rated)
    wire = subject.kind == "fuse_rewirable"
    most = fuse_limit(worked(capacity)) if wire else None
    bound = most or capacity
    words = (
        (
            f"The device, {_device(subject)}, is no larger than the cable allows, "
            f"{bound.shown}."
        ),
        (
            f"The device, {_device(subject)}, is larger than the cable allows, "
            f"{bound.shown}. {ASK}"
        ),
    )
    within = rated.value <= bound.value
    return judged("overload", title, capacity, most, words, within=within)


def _ring(subject: Subject, capacity: Outcome) -> Part:
    title, rated = "Rule for a ring final", _rated(subject)
    line = subject.figure("line_mm2")
    if isinstance(capacity, CannotTell):
        return open_part("ring", title, capacity)
    if isinstance(rated, CannotTell) or line is None:
        missing = subject.cannot(title, "rated_current_a", "line_mm2")
        return open_part("ring", title, missing)
    short = [_short(t) for t in ring_terms(rated, line, worked(capacity))]
    beyond = "; ".join(words for words in short if words)
    words = (
        (
            f"Device {_device(subject)}, conductors {line.shown}, "
            f"capacity {capacity.shown}: "
            "as the rule for rings wants it."
        ),
        f"Not as the rule for rings wants it: {beyond}. {ASK}",
    )
    return judged("ring", title, capacity, None, words, within=not beyond)


def _short(term: RingTerm) -> str:
    """Return what a ring falls short of; empty where it does not."""
    if term.holds:
        return ""
    least = f"{term.least.value} {term.has.unit}"
    wanted = f"{term.least.value} or {term.most.value} A" if term.most else least
    return f"{term.label.lower()} {term.has.shown}, wanted {wanted}"


def _voltage(subject: Subject) -> Iterator[Part]:
    limit = drop_limit(lighting=subject.circuit.use == "lighting")
    words = (
        f"Within {limit.shown} from the origin.",
        f"More than {limit.shown} from the origin. {ASK}",
    )
    where = "at its far side" if subject.is_ring else "at the far end"
    spread, at_end = (drop_from_origin(subject, spread=s) for s in (True, False))
    yield held_against("drop", f"Voltage drop, all {where}", at_end, limit, words)
    yield held_against(
        "drop-spread", "Voltage drop, load spread evenly", spread, limit, words
    )
    if subject.before:
        own = own_drop(subject)
        says = "" if isinstance(own, CannotTell) else f"{own.shown} of it is its own."
        yield plain_part("drop-own", "Voltage drop of this circuit alone", own, says)


def _conductors(subject: Subject) -> Iterator[Part]:
    found = own_r1r2(subject)
    says = "" if isinstance(found, CannotTell) else f"{found.shown}, cold, at 20 °C."
    yield plain_part("r1r2", "R1+R2 that a test should find", found, says)
    if subject.is_ring and not isinstance(found, CannotTell):
        yield from _ends(subject)


def _ends(subject: Subject) -> Iterator[Part]:
    loop, circuit = subject.figure("length_m"), subject.circuit
    sizes = (
        ("r1", circuit.line_mm2),
        ("rn", circuit.line_mm2),
        ("r2", circuit.cpc_mm2),
    )
    for name, mm2 in sizes:
        if loop is not None and mm2 is not None:
            end = end_to_end(name, mm2, loop)
            title = f"End to end, {name}"
            yield plain_part(f"ring-{name}", title, end, f"{end.shown}, cold.")


def _fault(subject: Subject) -> Iterator[Part]:
    found, limit = loop_impedance(subject), device_limit(subject)
    earth = rcd_earth_limit(subject)
    by_rcd = earth if subject.earthing == "tt" else None
    yield _loop(found, limit, by_rcd)
    yield _measured(limit, by_rcd)
    if earth is not None:
        yield _with_rcd(subject, earth, found)
    yield _size(subject, conductor_needed(subject, found, limit, by_rcd))


def _loop(found: Outcome, limit: Outcome, by_rcd: Outcome | None) -> Part:
    """Say whether Zs lets its device open; with an electrode and an RCD, whether that.

    BS 7671:2018+A2:2022, 411.5.3: in a TT system the RCD cuts off, where RA × IΔn is
    50 V at most; Zs, which holds RA and more, may stand for it (from memory).
    """
    most = limit if by_rcd is None else by_rcd
    opens = "its device may open too late" if by_rcd is None else "its RCD may not trip"
    held = "" if by_rcd is None else ", by its RCD"
    words = (
        f"At its far end it is within {_shown(most)}, warm{held}.",
        f"At its far end it is above {_shown(most)}: {opens}. {ASK}",
    )
    return held_against("zs", "Loop impedance, Zs", found, most, words)


def _measured(limit: Outcome, by_rcd: Outcome | None) -> Part:
    """Say what a measured Zs may reach: by its device, or with an electrode by its RCD.

    BS 7671:2018+A2:2022, 411.5.3: in a TT system the RCD cuts off, at 50 V.
    """
    title = "What a measured Zs may reach"
    if by_rcd is not None:
        shown = _shown(by_rcd)
        says = f"With an earth electrode a measured Zs is held to its RCD: {shown}."
        return plain_part("zs-measured", title, by_rcd, says)
    cold = limit if isinstance(limit, CannotTell) else cold_limit(worked(limit))
    says = f"A measured Zs should be no more than {_shown(cold)}, for it is cold."
    return plain_part("zs-measured", title, cold, says)


def _with_rcd(subject: Subject, limit: Outcome, found: Outcome) -> Part:
    """In a TT system Ze, mostly the electrode, is held against the RCD; else Zs."""
    title, ze = "Earth fault with the RCD", outside_loop(subject)
    if isinstance(limit, CannotTell):
        return open_part("rcd", title, limit)
    held: Outcome | Figure = ze if subject.earthing == "tt" else found
    if isinstance(held, CannotTell):
        says = f"The most that it may be is {limit.shown}. {held.sentence}"
        return open_part("rcd", title, held, limit).model_copy(update={"says": says})
    within = held.value <= limit.value
    unsteady = held.value > UNSTABLE_OHM
    more = " Above 200 Ω an electrode may not keep its figure." if unsteady else ""
    name = "Ze" if subject.earthing == "tt" else "Zs"
    words = (
        f"{name}, {held.shown}, is within {limit.shown}.{more}",
        f"{name}, {held.shown}, is above {limit.shown}. {ASK}",
    )
    part = judged("rcd", title, limit, None, words, within=within)
    if held.assumes and not part.assumes:
        update = {"says": f"{part.says} Part of that is assumed: {held.assumes[0]}"}
        return part.model_copy(update=update)
    return part


def _size(subject: Subject, found: Outcome) -> Part:
    title, cpc = "Protective conductor in a fault", subject.figure("cpc_mm2")
    if isinstance(found, CannotTell):
        return open_part("adiabatic", title, found)
    if cpc is None:
        return open_part("adiabatic", title, subject.cannot(title, "cpc_mm2"))
    words = (
        f"{found.shown} would do; the record says {cpc.shown}.",
        (
            f"The record says {cpc.shown}, less than {found.shown}. The data of the "
            "device's maker may show that it is enough."
        ),
    )
    return judged(
        "adiabatic", title, found, None, words, within=found.value <= cpc.value
    )


def _rated(subject: Subject) -> Figure | CannotTell:
    rated = subject.rated()
    if rated is None:
        return subject.cannot("Rating of the device", "rated_current_a")
    return rated


def _device(subject: Subject) -> str:
    return subject.guard.shown if subject.guard else ""


def _listed(words: list[str]) -> str:
    return ", and of ".join(words)


def _shown(outcome: Outcome) -> str:
    return "the limit" if isinstance(outcome, CannotTell) else outcome.shown
