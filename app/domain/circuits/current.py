"""The current that a circuit is taken to carry."""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits._working import (
    COMMON_PRACTICE,
    CannotTell,
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


def load_current(subject: Subject) -> Outcome:
    """Return what a circuit draws: by its watts, else by the rating of its device."""
    use = "distribution" if subject.feeds_board else subject.circuit.use
    if use in BY_RATING:
        return by_rating(subject, BY_RATING[use])
    watts = watts_of(subject)
    if watts is None:
        return by_rating(subject, STANDS_IN)
    if subject.three_phase:
        return by_watts_of_three(watts)
    return by_watts(watts, assumes=subject.phase_assumed)


def design_current(subject: Subject) -> Outcome:
    """Return the current a circuit is laid out for: of a cooker, with diversity."""
    found = load_current(subject)
    known = isinstance(found, Working) and found.formula != BY_RATING_FORMULA
    if subject.circuit.use != "cooker" or isinstance(found, CannotTell) or not known:
        return found
    return cooking(worked(found), sockets=cooker_sockets(subject))


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
    """Return the connected load: the circuit's own, else the sum of its points'."""
    own = subject.figure("connected_w")
    if own:
        return own
    loads = [(point.load_w, point.count) for point in subject.points]
    known = [load * count for load, count in loads if load is not None]
    if not loads or len(known) < len(loads) or not sum(known):
        return None
    where = f"the {len(loads)} points of {subject.circuit.title}"
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
