"""Notes for switching off: the whole home, and each room."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.isolation import house_off, plan
from app.domain.isolation.shapes import ADVICE, Switch
from app.domain.network import Network
from app.domain.pack.blocks import Block, Head, Lines, Section, Table, Text
from app.domain.record import Room


def section(net: Network) -> Section:
    """Return the section; a plan of the day asks for more than these notes."""
    return Section(
        code="isolation", title="Notes for switching off", blocks=tuple(_blocks(net))
    )


def _blocks(net: Network) -> Iterator[Block]:
    off = house_off(net)
    yield Text(
        text="What the record expects, no proof. Unknown counts as live. The wires "
        "into a main switch stay live when it is off.",
        caution=True,
    )
    yield Head(text="The whole home")
    yield Lines(
        lines=tuple(_switch(switch) for switch in off.switches),
        otherwise="No switch is recorded.",
    )
    yield Head(text="Still live after that")
    live = (f"{item.title} ({item.ref}): {item.why}" for item in off.still_live)
    yield Lines(lines=(*live, *off.behind), otherwise="Nothing that is recorded.")
    cautions = (c.sentence for c in off.not_main)
    yield Lines(lines=(*filter(None, [off.may_stay]), *cautions, *off.batteries))
    yield Table(
        caption="Each room, by the nearest switches",
        heads=("Room", "Nearest switches", "Advised", "Why"),
        widths=(2, 4, 2, 5),
        rows=tuple(_room(net, room) for room in net.record.rooms),
        otherwise="No room is recorded.",
    )


def _switch(switch: Switch) -> str:
    place = ", ".join(
        part for part in (switch.board and switch.board.title, switch.room) if part
    )
    where = f" ({place})" if place else ""
    live = f" {switch.still_live}" if switch.still_live else ""
    return f"{switch.title} ({switch.ref}){where}.{live}"


def _room(net: Network, room: Room) -> tuple[str, ...]:
    found = plan(net, (room.ref,))
    switches = (f"{s.title} ({s.ref})" for s in found.nearest.switches)
    reasons = (r.sentence for r in found.reasons if r.advice == found.advised)
    return (
        f"{room.title} ({room.ref})",
        "; ".join(switches) or "none found",
        ADVICE[found.advised],
        " ".join(reasons) or "–",
    )
