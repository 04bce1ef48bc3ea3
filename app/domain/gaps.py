"""Gaps of the record: where it stops short, with the way to go on."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from app.domain.fault import Check, Fault, said
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS
from app.domain.network import Network, feeders_of
from app.domain.record import Board, Device, IntakeItem, Item, Record
from app.domain.record.choices import SOURCE_KINDS
from app.domain.unknowns import BELONGS_TO, lacks_second_feed


def _tied_to_nothing(net: Network) -> Iterator[Fault]:
    for point in net.record.points:
        if not feeders_of(net, point.ref):
            yield _gap(
                "tied_to_nothing",
                point,
                f"{said(point)}: what feeds it is not recorded.",
                "Treat it as live. Find out which way it goes off with, "
                "then tie it to that circuit.",
            )


def _neutral_without_line(net: Network) -> Iterator[Fault]:
    for point in net.record.points:
        roles = {tie.role for tie in net.record.ties_of(point.ref)}
        if "neutral" in roles and "feeds" not in roles:
            yield _gap(
                "neutral_without_line",
                point,
                f"{said(point)} has a neutral in the record but no line.",
                "Add the tie that says which circuit feeds it.",
            )


def _tied_twice(net: Network) -> Iterator[Fault]:
    count = Counter((t.point, t.tied_to, t.role) for t in net.record.ties)
    for (ref, tied_to, _), times in count.items():
        point = net.record.by_ref.get(ref)
        if times > 1 and point:
            yield _gap(
                "tied_twice",
                point,
                f"{said(point)} is tied to {tied_to} more than once in the same role.",
                "Keep the tie that is best known, and delete the others.",
            )


def _circuit_without_way(net: Network) -> Iterator[Fault]:
    for circuit in net.record.circuits:
        if not circuit.ways:
            yield _gap(
                "circuit_without_way",
                circuit,
                f"{said(circuit)} starts from no way.",
                "Open the circuit and choose the way that it is wired to.",
            )


def _way_without_circuit(net: Network) -> Iterator[Fault]:
    named = _named_as_feed(net.record)
    for device in net.record.devices:
        if device.in_use == "spare" or not DEVICE_KINDS[device.kind].outgoing:
            continue
        if device.ref not in net.fed and device.ref not in named:
            yield _gap(
                "way_without_circuit",
                device,
                f"{said(device)} feeds nothing in the record.",
                "Do not take it for spare. Add its circuit once you know it.",
            )


def _named_as_feed(record: Record) -> set[str | None]:
    """What a board without devices hangs on, or a source feeds back through."""
    return {
        *(board.fed_from for board in record.boards),
        *(source.joins for source in record.sources),
    }


def _source_feeds_nothing(net: Network) -> Iterator[Fault]:
    for source in net.record.sources:
        if source.present == "yes" and not source.joins and source.ref not in net.fed:
            yield _gap(
                "source_feeds_nothing",
                source,
                f"{said(source)} is there, but feeds nothing in the record.",
                "Say what it feeds, or where it joins the installation.",
            )


def _beginning_not_recorded(net: Network) -> Iterator[Fault]:
    items: tuple[Board | IntakeItem, ...] = (*net.record.boards, *net.record.intake)
    for item in items:
        if item.fed_from is None and _needs_beginning(net, item):
            yield _gap(
                "beginning_not_recorded",
                item,
                f"{said(item)}: what it is fed from is not recorded.",
                "Open it and choose what it is fed from; leave it open if not known.",
            )


def _needs_beginning(net: Network, item: Board | IntakeItem) -> bool:
    if isinstance(item, IntakeItem):
        return INTAKE_KINDS[item.kind].carries_supply or item.ref in net.fed
    devices = net.record.devices_of(item.ref)
    return not devices or any(device.fed_from is None for device in devices)


def _second_feed_not_recorded(net: Network) -> Iterator[Fault]:
    items: tuple[Device | IntakeItem, ...] = (*net.record.intake, *net.record.devices)
    for item in items:
        if lacks_second_feed(item):
            yield _gap(
                "second_feed_not_recorded",
                item,
                f"{said(item)}: its second feed is not recorded.",
                "Treat what is behind it as fed by another supply too. Add its second "
                "feed once you know it.",
            )


def _equipment_of_absent_source(net: Network) -> Iterator[Fault]:
    for point in net.record.points:
        kinds = BELONGS_TO.get(point.kind, ())
        sources = [s for s in net.record.sources if s.kind in kinds]
        no = [s.kind for s in sources if s.present == "no"]
        if no and not any(s.present == "yes" for s in sources):
            names = " and ".join(
                SOURCE_KINDS[kind].lower() for kind in dict.fromkeys(no)
            )
            yield _gap(
                "equipment_of_absent_source",
                point,
                f"{said(point)} is there, yet this is answered with no: {names}.",
                "Say what can feed the home through it, or choose another kind.",
            )


def _absent_source_joins(net: Network) -> Iterator[Fault]:
    for source in net.record.sources:
        if source.present == "no" and source.joins:
            yield _gap(
                "absent_source_joins",
                source,
                f"{said(source)} is said not to be there, yet can feed back through "
                f"{source.joins}.",
                "Say that there is one, or clear where it can feed back.",
            )


def _gap(code: str, item: Item, sentence: str, remedy: str) -> Fault:
    return Fault(
        code=code, wrong=False, subjects=(item.ref,), sentence=sentence, remedy=remedy
    )


GAPS: Mapping[str, Check] = {
    "tied_to_nothing": _tied_to_nothing,
    "neutral_without_line": _neutral_without_line,
    "tied_twice": _tied_twice,
    "circuit_without_way": _circuit_without_way,
    "way_without_circuit": _way_without_circuit,
    "source_feeds_nothing": _source_feeds_nothing,
    "beginning_not_recorded": _beginning_not_recorded,
    "second_feed_not_recorded": _second_feed_not_recorded,
    "equipment_of_absent_source": _equipment_of_absent_source,
    "absent_source_joins": _absent_source_joins,
}
