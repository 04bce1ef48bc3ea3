"""The current that a circuit is taken to carry."""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits._working import (
    COMMON_PRACTICE,
    Figure,
    Outcome,
    Working,
    assumed,
    plain,
    recorded,
    result,
    tabled,
    worked,
)
from app.domain.circuits.subject import Subject
from app.domain.kinds import POINT_KINDS
from app.domain.record import Point
from app.domain.tables import TABLES

LABEL = "Load of the circuit, Ib"
# A socket circuit draws what is plugged in; so does a cable to a board.
BY_RATING = {
    "sockets": "A socket circuit is taken as loaded to the rating of its device.",
    "distribution": "A cable to a board is taken as loaded to its device's rating.",
}
BY_RATING_FORMULA = "Ib = In"
BY_WATTS_FORMULA, BY_WATTS_OF_THREE = "I = P / U", "I = P / (3 × U)"
AT_DECLARED = "Ohm's law, at the declared voltage"
EVEN = "The load is taken as even on the three phases."
STANDS_IN = "The load is not recorded: the rating of its device stands in for it."
PARTLY = "Not all of the load is recorded: the rating of its device stands in for it."
AT_LEAST = "The load is at least this: that of some points is not recorded."


def load_current(subject: Subject) -> Outcome:
    """Return what a circuit draws: by its watts, else by the rating of its device.

    Where the load of some points is open the rating counts, unless what is recorded is
    more already: see `is_least`.
    """
    return _or_rating(subject, recorded_current(subject))


def design_current(subject: Subject) -> Outcome:
    """Return the current a circuit is laid out for: of a cooker, with diversity."""
    return _or_rating(subject, recorded_design(subject))


def recorded_design(subject: Subject) -> Working | None:
    """Return the design current of the load that is recorded: perhaps only a part."""
    found = recorded_current(subject)
    if found is None or subject.circuit.use != "cooker":
        return found
    return cooking(worked(found), sockets=cooker_sockets(subject))


def recorded_current(subject: Subject) -> Working | None:
    """Return the current of the load that is recorded; None where none counts."""
    watts = None if _by_rating_always(subject) else watts_of(subject)
    if watts is None:
        return None
    if subject.three_phase:
        return by_watts_of_three(watts)
    return by_watts(watts, assumes=subject.phase_assumed)


def is_least(found: Outcome) -> bool:
    """Return whether a current is only the recorded part of a load, the rest open."""
    return isinstance(found, Working) and AT_LEAST in found.assumes


def open_points(subject: Subject) -> tuple[Point, ...]:
    """Return the points that draw something, and whose load is not recorded."""
    if subject.figure("connected_w"):
        return ()
    use = subject.circuit.use
    return tuple(p for p in subject.points if p.load_w is None and _draws(p, use))


def _draws(point: Point, use: str) -> bool:
    """Return whether a point is a load; a cooker's socket has a rule of its own."""
    by_rule = use == "cooker" and point.kind == "cooker_outlet_socket"
    return POINT_KINDS[point.kind].draws and not by_rule


def _or_rating(subject: Subject, known: Working | None) -> Outcome:
    if known is not None and not open_points(subject):
        return known
    why = _by_rating_always(subject) or (PARTLY if known else STANDS_IN)
    found = by_rating(subject, why)
    more = known and isinstance(found, Working) and known.value > found.value
    if known is None or not more:
        return found
    return at_least(known)


def at_least(known: Working) -> Working:
    """Return the current of a part of a load, said to be no more than that."""
    return known.model_copy(update={"assumes": (*known.assumes, AT_LEAST)})


def _by_rating_always(subject: Subject) -> str:
    """Return why the rating counts whatever its points draw; empty if it does not."""
    use = "distribution" if subject.feeds_board else subject.circuit.use
    return BY_RATING.get(use, "")


def cooker_sockets(subject: Subject) -> int:
    """Return how many cooker switches with a socket are on a circuit."""
    switches = (p for p in subject.points if p.kind == "cooker_outlet_socket")
    return sum(point.count for point in switches)


def cooking(current: Figure, *, sockets: int) -> Working:
    """Return the demand of cooking: 10 A, 30 % of the rest, 5 A for each socket."""
    value, ten = current.value, Decimal(10)
    rest = max(value - ten, Decimal(0))
    socket = f" + 5 A × {sockets}" if sockets else ""
    return result(
        "Cooking, with diversity",
        min(value, ten) + rest * 3 / 10 + 5 * sockets,
        "A",
        formula="10 A + 30 % of the rest + 5 A for a socket in the control unit",
        put_in=f"{plain(min(value, ten))} A + 30 % of {plain(rest)} A{socket}",
        figures=(current,),
        source=TABLES["diversity"].source,
    )


def watts_of(subject: Subject) -> Figure | None:
    """Return the load that is recorded: the circuit's own, else that of its points.

    Of the points it may be a part only: see `open_points`.
    """
    own = subject.figure("connected_w")
    if own:
        return own
    known = [p.load_w * p.count for p in subject.points if p.load_w is not None]
    if not sum(known):
        return None
    points = "one point" if len(known) == 1 else f"the {len(known)} points"
    where = f"{points} of {subject.circuit.title}"
    return recorded("Load of its points", sum(known, Decimal(0)), "W", where)


def by_watts(
    watts: Figure, label: str = LABEL, *, assumes: tuple[str, ...] = ()
) -> Working:
    """Return the current of a single-phase load at the declared voltage."""
    volts = _declared(assumes)
    return result(
        label,
        watts.value / volts.value,
        "A",
        formula=BY_WATTS_FORMULA,
        put_in=f"{watts.shown} / {volts.shown}",
        figures=(watts, volts),
        source=AT_DECLARED,
    )


def by_watts_of_three(watts: Figure) -> Working:
    """Return the current in each phase of a three-phase load, even on all three.

    The declared voltage is that of each phase: a third of the load stands on it.
    """
    volts = _declared((EVEN,))
    return result(
        LABEL,
        watts.value / (3 * volts.value),
        "A",
        formula=BY_WATTS_OF_THREE,
        put_in=f"{watts.shown} / (3 × {volts.shown})",
        figures=(watts, volts),
        source=f"{AT_DECLARED} to neutral, each phase alike",
    )


def _declared(assumes: tuple[str, ...]) -> Figure:
    value = TABLES["supply"].at("declared voltage (V)", "Figure")
    return tabled("Declared voltage", value, unit="V", assumes=assumes)


def by_rating(subject: Subject, why: str) -> Outcome:
    """Return the rating of its device as the load of a circuit, said to be assumed."""
    rated = subject.rated()
    if rated is None:
        load = () if subject.circuit.use in BY_RATING else ("connected_w",)
        return subject.cannot(LABEL, *load, "rated_current_a")
    figure = assumed("Rating of its device", rated.value, rated.unit, why)
    return result(
        LABEL,
        figure.value,
        "A",
        formula=BY_RATING_FORMULA,
        put_in=figure.shown,
        figures=(figure,),
        source=COMMON_PRACTICE,
        places=1,
    )
