"""What switching off cannot show, for these ways and these readings."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from app.domain.trace.state import PointState
from app.domain.trace.survey import Survey


@dataclass(frozen=True, slots=True, kw_only=True)
class CannotShow:
    """One thing that stays hidden.

    Attributes:
        code: Its name.
        sentence: What it is, for the person.
        refs: The ways or points that it is about; may be empty.
    """

    code: str
    sentence: str
    refs: tuple[str, ...] = ()


def cannot_show(
    survey: Survey, known: Mapping[str, PointState]
) -> tuple[CannotShow, ...]:
    """Return what stays hidden, leaving out what is about nothing here."""
    tried = {w for look in survey.looks if look.seen for w in survey.dead(look.off)}
    on_some = {way for state in known.values() for way in _found_on(state)}
    single = tuple(way.ref for way in survey.ways if way.poles != 2)
    found = (
        CannotShow(
            code="borrowed_neutral",
            sentence="A way that breaks the line only, or may do so, hides a neutral "
            "borrowed from another circuit: the light follows its line. Stairs and "
            "landings with two-way switches are the usual place; ask there.",
            refs=single,
        ),
        CannotShow(
            code="left_on",
            sentence="Never to be switched off, so nothing can be found on it, and no "
            "point can be told from one that it feeds as well.",
            refs=tuple(w.ref for w in survey.ways if w.ref not in survey.switchable),
        ),
        CannotShow(
            code="no_baseline",
            sentence="Seen dead, but never looked at with everything on at that time "
            "of day. A blown lamp or a timed supply would look the same.",
            refs=tuple(_without_baseline(survey)),
        ),
        CannotShow(
            code="not_tried",
            sentence="Not switched off yet.",
            refs=tuple(w for w in survey.switchable if w not in tried),
        ),
        CannotShow(
            code="nothing_found",
            sentence="Nothing was found on it. That does not make it spare: it may "
            "feed a point not listed, a timed load, or a cable end still live.",
            refs=tuple(w.ref for w in survey.ways if w.ref in tried - on_some),
        ),
        CannotShow(
            code="not_looked",
            sentence="Never looked at in a round. Not looked is not live.",
            refs=tuple(p for p in survey.points if not _looked_at(known[p])),
        ),
    )
    return tuple(each for each in found if each.refs)


def _found_on(state: PointState) -> Iterator[str]:
    if state.way:
        yield state.way
    if state.status == "more_than_one_way":
        yield from (way for pair in (*state.either, *state.both) for way in pair)


def _without_baseline(survey: Survey) -> Iterator[str]:
    """Yield the points seen dead at a time when nobody looked with everything on."""
    for point in survey.points:
        seen = [(look, look.seen[point]) for look in survey.looks if point in look.seen]
        looked = {look.night for look, _ in seen if not look.off}
        if any(what == "dead" and look.night not in looked for look, what in seen):
            yield point


def _looked_at(state: PointState) -> bool:
    return bool(state.dead_in or state.live_in or state.ignored)
