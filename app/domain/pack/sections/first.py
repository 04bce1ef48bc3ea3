"""What the reader needs to know before touching anything."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.failed import doubts, failed_rcds
from app.domain.faults import faults
from app.domain.isolation import house_off
from app.domain.network import Network
from app.domain.odd import odd_ones_out
from app.domain.pack.blocks import Block, Head, Lines, Section, Text
from app.domain.pack.words import item_name, point_name
from app.domain.record import Record, Source, Tie
from app.domain.record.choices import CARE, GRADES, LOOKED_AT
from app.domain.remarks import Remark

FIRST_RANKS = ("call", "electrician")
WEAK = ("0", "1", "2")


def section(net: Network, remarks: tuple[Remark, ...]) -> Section:
    """Return the section: unknowns first."""
    return Section(
        code="first",
        title="Before you touch anything",
        blocks=tuple(_blocks(net, remarks)),
    )


def _blocks(net: Network, remarks: tuple[Remark, ...]) -> Iterator[Block]:
    record = net.record
    yield Text(
        text="Nothing in this record was tested by the people who keep it. Prove it at "
        "the point of work.",
        caution=True,
    )
    yield Head(text="Not known")
    yield Lines(lines=tuple(_unknown(net)), otherwise="Nothing is marked as open.")
    yield Head(text="Missed if it goes off, and left on")
    yield Lines(lines=tuple(_care(record)), otherwise="Nothing is marked.")
    yield Head(text="Points on more than one circuit, and neutrals from elsewhere")
    yield Lines(lines=tuple(_shared(record)), otherwise="None is recorded.")
    yield Head(text="Other sources")
    yield Lines(lines=tuple(_sources(record)), otherwise="None is recorded.")
    yield Head(text="Leave it and call; ask an electrician")
    yield Lines(lines=tuple(_remarks(remarks)), otherwise="No remark of these ranks.")
    yield Head(text="Doubtful: what feeds these is by label, by hearsay or aged")
    yield Lines(lines=tuple(_doubtful(net)), otherwise="No tie is marked as doubtful.")
    yield Head(text="Not where you would look for it")
    odd = (f"{point_name(record, o.point)}. {o.sentence}" for o in odd_ones_out(net))
    yield Lines(lines=tuple(odd), otherwise="No point stands out.")


def _unknown(net: Network) -> Iterator[str]:
    yield from house_off(net).unknown
    yield from doubts(net, failed_rcds(net))
    for room in net.record.rooms:
        if room.looked_at != "all":
            yield f"{room.title} ({room.ref}): looked at: {LOOKED_AT[room.looked_at]}."
    yield from (fault.sentence for fault in faults(net.record))


def _doubtful(net: Network) -> Iterator[str]:
    for tie in net.record.ties:
        since = net.aged.get(tie.ref)
        if tie.role == "present" or (tie.grade not in WEAK and since is None):
            continue
        work = f"; work since: {since.title}" if since else ""
        yield f"{_tied(net.record, tie)}: {GRADES[tie.grade].lower()}{work}."


def _tied(record: Record, tie: Tie) -> str:
    what = "neutral of " if tie.role == "neutral" else ""
    point = point_name(record, tie.point)
    return f"{what}{point} on {item_name(record, tie.tied_to)}"


def _shared(record: Record) -> Iterator[str]:
    for point in record.points:
        ties = [t for t in record.ties_of(point.ref) if t.tied_to in record.by_ref]
        circuits = {t.tied_to for t in ties}
        if len(circuits) < 2 and all(t.role == "feeds" for t in ties):
            continue
        said = "; ".join(
            f"{item_name(record, t.tied_to)} ({_ROLES[t.role]})" for t in ties
        )
        yield f"{point_name(record, point.ref)}: {said}."


_ROLES = {"feeds": "line", "neutral": "neutral", "present": "in the box too"}


def _sources(record: Record) -> Iterator[str]:
    for source in record.sources:
        if source.kind != "network" and source.present != "no":
            yield _source(record, source)


def _source(record: Record, source: Source) -> str:
    there = "there" if source.present == "yes" else "not known whether there is one"
    joins = f", joins at {item_name(record, source.joins)}" if source.joins else ""
    alone = {
        "yes": ", runs without the network",
        "no": ", stops with the network",
        "unknown": ", not known whether it runs without the network",
    }[source.runs_without_network]
    return f"{source.title} ({source.ref}): {there}{joins}{alone}."


def _remarks(remarks: tuple[Remark, ...]) -> Iterator[str]:
    for remark in remarks:
        if remark.outcome == "remark" and remark.rank in FIRST_RANKS:
            aside = " Set aside by the people here." if remark.aside == "set" else ""
            yield f"{remark.title}. {remark.sentence}{aside}"


def _care(record: Record) -> Iterator[str]:
    for point in record.points:
        if point.care:
            care = ", ".join(CARE[code].lower() for code in point.care)
            yield f"{point_name(record, point.ref)}: {care}."
    for device in record.devices:
        if device.leave_on:
            name = item_name(record, device.ref)
            yield f"{name}: leave on, because {device.leave_on}."
