"""What the record does not say, in sentences: about a chain, a room, the sources."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from app.domain.chain import Chain, Step, is_overcurrent, is_rcd, may_be_rcd
from app.domain.failed import doubt, doubts
from app.domain.network import (
    MOST_PATHS,
    Network,
    circuits_of,
    feeders_of,
    joined_at,
    upstream,
)
from app.domain.protection import ELSEWHERE
from app.domain.record import (
    Board,
    Device,
    IntakeItem,
    Item,
    Point,
    Record,
    Room,
    Source,
    Tie,
)
from app.domain.record.choices import SOURCE_KINDS

# Kinds that every home is asked about: an unanswered one may feed it unseen.
ASKED = ("solar", "battery", "generator", "vehicle", "neighbour", "landlord")
# The sources that a point of a kind belongs to: an inverter may serve either.
BELONGS_TO = {"inverter": ("solar", "battery"), "battery": ("battery",)}
# The network's supply, also where it comes by next door or by the building.
FROM_THE_STREET = frozenset({"network", "neighbour", "landlord"})
# What stands between a source and the mains: a tie to one says nothing of where the
# source joins.  Common practice, no source.
BEFORE_THE_MAINS = frozenset({"dc_isolator", *BELONGS_TO, "vehicle_charger"})
# Below this grade nobody has seen the point go off with its circuit, or been told so.
WEAK = ("0", "1")


def unknowns_of_chains(record: Record, line: Iterable[Chain]) -> tuple[str, ...]:
    """Return what is missing along the chains to a thing, nearest the source first."""
    line = tuple(line)
    found = [sentence for chain in line for sentence in _of_chain(record, chain)]
    if len(line) >= MOST_PATHS:
        found.append(f"There may be more than the {MOST_PATHS} paths shown.")
    return tuple(dict.fromkeys(found))


def unknowns_of_neutral(record: Record, neutral: Iterable[Chain]) -> tuple[str, ...]:
    """Return what is missing of a neutral that does not go with its line."""
    found = [sentence for chain in neutral for sentence in _of_neutral(record, chain)]
    return tuple(dict.fromkeys(found))


def unknowns_of_sources(record: Record) -> tuple[str, ...]:
    """Return what nobody has answered of the sources that may feed the home."""
    found = [sentence for s in record.sources for sentence in _of_source(record, s)]
    if open_kinds := unanswered_sources(record):
        names = ", ".join(SOURCE_KINDS[kind].lower() for kind in open_kinds)
        found.append(f"Not answered whether these can feed the home: {names}.")
    return tuple(found)


def unanswered_sources(record: Record) -> tuple[str, ...]:
    """Return the kinds of source that are not answered with yes or no."""
    answered = {s.kind for s in record.sources if s.present != "unknown"}
    asked = {s.kind for s in record.sources if s.present == "unknown"}
    return tuple(k for k in ASKED if k in asked or k not in answered)


def unknowns_of_room(
    net: Network, room: Room, points: Iterable[Point]
) -> tuple[str, ...]:
    """Return what is not known in a room, before anyone works in it."""
    looked = {
        "not_yet": "This room has not been looked at yet.",
        "part": "This room has been looked at in part.",
        "no_access": "Nobody could get into this room.",
    }
    found = [looked[room.looked_at]] if room.looked_at in looked else []
    points = tuple(points)
    found += [sentence for point in points for sentence in _of_point(net, point)]
    found += doubts(net, (ref for p in points for ref in upstream(net, p.ref)))
    return (*dict.fromkeys(found), *unknowns_of_sources(net.record))


def unknowns_of_fed(net: Network, points: Iterable[Point]) -> tuple[str, ...]:
    """Return one sentence on the points whose ties are weak, or nothing."""
    ties = (tie for point in points for tie in net.record.ties_of(point.ref))
    weak = dict.fromkeys(t.point for t in ties if t.role == "feeds" and _weak(t))
    if not weak:
        return ()
    names = ", ".join(weak)
    return (f"That these are fed from here is not known, or a label says it: {names}.",)


def _of_chain(record: Record, chain: Chain) -> Iterator[str]:
    first, last = chain.steps[0], chain.steps[-1]
    if chain.runs_in_circle:
        yield f"{first.title} ({first.ref}) feeds itself in the record, in a circle."
    elif not chain.begins_at_source:
        of = "it" if first is last else f"{first.title} ({first.ref})"
        yield f"What feeds {of} is not recorded."
    elif first.kind in ELSEWHERE:
        yield f"What protects {first.title} ({first.ref}) is not recorded."
    for step in chain.steps:
        yield from _of_tie(record, step)
        yield from _of_step(step)
        yield from _of_second_feed(record, step)
        if step is not last or step.sort != "point":
            yield from _of_guard(step)


def _of_tie(record: Record, step: Step) -> Iterator[str]:
    tie = record.find(Tie, step.tie)
    if tie and _weak(tie):
        yield _weak_tie(f"{step.title} ({step.ref})", tie)


def _weak(tie: Tie) -> bool:
    return tie.grade in WEAK


def _weak_tie(name: str, tie: Tie) -> str:
    what = f"What feeds {name}"
    if tie.role == "neutral":
        what = f"Where the neutral of {name} returns"
    return f"{what} is {'not known' if tie.grade == '0' else 'only what a label says'}."


def _of_step(step: Step) -> Iterator[str]:
    name = f"{step.title} ({step.ref})"
    if step.owner == "unknown" and step.sort in ("intake", "device", "source"):
        yield f"Whose {name} is, is not known."
    if step.when == "unknown":
        yield f"When {name} passes the supply on is not known."
    if step.kind == "unknown":
        yield f"What {name} is, is not known."


def _of_second_feed(record: Record, step: Step) -> Iterator[str]:
    item = record.by_ref[step.ref]
    if not isinstance(item, Device | IntakeItem) or item.kind != "changeover":
        return
    if record.by_ref.get(item.second_feed or "") is None:
        yield f"The second feed of {step.title} ({step.ref}) is not recorded."


def lacks_second_feed(item: Device | IntakeItem) -> bool:
    """Return whether a thing that chooses between two feeds names only one."""
    return item.kind == "changeover" and item.second_feed is None


def _of_guard(step: Step) -> Iterator[str]:
    name = f"{step.title} ({step.ref})"
    if is_overcurrent(step) and not (step.fuse_a or step.rated_current_a):
        yield f"The rating of {name} is not recorded."
    if is_rcd(step) and not step.residual_current_ma:
        yield f"The IΔn of {name} is not recorded."
    if is_rcd(step) and step.failed:
        yield doubt(step.title, step.ref, step.failed)
    if may_be_rcd(step) and step.sort == "point":
        yield f"Whether the RCD in {name} guards what is behind it is not recorded."
    elif may_be_rcd(step):
        yield f"Whether {name} is an RCD is not recorded."


def _of_neutral(record: Record, chain: Chain) -> Iterator[str]:
    if not chain.begins_at_source:
        last = chain.steps[-1]
        yield f"Where the neutral of {last.title} ({last.ref}) returns is not recorded."
    for step in chain.steps:
        yield from _of_tie(record, step)


def _of_source(record: Record, source: Source) -> Iterator[str]:
    """Say what is open of one source; those asked of every home are named together."""
    name = _name(source)
    if source.present == "unknown" and source.kind not in ASKED:
        yield f"Not answered whether {name} is there."
    open_without = source.runs_without_network == "unknown" and source.kind != "network"
    counts = source.present == "yes" or (source.present == "unknown" and source.joins)
    if counts and open_without:
        yield f"Not answered whether {name} can feed when the network is off."
    if source.present == "yes" and not leads_somewhere(record, source):
        yield f"Where {name} joins the installation is not recorded."


def leads_somewhere(record: Record, source: Source) -> bool:
    """Return whether the record says where a source joins the installation.

    A tie to its d.c. side does not: what the inverter there feeds back into is another
    thing.
    """
    if joined_at(record, source) or source.kind == "network":
        return True
    fed: tuple[IntakeItem | Board | Device, ...] = (
        *record.intake,
        *record.boards,
        *record.devices,
    )
    feeds = (f for i in fed for f in (i.fed_from, getattr(i, "second_feed", None)))
    return source.ref in feeds or _feeds_points_at_once(record, source)


def _feeds_points_at_once(record: Record, source: Source) -> bool:
    """Return whether points hang on a source, and none of them is of its d.c. side."""
    reached = [source.ref]
    for ref in reached:
        tied = dict.fromkeys(t.point for t in record.ties if t.tied_to == ref)
        reached += [ref for ref in tied if ref not in reached]
    points = [p for p in record.points if p.ref in reached]
    dc = any(p.kind in BEFORE_THE_MAINS or p.current == "dc" for p in points)
    return bool(points) and (source.kind in FROM_THE_STREET or not dc)


def _of_point(net: Network, point: Point) -> Iterator[str]:
    if not feeders_of(net, point.ref):
        yield f"{_name(point)}: what feeds it is not recorded."
    if point.kind == "unknown":
        yield f"What {_name(point)} is, is not known."
    for tie in net.record.ties_of(point.ref):
        if _weak(tie) and tie.role != "present":
            yield _weak_tie(_name(point), tie)
    for circuit in circuits_of(net, point.ref):
        if not feeders_of(net, circuit):
            name = _name(net.record.by_ref[circuit])
            yield f"Which way {name} starts from is not recorded."


def _name(item: Item) -> str:
    return f"{item.title} ({item.ref})"
