"""Answers as plain text for a terminal: aligned, whole, what is not known last."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import Decimal

from app.domain.answers import (
    Feeding,
    Named,
    PointAnswer,
    Rcd,
    RoomAnswer,
    TieAnswer,
    WayAnswer,
)
from app.domain.chain import Chain, Step, is_overcurrent, is_rcd
from app.domain.failed import named_failures
from app.domain.faults import Fault
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS, POINT_KINDS
from app.domain.protection import doubts_of_cover
from app.domain.record.choices import (
    CARE,
    GRADES,
    LOOKED_AT,
    NOT_KNOWN,
    OWNERS,
    POLES,
    TIE_ROLES,
    WHEN,
)

NONE = "none in the record"
COVER = {
    "yes": "yes, on every path in the record",
    "failed": "by the record yes",
    "no": "none in the record",
    "some": "on some paths only",
    "unknown": "not known",
    "not_mains": "does not apply: it is not on the mains",
}
CAUTION = (
    "This is what the record says, not what the wires do. Before any work, prove it at "
    "the point, on the day."
)
NOTHING_FOUND = (
    "None of the checks found anything. That does not make the record complete."
)
# What a label without words is written down as: nothing, or as the form takes it.
NO_WORDS = ("", "-")
NAMES = {"A": "rating", "mA": "IΔn"}
WAY_KINDS = {**INTAKE_KINDS, **DEVICE_KINDS}


def answer_text(answer: PointAnswer | WayAnswer | RoomAnswer) -> str:
    """Return an answer as text."""
    if isinstance(answer, PointAnswer):
        lines = _point(answer)
    else:
        lines = _way(answer) if isinstance(answer, WayAnswer) else _room(answer)
    return "\n".join((*lines, *_listed("Not known", answer.unknowns), "", CAUTION))


def faults_text(faults: Sequence[Fault]) -> str:
    """Return the faults of a record as text."""
    if not faults:
        return NOTHING_FOUND
    lines = [f"{len(faults)} open questions about the record"]
    for heading, wrong in (("Cannot be true as written", True), ("Stops short", False)):
        chosen = [fault for fault in faults if fault.wrong is wrong]
        said = [f"{fault.sentence}\n    {fault.remedy}" for fault in chosen]
        lines += _listed(heading, said) if said else []
    return "\n".join(lines)


def _point(answer: PointAnswer) -> Iterator[str]:
    yield _title(answer.point)
    yield from _pairs(
        {
            "Kind": POINT_KINDS[answer.kind].label,
            "Room": _name(answer.room),
            "Circuits": _names(answer.circuits),
            "Neutral returns by": _some(answer.neutral_circuits),
            "Can feed back": _some(answer.can_feed_back),
            "Switched by": _some(answer.controlled_by),
            "RCD of 30 mA or less": _cover(answer),
            "RCD in the point": _in_it(answer.own_rcd_ma, "mA"),
            "Also in the box": _some(answer.also_present),
            "In a box before it": _some(answer.present_before),
            "Odd one out": answer.odd or "",
        }
    )
    yield from _chains(answer.chains, "From the source to the point")
    yield from _chains(answer.neutral_chains, "Its neutral")
    yield from _listed("The owner changes", _changes(answer))
    yield from _listed("Ties", (_tie(tie) for tie in answer.ties))


def _way(answer: WayAnswer) -> Iterator[str]:
    yield _title(answer.way)
    yield from _pairs(
        {
            "Kind": WAY_KINDS[answer.kind].label,
            "Board": _name(answer.board) if answer.board else "",
            "Label as found": _label(answer.label_found),
            "Circuits": _names(answer.circuits),
            "Boards": _some(answer.boards),
            "Can feed back": _some(answer.can_feed_back),
            "Rooms": _names(answer.rooms),
        }
    )
    yield from _listed("Points it feeds", map(_feeding, answer.points))
    yield from _listed("Missed if it goes off", map(_feeding, answer.care))
    if answer.neutral_only:
        neutral = map(_title, answer.neutral_only)
        yield from _listed("Only their neutral is here", neutral)
    if answer.present_at:
        yield from _listed("Also in the boxes of", map(_title, answer.present_at))
    yield from _chains(answer.chains, "From the source to the way")


def _room(answer: RoomAnswer) -> Iterator[str]:
    yield _title(answer.room)
    back = _some(answer.can_feed_back)
    looked = LOOKED_AT[answer.looked_at]
    yield from _pairs({"Looked at": looked, "Can feed back": back})
    yield from _listed("Ways that serve it", map(_title, answer.ways))
    yield from _listed("Circuits in it", map(_title, answer.circuits))
    if answer.sources:
        sources = map(_title, answer.sources)
        yield from _listed("Feed it without a circuit of this home", sources)
    yield from _listed("Points in it", map(_title, answer.points))
    if answer.odd:
        yield from _listed("Odd ones out", answer.odd)
    not_tied = map(_title, answer.not_tied)
    yield from _listed("Points that nothing is known to feed", not_tied)


def _chains(chains: Sequence[Chain], heading: str) -> Iterator[str]:
    for number, chain in enumerate(chains, 1):
        count = f", path {number} of {len(chains)}" if len(chains) > 1 else ""
        yield ""
        yield f"{heading}{count}"
        yield from _table([_step(step) for step in chain.steps])


def _step(step: Step) -> tuple[str, ...]:
    facts = (
        _rating(step),
        _guards(step),
        _opens(step),
        _hours(step.when),
        f"tie: {GRADES[step.grade].lower()}" if step.grade else "",
    )
    owner = OWNERS[step.owner]
    return step.ref, step.title, owner, "; ".join(fact for fact in facts if fact)


def _rating(step: Step) -> str:
    curve = f"{step.curve} " if step.curve and step.curve != "unknown" else ""
    value = step.fuse_a or step.rated_current_a
    if value is None and not is_overcurrent(step):
        return ""
    return f"{curve}{_figure(value, 'A')}"


def _guards(step: Step) -> str:
    words = {"overload": "overload", "short_circuit": "short circuit"}
    said = [word for code, word in words.items() if code in step.protects]
    if is_rcd(step):
        kind = step.rcd_type if step.rcd_type not in (None, "unknown") else "not known"
        figure = _figure(step.residual_current_ma, "mA")
        failed = f"; {step.failed}" if step.failed else ""
        said.append(f"earth leakage ({figure}, type {kind}{failed})")
    return f"guards against {', '.join(said)}" if said else ""


def _opens(step: Step) -> str:
    if step.opens == "none":
        return ""
    usual = step.opens_basis == "usual"
    if usual and step.opens == "line":
        return "breaks: at least the line; whether the neutral too is not recorded"
    poles = POLES[step.opens].lower()
    return f"breaks: {poles} (usual for its kind)" if usual else f"breaks: {poles}"


def _hours(when: str) -> str:
    if when == "unknown":
        return "when it is live is not known"
    return "" if when == "always" else f"live: {WHEN[when].lower()}"


def _tie(tie: TieAnswer) -> str:
    seen = f", {tie.seen_on.isoformat()}" if tie.seen_on else ""
    by = f", {tie.seen_by}" if tie.seen_by else ""
    role, grade = TIE_ROLES[tie.role].lower(), GRADES[tie.grade].lower()
    return f"{_title(tie.tied_to)}: {role}; {grade}{seen}{by}"


def _feeding(point: Feeding) -> str:
    care = ", ".join(CARE[code].lower() for code in point.care)
    neutral = _some(point.neutral_elsewhere)
    facts = (
        point.room.title if point.room else "room not known",
        care,
        "keeps another feed" if point.other_feed else "",
        f"its neutral returns by {neutral}" if neutral else "",
    )
    return f"{point.title} ({point.ref}): {'; '.join(fact for fact in facts if fact)}"


def _changes(answer: PointAnswer) -> Iterator[str]:
    for before, after in answer.boundaries:
        yield f"between {before} and {after}"
    for before, after in answer.boundaries_unknown:
        yield f"whether it changes hands between {before} and {after} is not known"


def _cover(answer: PointAnswer) -> str:
    delayed = any(rcd.time_delayed == "yes" for rcd in answer.rcds)
    more = "; one that is time-delayed does not count" if delayed else ""
    failed = named_failures((_title(rcd), rcd.failed) for rcd in answer.rcds)
    if failed and answer.within_30_ma in ("failed", "some"):
        more += f", but {failed}: count on no RCD"
    if answer.within_30_ma != "not_mains":
        past, earthing = map(_title, answer.past_rcd), map(_title, answer.earthing_open)
        more += doubts_of_cover(past, earthing)
    return f"{COVER[answer.within_30_ma]}{more}"


def _label(found: str | None) -> str:
    if found is None:
        return NOT_KNOWN
    return f"“{found}”" if found not in NO_WORDS else "nothing written"


def _in_it(value: Decimal | None, unit: str) -> str:
    """A point that holds none says nothing, and so does one not looked into."""
    return "" if value is None else f"{value} {unit}"


def _figure(value: Decimal | None, unit: str) -> str:
    return f"{NAMES[unit]} not known" if value is None else f"{value} {unit}"


def _title(thing: Named | Rcd) -> str:
    return f"{thing.title} ({thing.ref})"


def _name(thing: Named | None) -> str:
    return _title(thing) if thing else NOT_KNOWN.lower()


def _names(things: Sequence[Named]) -> str:
    return ", ".join(map(_title, things)) or NONE


def _some(things: Sequence[Named]) -> str:
    return _names(things) if things else ""


def _pairs(rows: Mapping[str, str]) -> Iterator[str]:
    """Yield what there is to say, label by label."""
    yield from _table([(label, words) for label, words in rows.items() if words])


def _table(rows: Sequence[Sequence[str]]) -> Iterator[str]:
    """Yield rows with their columns aligned; the last one runs on."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        yield f"  {'  '.join(cells)}".rstrip()


def _listed(heading: str, lines: Iterable[str]) -> Iterator[str]:
    yield ""
    yield heading
    yield from [f"  - {line}" for line in lines] or [f"  {NONE}"]
