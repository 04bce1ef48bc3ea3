"""What a circuit for one large thing draws, as far as the record says."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from app.domain.record import Circuit
from app.domain.remarks._kind import CannotTell, Found, Need, Outcome, figure, lacks
from app.domain.remarks._sight import VOLTS, Sight


def draws(sight: Sight, circuit: Circuit) -> Decimal | None:
    """Return the current of a circuit's connected load at 230 V, [A]."""
    watts = circuit.connected_w
    if not watts:
        loads = [p.load_w * p.count for p in sight.points_on(circuit) if p.load_w]
        watts = sum(loads, Decimal(0))
    return watts / VOLTS if watts else None


def cooking(current: Decimal, *, socket: bool) -> Decimal:
    """Return the current of a cooker after the household allowance, [A].

    IET On-Site Guide, table A2: 10 A, 30 % of the rest, 5 A for a socket in the switch.
    """
    first = min(current, Decimal(10))
    rest = max(current - 10, Decimal(0)) * 3 / 10
    return first + rest + (5 if socket else 0)


def over_rating(
    sight: Sight, circuit: Circuit, current: Decimal | None, what: str
) -> Iterator[Outcome]:
    """Yield that a load draws more than the way of its circuit is rated for."""
    for way in sight.ways(circuit)[:1]:
        if current is None:
            yield lacks(circuit.ref, "the connected load")
        elif not way.rated_current_a:
            need = Need(ref=way.ref, what="the rated current")
            yield CannotTell((circuit.ref, way.ref), (need,))
        elif current > way.rated_current_a:
            yield Found(
                (circuit.ref, way.ref),
                f"{sight.name(circuit.ref)}: the {what} draws about "
                f"{round(current, 1)} A, and its way is rated {way.rated_current_a} A.",
                (
                    figure("Drawn at 230 V", current, "A", calculated=True),
                    figure("Rated current of the way", way.rated_current_a, "A"),
                ),
            )
