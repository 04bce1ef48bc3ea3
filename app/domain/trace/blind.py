"""What switching off cannot show, for these ways and these readings."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from app.domain.trace.state import PointState
from app.domain.trace.survey import Survey

_Known = Mapping[str, PointState]


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


def cannot_show(survey: Survey, known: _Known) -> tuple[CannotShow, ...]:
    """Return what stays hidden, leaving out what is about nothing here."""
    found = (
        CannotShow(code=code, sentence=sentence, refs=refs(survey, known))
        for code, (sentence, refs) in _HIDDEN.items()
    )
    return tuple(each for each in found if each.refs)


def _single(survey: Survey, _known: _Known) -> tuple[str, ...]:
    return tuple(way.ref for way in survey.ways if way.poles != 2)


def _left_on(survey: Survey, _known: _Known) -> tuple[str, ...]:
    return tuple(w.ref for w in survey.ways if w.ref not in survey.switchable)


def _not_tried(survey: Survey, _known: _Known) -> tuple[str, ...]:
    tried = _tried(survey)
    return tuple(w for w in survey.switchable if w not in tried)


def _nothing_found(survey: Survey, known: _Known) -> tuple[str, ...]:
    on_some = {way for state in known.values() for way in _found_on(state)}
    empty = _tried(survey) - on_some
    return tuple(w.ref for w in survey.ways if w.ref in empty)


def _not_looked(survey: Survey, known: _Known) -> tuple[str, ...]:
    return tuple(p for p in survey.points if not _looked_at(known[p]))


def _tried(survey: Survey) -> set[str]:
    return {w for look in survey.looks if look.seen for w in survey.dead(look.off)}


def _found_on(state: PointState) -> Iterator[str]:
    if state.way:
        yield state.way
    if state.status == "more_than_one_way":
        yield from (way for pair in (*state.either, *state.both) for way in pair)


def _without_baseline(survey: Survey, _known: _Known) -> tuple[str, ...]:
    """Return the points seen dead at a time when nobody looked with everything on."""
    return tuple(_seen_dead_only(survey))


def _seen_dead_only(survey: Survey) -> Iterator[str]:
    for point in survey.points:
        seen = [(look, look.seen[point]) for look in survey.looks if point in look.seen]
        looked = {look.night for look, _ in seen if not look.off}
        if any(what == "dead" and look.night not in looked for look, what in seen):
            yield point


def _own_battery(_survey: Survey, known: _Known) -> tuple[str, ...]:
    return tuple(p for p, s in known.items() if s.own_battery and not s.dead_in)


def _perhaps_battery(survey: Survey, known: _Known) -> tuple[str, ...]:
    """Return what stayed live and may have done so by a battery nobody wrote down."""
    perhaps = survey.perhaps_battery
    return tuple(p for p, s in known.items() if p in perhaps and s.live_in)


def _looked_at(state: PointState) -> bool:
    looks = (state.dead_in, state.live_in, state.kept_on_in, state.ignored)
    return any(looks)


_HIDDEN: dict[str, tuple[str, Callable[[Survey, _Known], tuple[str, ...]]]] = {
    "borrowed_neutral": (
        (
            "A way that breaks the line only, or may do so, hides a neutral borrowed "
            "from another circuit: the light follows its line. Stairs and landings "
            "with two-way switches are the usual place; ask there."
        ),
        _single,
    ),
    "left_on": (
        (
            "Never to be switched off, so nothing can be found on it, and no point can "
            "be told from one that it feeds as well."
        ),
        _left_on,
    ),
    "no_baseline": (
        (
            "Seen dead, but never looked at with everything on at that time of day. A "
            "blown lamp or a timed supply would look the same."
        ),
        _without_baseline,
    ),
    "own_battery": (
        (
            "Has a battery of its own: that it stays on says nothing of its feed, only "
            "its going off does. Look at its mains light, if it has one."
        ),
        _own_battery,
    ),
    "perhaps_battery": (
        (
            "Such alarms mostly have a battery of their own, and then stay on with "
            "their feed off. Write down whether this one has."
        ),
        _perhaps_battery,
    ),
    "not_tried": ("Not switched off yet.", _not_tried),
    "nothing_found": (
        (
            "Nothing was found on it. That does not make it spare: it may feed a point "
            "not listed, a timed load, or a cable end still live."
        ),
        _nothing_found,
    ),
    "not_looked": (
        "Never looked at in a round. Not looked is not live.",
        _not_looked,
    ),
}
