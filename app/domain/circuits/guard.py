"""What guards a circuit against too much current: its own way, or what is before it.

A switch, a contactor, a time switch or an RCD opens on no overload, and BS
7671:2018+A2:2022, 433.1, asks for a device that does: the nearest fuse or
circuit-breaker before them counts.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.domain.chain import Chain, Step
from app.domain.circuits._working import CannotTell, Figure, Need
from app.domain.circuits.needed import figure_of, need_of
from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS
from app.domain.record import Circuit, Device, IntakeItem, Point, Record

GUARD = "The device that guards it"
TWO_WAYS = "the supply reaches it by more ways than one"
# The kind of these does not say what they guard against.
MAY_GUARD = frozenset({"unknown", "other"})
Carrier = Device | IntakeItem


@dataclass(frozen=True, slots=True)
class Guard:
    """The nearest thing before a circuit that opens on an overload.

    Attributes:
        item: What it is.
        is_way: Whether it is the way that the circuit is wired to.
        carriers: The switches between it and the circuit, which only carry its current.
    """

    item: Carrier | Point
    is_way: bool
    carriers: tuple[Carrier, ...] = ()

    @property
    def kind(self) -> str:
        """Code of its kind; of the fuse in a point that of one in a plug."""
        return "fuse_plug" if isinstance(self.item, Point) else self.item.kind

    @property
    def curve(self) -> str:
        """Its type, for a circuit-breaker."""
        return self.item.curve if isinstance(self.item, Device) else "unknown"

    @property
    def rated(self) -> Figure | None:
        """What it is rated for, if that is recorded; see `rated_of`."""
        return rated_of(self.item)

    @property
    def shown(self) -> str:
        """Its rating, by what that is known, and what it is if not the way itself."""
        rated = self.rated
        if rated is None:
            return ""
        by = " by the wire seen in it" if wire_governs(self.item) else ""
        carrier = isinstance(self.item, IntakeItem) and _is_printed(self.item)
        on_it = ", by the figure on it" if carrier else ""
        which = "" if self.is_way else f" ({self.item.title}, which guards it{on_it})"
        return f"{rated.shown}{by}{which}"

    def limits(self) -> Iterator[tuple[str, Figure]]:
        """Yield what carries the current of the circuit: in words, and its rating.

        Of a rewirable fuse both count, its carrier and the wire seen in it: the cable
        is held to the larger, the load to each.
        """
        if self.rated is not None:
            yield f"the device, {self.shown}", self.rated
        carrier = (
            figure_of(self.item, "rated_current_a") if wire_governs(self.item) else None
        )
        if carrier is not None:
            yield f"the carrier of that fuse, {carrier.shown}", carrier
        wire = _smaller_wire(self.item)
        if wire is not None:
            yield f"the wire seen in that fuse, {wire.shown}", wire
        for item in self.carriers:
            rated = figure_of(item, "rated_current_a")
            if rated is not None:
                yield f"{item.title}, {rated.shown}", rated

    def unrated(self) -> tuple[Need, ...]:
        """Return the ratings of switches that the record does not hold."""
        return tuple(
            need_of(item, "rated_current_a", f"the rating of {item.title}")
            for item in self.carriers
            if not item.rated_current_a
        )


def rated_of(item: Carrier | Point) -> Figure | None:
    """Return what a thing is rated for; a rewirable fuse by its wire, if that is more.

    BS 3036: the wire is what melts; whoever mends it next goes by the carrier
    (common practice, no source).
    """
    if isinstance(item, Point):
        return figure_of(item, "fuse_a")
    return figure_of(item, "fuse_wire_a" if wire_governs(item) else "rated_current_a")


def as_guard(record: Record, step: Step) -> Step:
    """Return a step of a chain with the rating that it guards by: see `rated_of`."""
    item = record.by_ref[step.ref]
    rated = rated_of(item) if isinstance(item, Device | IntakeItem | Point) else None
    return step.model_copy(update={"rated_current_a": rated.value if rated else None})


def wire_governs(item: Carrier | Point) -> bool:
    """Return whether a rewirable fuse holds wire for more than its carrier."""
    if not isinstance(item, Device) or item.kind != "fuse_rewirable":
        return False
    wire, carrier = item.fuse_wire_a, item.rated_current_a
    return bool(wire and carrier and wire > carrier)


def _smaller_wire(item: Carrier | Point) -> Figure | None:
    """Return the wire seen in a rewirable fuse, unless it is its rating already."""
    if item.kind != "fuse_rewirable" or wire_governs(item):
        return None
    wire = figure_of(item, "fuse_wire_a")
    same = wire is not None and wire.value == getattr(item, "rated_current_a", None)
    return None if same else wire


def guard_of(
    record: Record, circuit: Circuit, lines: Sequence[Chain]
) -> Guard | CannotTell:
    """Return what guards a circuit against overload, or why that cannot be told.

    Args:
        record: The record.
        circuit: The circuit.
        lines: Every way that the supply takes to it.
    """
    way = record.by_ref.get(circuit.ways[0]) if len(circuit.ways) == 1 else None
    if not isinstance(way, Device | IntakeItem):
        return CannotTell(label=GUARD, needs=(_way_needed(circuit),))
    found = [_on_line(record, way, line) for line in lines]
    guards = [each for each in found if isinstance(each, Guard)]
    if len({guard.item.ref for guard in guards}) > 1:
        return CannotTell(label=GUARD, why=TWO_WAYS)
    if len(guards) < len(found) or not guards:
        return next(
            (each for each in found if isinstance(each, CannotTell)),
            CannotTell(label=GUARD, needs=(_before(way),)),
        )
    every = {c.ref: c for guard in guards for c in guard.carriers}
    return Guard(guards[0].item, guards[0].is_way, tuple(every.values()))


def _on_line(record: Record, way: Carrier, line: Chain) -> Guard | CannotTell:
    """Walk from a circuit towards the street until something opens on an overload."""
    carriers: list[Carrier] = []
    for step in reversed(line.steps[:-1]):
        item = record.by_ref[step.ref]
        if "overload" in step.protects and isinstance(
            item, Device | IntakeItem | Point
        ):
            return Guard(item, item.ref == way.ref, tuple(carriers))
        if step.kind == "bell_transformer":
            why = "it is behind a bell transformer, whose voltage is another"
            return CannotTell(label=GUARD, why=why)
        if not isinstance(item, Device | IntakeItem):
            continue
        if item.kind in MAY_GUARD:
            return CannotTell(label=GUARD, needs=(_kind_needed(item, way),))
        if _is_switch(item):
            carriers.append(item)
    return CannotTell(label=GUARD, needs=(_before(way),))


def _is_printed(item: IntakeItem) -> bool:
    """Return whether a cut-out's rating is only what its carrier may hold."""
    return item.kind == "cutout" and item.basis not in ("document", "told")


def _is_switch(item: Carrier) -> bool:
    kinds = DEVICE_KINDS if isinstance(item, Device) else INTAKE_KINDS
    return kinds[item.kind].opens != "none"


def _way_needed(circuit: Circuit) -> Need:
    several = len(circuit.ways) > 1
    words = "which one way guards it" if several else "the way that it starts from"
    return Need(ref=circuit.ref, name="ways", label=words)


def _kind_needed(item: Carrier, way: Carrier) -> Need:
    name = "its device" if item.ref == way.ref else item.title
    return Need(ref=item.ref, name="kind", label=f"what {name} guards against")


def _before(way: Carrier) -> Need:
    return Need(ref=way.ref, label="the fuse or circuit-breaker before its way")
