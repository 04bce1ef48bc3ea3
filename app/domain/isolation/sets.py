"""Which switches part the targets from every supply: nearest, wide, and single ones."""

from __future__ import annotations

from collections.abc import Iterable

from app.domain.isolation.wires import Wires, load_side, whose_side
from app.domain.network import joined_at
from app.domain.record import Board, Device


def nearest(
    wires: Wires, targets: Iterable[str], *, not_on: Iterable[str] = ()
) -> frozenset[str]:
    """Return the lowest switches that part the targets, and no more than are needed.

    Walking from the targets against the supply, these are the first switches that are
    met; of them, those that the supply reaches without passing another.  There is just
    one such set: each of them has a closed way to a target, and to a source.

    What no switch can part does not count while anything else can be parted: the plan
    names it, and what parts the rest must not depend on it.

    Args:
        wires: How the supply can run.
        targets: What is to be parted from it.
        not_on: Boards whose own devices may not serve, for work on the board itself.
    """
    barred = devices_on(wires, not_on)
    may = wires.openable - barred
    hopeless = wires.live(may) if barred else wires.supplied(may)
    targets = frozenset(targets)
    return next_before(wires, targets - hopeless or targets, may)


def wide(
    wires: Wires,
    targets: Iterable[str],
    near: frozenset[str],
    *,
    not_on: Iterable[str] = (),
) -> frozenset[str]:
    """Return the main switches of the boards that serve, and each source's isolator."""
    barred = devices_on(wires, not_on)
    devices = (wires.net.record.find(Device, ref) for ref in near)
    boards = {device.board for device in devices if device}
    choice = (devices_on(wires, boards) & wires.openable | near) - barred
    behind = wires.leads_to(targets)
    heads = choice & wires.live(choice)
    others = own_isolators(wires) - barred
    return (heads | others) & behind


def own_isolators(wires: Wires) -> frozenset[str]:
    """Return the first switches out from each source other than the network."""
    record = wires.net.record
    others = [s for s in record.sources if s.kind != "network" and s.present != "no"]
    joins = (joined_at(record, source) for source in others)
    starts = {source.ref for source in others}
    starts |= {_side(wires, ref) for ref in joins if ref}
    reached = wires.sides(starts, wires.openable)
    return wires.openable & frozenset(map(whose_side, reached))


def _side(wires: Wires, joined: str) -> str:
    return load_side(joined) if joined in wires.openable else joined


def single(wires: Wires, targets: frozenset[str], near: frozenset[str]) -> list[str]:
    """Return switches that do alone what the nearest set does, the lowest first."""
    left = wires.live(near) & targets
    devices = [
        ref
        for ref in wires.leads_to(targets)
        if ref in wires.openable and ref not in near
    ]
    if parted := sorted((wires.live() & targets) - left):
        # What parts a thing is on every way to it, and so on any one of them.
        on_the_way = wires.a_way_to(parted[0])
        devices = [ref for ref in devices if ref in on_the_way]
    live = {ref: wires.live([ref]) for ref in devices}
    alone = [ref for ref in devices if live[ref] & targets <= left]
    return sorted(alone, key=lambda ref: (-len(live[ref]), ref))


def heads(wires: Wires) -> frozenset[str]:
    """Return the first switches on every way of the supply into the home."""
    first = wires.openable & wires.live(wires.openable)
    return first | own_isolators(wires)


def devices_on(wires: Wires, boards: Iterable[str]) -> frozenset[str]:
    """Return the devices of some boards."""
    record = wires.net.record
    named = [board for board in boards if record.find(Board, board)]
    return frozenset(d.ref for board in named for d in record.devices_of(board))


def next_before(
    wires: Wires, targets: Iterable[str], openable: frozenset[str]
) -> frozenset[str]:
    """Return the switches next before the targets that the supply reaches beyond.

    Args:
        wires: How the supply can run.
        targets: What is to be parted.
        openable: Switches that may serve.
    """
    met = _met(wires, targets, openable)
    live = wires.sides(wires.roots, (whose_side(far) for far in met))
    return frozenset(whose_side(far) for far in met if far in live)


def _met(wires: Wires, targets: Iterable[str], openable: frozenset[str]) -> set[str]:
    """Return the far sides of the first switches met from the targets."""
    targets = set(targets)
    seen = (targets & openable) | wires.sides_of(targets - openable)
    waiting, far = list(seen), set()
    while waiting:
        side = waiting.pop()
        near = set(wires.back.get(side, ()))
        crossing = set(wires.before(side)) - near
        if whose_side(side) in openable:
            far |= crossing
        else:
            near |= crossing
        fresh = near - seen
        seen |= fresh
        waiting += fresh
    return far
