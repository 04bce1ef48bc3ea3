"""Record faults: where the record contradicts itself, or stops short.

A fault is a value, never an exception: it names what it is about, says what is odd in
one sentence, and how to put it right.  *Wrong* ones cannot be true as written, and are
found here; `gaps` finds the others.  None says anything about the installation itself.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from datetime import date

from app.domain.circles import circles
from app.domain.fault import Check, Fault, links_of, links_with_specs, said
from app.domain.gaps import GAPS
from app.domain.isolation.rounds import in_the_round, seen_otherwise
from app.domain.kinds import DEVICE_KINDS
from app.domain.network import Network, circuits_of, downstream, feeders_of, network
from app.domain.phases import TWO_GUARD_ONE, each_its_own, may_be_phased, phases
from app.domain.record import Board, Circuit, Device, IntakeItem, Item, Point, Record
from app.domain.to_come import days_as_faults

__all__ = ["CHECKS", "Fault", "circles", "faults", "links_of"]


def faults(record: Record, today: date | None = None) -> tuple[Fault, ...]:
    """Return every fault of a record, the wrong ones first.

    Args:
        record: The record.
        today: The day, by which others are still to come; None leaves them.
    """
    net = network(record)
    found = [fault for check in CHECKS.values() for fault in check(net)]
    found += days_as_faults(record, today) if today else ()
    return tuple(sorted(found, key=lambda fault: not fault.wrong))


def _leads_nowhere(net: Network) -> Iterator[Fault]:
    for item in net.record.items():
        for spec, ref in links_with_specs(item):
            target = net.record.by_ref.get(ref)
            if target is not None and target.sort in spec.sorts:
                continue
            why = "is not in the record" if target is None else "cannot be that"
            yield Fault(
                code="leads_nowhere",
                wrong=True,
                subjects=(item.ref,),
                sentence=f"{said(item)} names {ref} as “{spec.label.lower()}”, "
                f"which {why}.",
                remedy=f"Open {item.ref} and choose again.",
            )


def _used_twice(net: Network) -> Iterator[Fault]:
    count = Counter(item.ref for item in net.record.items())
    for ref, times in count.items():
        if times > 1:
            yield Fault(
                code="used_twice",
                wrong=True,
                subjects=(ref,),
                sentence=f"{times} things have the reference {ref}.",
                remedy="Give each a reference of its own.",
            )


def _feeds_itself(net: Network) -> Iterator[Fault]:
    for group in circles(net):
        names = ", ".join((*group, group[0]))
        yield Fault(
            code="feeds_itself",
            wrong=True,
            subjects=group,
            sentence=f"These feed each other in a circle: {names}.",
            remedy="Open the one whose “fed from” is wrong and choose again.",
        )


def _two_mains_paths(net: Network) -> Iterator[Fault]:
    mains = {s.ref for s in net.record.sources if s.kind == "network"}
    live = mains.union(*(downstream(net, ref) for ref in mains))
    for ref in net.feeders:
        feeders = [feeder for feeder in feeders_of(net, ref) if feeder in live]
        item = net.record.by_ref[ref]
        if len(feeders) > 1 and not _meant(net, item, feeders):
            yield _fed_twice(net.record, item, feeders)


def _meant(net: Network, item: Item, feeders: list[str]) -> bool:
    """Return whether several feeds of one thing are as they should be.

    A changeover has two; a circuit has one way for each phase, unless it is a ring; a
    light behind both of a pair of two-way switches is still on one circuit.
    """
    if isinstance(item, Device | IntakeItem):
        return item.kind == "changeover"
    if isinstance(item, Point):
        return len(set(circuits_of(net, item.ref)).union(_no_circuit(net, feeders))) < 2
    circuit = net.record.find(Circuit, item.ref)
    return may_be_phased(circuit) and each_its_own(net.record, feeders)


def _no_circuit(net: Network, feeders: list[str]) -> list[str]:
    return [ref for ref in feeders if not circuits_of(net, ref)]


def _fed_twice(record: Record, item: Item, feeders: list[str]) -> Fault:
    both = " and ".join(feeders)
    wrong, sentence = (
        True,
        f"{said(item)} is fed from the network by two paths: {both}.",
    )
    remedy = "Find out which is right. If both are, an electrician should see it."
    if isinstance(item, Point):
        wrong, sentence = (
            False,
            f"{said(item)} is fed by {both}: it takes both to be off.",
        )
        remedy = "If it has two supplies, leave it so. If not, delete the wrong tie."
    elif isinstance(item, Circuit):
        open_phases = may_be_phased(item) and _may_be_three_phase(record, feeders)
        wrong = not open_phases
        remedy = f"Put the record right if one is a slip. If not, {TWO_GUARD_ONE}"
        if not wrong:
            remedy = f"If it is three-phase, say on which phase each way is. {remedy}"
    return Fault(
        code="two_mains_paths",
        wrong=wrong,
        subjects=(item.ref, *feeders),
        sentence=sentence,
        remedy=remedy,
    )


def _may_be_three_phase(record: Record, ways: list[str]) -> bool:
    return record.home.phases != "single" and "unknown" in phases(record, ways)


def _absent_source_feeds(net: Network) -> Iterator[Fault]:
    for source in net.record.sources:
        if source.present == "no":
            yield from _feeds(
                net,
                source,
                code="absent_source_feeds",
                what="is said not to be there",
                remedy="Say that there is one, or choose another feed for these.",
            )


def _blank_feeds(net: Network) -> Iterator[Fault]:
    for device in net.record.devices:
        if device.kind == "blank":
            yield from _feeds(
                net,
                device,
                code="blank_feeds",
                what="is a blank",
                remedy="Say what stands there, or choose another feed for these.",
            )


def _spare_feeds(net: Network) -> Iterator[Fault]:
    for device in net.record.devices:
        if device.in_use == "spare":
            yield from _feeds(
                net,
                device,
                code="spare_feeds",
                what="is said to be spare",
                remedy="Say that it is in use, or choose another feed for these.",
            )


def _feeds(
    net: Network, item: Item, *, code: str, what: str, remedy: str
) -> Iterator[Fault]:
    """Yield a fault if a thing that cannot feed anything does."""
    fed = tuple(dict.fromkeys(feed.fed for feed in net.fed.get(item.ref, ())))
    if fed:
        yield Fault(
            code=code,
            wrong=True,
            subjects=(item.ref, *fed),
            sentence=f"{said(item)} {what}, yet feeds {', '.join(fed)}.",
            remedy=remedy,
        )


def _numbered_twice(net: Network) -> Iterator[Fault]:
    """Yield the ways of a board that have one number, unless on a phase each."""
    for board in net.record.boards:
        groups: dict[str, list[Device]] = {}
        for device in net.record.devices_of(board.ref):
            if device.way and DEVICE_KINDS[device.kind].outgoing:
                key = " ".join(device.way.casefold().split())
                groups.setdefault(key, []).append(device)
        for ways in groups.values():
            refs = [way.ref for way in ways]
            # What hangs on a way, such as its time switch, may have its number.
            refs = [way.ref for way in ways if way.fed_from not in refs]
            if len(refs) > 1 and not each_its_own(net.record, refs):
                yield _one_number(net.record, board, ways[0].way, refs)


def _one_number(record: Record, board: Board, way: str, refs: list[str]) -> Fault:
    three = _may_be_three_phase(record, refs)
    phase = " In a three-phase board, say on which phase each is." if three else ""
    return Fault(
        code="numbered_twice",
        wrong=not three,
        subjects=tuple(refs),
        sentence=f"{said(board)} has {len(refs)} ways with the number {way}: "
        f"{' and '.join(refs)}.",
        remedy="Look at the board, and number each so that they can be told apart."
        f"{phase}",
    )


def _seen_otherwise(net: Network) -> Iterator[Fault]:
    """Yield each point that did in a round what it could not have done by its ties."""
    first = {s.point.ref: s for s in reversed(seen_otherwise(net))}
    for seen in reversed(first.values()):
        did = "stayed live" if seen.seen == "live" else "went off"
        yield Fault(
            code="seen_otherwise",
            wrong=True,
            subjects=(seen.point.ref, seen.round.ref),
            sentence=f"{said(seen.point)} {did} {in_the_round(net.record, seen)}; by "
            "its ties it could not.",
            remedy="Do not work on it. If the mark was a slip, put the round right; "
            "else change the tie, or find out what else feeds it.",
        )


CHECKS: Mapping[str, Check] = {
    "leads_nowhere": _leads_nowhere,
    "used_twice": _used_twice,
    "feeds_itself": _feeds_itself,
    "two_mains_paths": _two_mains_paths,
    "absent_source_feeds": _absent_source_feeds,
    "blank_feeds": _blank_feeds,
    "spare_feeds": _spare_feeds,
    "numbered_twice": _numbered_twice,
    "seen_otherwise": _seen_otherwise,
    **GAPS,
}
