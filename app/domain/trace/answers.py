"""What ``ways trace`` answers: shapes for programs, made from the survey."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.answers import Named
from app.domain.network import Network
from app.domain.record import Record
from app.domain.record._field import Model, field
from app.domain.trace.blind import cannot_show
from app.domain.trace.effort import effort
from app.domain.trace.plan import Manner, next_round
from app.domain.trace.readings import likely_ways, survey_of
from app.domain.trace.state import NONE, PointState, states
from app.domain.trace.words import answer_of, naming, reasons_of


class MisreadAnswer(Model):
    """A reading that, if it was wrong, would leave one way."""

    round: str = field("Round", ...)
    way: Named = field("The way it would leave", ...)


class Finding(Model):
    """What is known of one point."""

    point: Named = field("Point", ...)
    status: str = field("Status", ...)
    way: Named | None = field("The way found")
    confirmed: bool = field("No two ways explain the readings as well", False)
    steady: bool = field("It would stand if any one reading were wrong", False)
    candidates: tuple[Named, ...] = field("Ways that fit", ())
    none_fits: bool = field("Whether none of the ways fits too", False)
    either: tuple[tuple[Named, Named], ...] = field("Dead with either of", ())
    both: tuple[tuple[Named, Named], ...] = field("Dead only with both of", ())
    misread: tuple[MisreadAnswer, ...] = field("Readings to look at again", ())
    dead_in: tuple[str, ...] = field("Rounds in which it went dead", ())
    live_in: tuple[str, ...] = field("Rounds in which it stayed live", ())
    kept_on_in: tuple[str, ...] = field(
        "Rounds in which it stayed on, which its own battery can do", ()
    )
    was_live: bool = field(
        "Seen on at each time of day at which it was seen dead", True
    )
    ignored: tuple[str, ...] = field("Rounds that tell nothing", ())
    disputed: tuple[str, ...] = field("Rounds seen differently", ())
    answer: str = field("The answer in a sentence", ...)
    reasons: tuple[str, ...] = field("What says so", ...)


class Hidden(Model):
    """Something that switching off cannot show."""

    code: str = field("Code", ...)
    sentence: str = field("What", ...)
    things: tuple[Named, ...] = field("About", ())


class TraceAnswer(Model):
    """What is known of every point, and what stays hidden."""

    home: str = field("Home", ...)
    rounds: int = field("Rounds that count", ...)
    points: tuple[Finding, ...] = field("Points, in the order of the walk", ...)
    hidden: tuple[Hidden, ...] = field("What switching off cannot show", ())


class EffortAnswer(Model):
    """How much a manner still asks for."""

    finding_best: int = field("Fewest rounds until every point is found", ...)
    finding_worst: int = field("Most rounds until then", ...)
    rounds_best: int = field("Fewest rounds with the confirming looks", ...)
    rounds_worst: int = field("Most rounds with them", ...)
    readings_best: int = field("Fewest readings", ...)
    readings_worst: int = field("Most readings", ...)


class PlanAnswer(Model):
    """The next round in a manner, and how much that manner still asks for."""

    home: str = field("Home", ...)
    manner: str = field("Manner", ...)
    purpose: str | None = field("To tell ways apart or to confirm; none: nothing left")
    switch_off: tuple[Named, ...] = field("Switch off", ())
    without_supply: tuple[Named, ...] = field("Ways then without supply", ())
    look_at: tuple[Named, ...] = field("Points to look at", ())
    effort: EffortAnswer = field("What is still needed", ...)


class Names:
    """What the things of a record are called, each worked out once."""

    def __init__(self, record: Record) -> None:
        self.called = naming(record)
        self._known: dict[str, Named] = {}
        self._ways: dict[int, tuple[tuple[str, ...], tuple[Named, ...]]] = {}

    def of(self, ref: str) -> Named:
        """Return a thing's name."""
        if ref not in self._known:
            self._known[ref] = Named(ref=ref, title=self.called(ref))
        return self._known[ref]

    def of_all(self, refs: Iterable[str]) -> tuple[Named, ...]:
        """Return the names of things."""
        return tuple(map(self.of, refs))

    def of_ways(self, candidates: tuple[str, ...]) -> tuple[Named, ...]:
        """Return the names of the ways that fit: often the same for many points."""
        # By which tuple it is, not by what it holds: that would be read each time.
        key = id(candidates)
        if key not in self._ways:
            named = self.of_all(w for w in candidates if w != NONE)
            self._ways[key] = (candidates, named)
        return self._ways[key][1]


def trace_answer(net: Network) -> TraceAnswer:
    """Return what the rounds of a record say of each point."""
    survey = survey_of(net)
    known = states(survey)
    record, names = net.record, Names(net.record)
    return TraceAnswer(
        home=record.home.ref,
        rounds=sum(1 for look in survey.looks if look.seen),
        points=tuple(_finding(names, state) for state in known.values()),
        hidden=tuple(
            Hidden(
                code=each.code,
                sentence=each.sentence,
                things=names.of_all(each.refs),
            )
            for each in cannot_show(survey, known)
        ),
    )


def plan_answer(net: Network, manner: Manner) -> PlanAnswer:
    """Return what to switch off next."""
    survey, record, names = survey_of(net), net.record, Names(net.record)
    planned = next_round(survey, manner, likely_ways(net))
    needed = effort(survey, manner)
    asked = EffortAnswer.model_fields
    return PlanAnswer(
        home=record.home.ref,
        manner=manner,
        purpose=planned.purpose if planned else None,
        switch_off=names.of_all(planned.switches if planned else ()),
        without_supply=names.of_all(
            w.ref for w in survey.ways if planned and w.ref in planned.ways
        ),
        look_at=names.of_all(planned.points if planned else ()),
        effort=EffortAnswer(**{name: getattr(needed, name) for name in asked}),
    )


def _finding(names: Names, state: PointState) -> Finding:
    called = names.called
    pairs = {
        name: tuple((names.of(a), names.of(b)) for a, b in found)
        for name, found in (("either", state.either), ("both", state.both))
    }
    # Made of what was checked before: looked at again, each would cost as much as the
    # ways that fit.
    return Finding.model_construct(
        point=names.of(state.point),
        status=state.status,
        way=names.of(state.way) if state.way else None,
        confirmed=state.confirmed,
        steady=state.steady,
        candidates=names.of_ways(state.candidates),
        none_fits=state.candidates[:1] == (NONE,) or state.status == "unaffected",
        either=pairs["either"],
        both=pairs["both"],
        misread=tuple(
            MisreadAnswer(round=each.look, way=names.of(each.way))
            for each in state.misread
        ),
        dead_in=state.dead_in,
        live_in=state.live_in,
        kept_on_in=state.kept_on_in,
        was_live=state.was_live,
        ignored=state.ignored,
        disputed=state.disputed,
        answer=answer_of(state, called),
        reasons=reasons_of(state, called),
    )
