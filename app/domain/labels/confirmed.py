"""When a label may stand without a query mark."""

from __future__ import annotations

from app.domain.network import Network, downstream, points_on
from app.domain.record import Device, Tie

# Confirmed by a second look or by elimination, or in an electrician's document.
SURE = frozenset({"4", "5"})


def confirmed(net: Network, way: Device) -> bool:
    """Return whether what is written of a way is confirmed.

    It is where every circuit of the way has points, every tie that feeds one of these
    points is of grade 4 or 5 with no work on it since, and no other board hangs on the
    way: of what feeds a board the record holds no grade. What is not confirmed carries
    a query mark.
    """
    circuits = net.record.circuits_of(way.ref)
    if not circuits or feeds_boards(net, way):
        return False
    each_has_points = all(points_on(net, circuit.ref) for circuit in circuits)
    return each_has_points and all(
        tie.grade in SURE and tie.ref not in net.aged for tie in feeding_ties(net, way)
    )


def feeding_ties(net: Network, way: Device) -> tuple[Tie, ...]:
    """Return every tie that feeds a point of the way's circuits, each once."""
    circuits = net.record.circuits_of(way.ref)
    points = dict.fromkeys(p for c in circuits for p in points_on(net, c.ref))
    ties = (tie for point in points for tie in net.record.ties_of(point))
    return tuple(tie for tie in ties if tie.role == "feeds")


def feeds_boards(net: Network, way: Device) -> tuple[str, ...]:
    """Return the names of the boards that hang on a way, its own apart."""
    record, fed = net.record, {way.ref, *downstream(net, way.ref)}
    above = {way.ref, *(circuit.ref for circuit in record.circuits_of(way.ref))}
    devices = (record.find(Device, ref) for ref in fed)
    reached = {device.board for device in devices if device}
    return tuple(
        board.name
        for board in record.boards
        if board.ref != way.board and (board.fed_from in above or board.ref in reached)
    )
