"""What the record says of a circuit, read for arithmetic."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from itertools import chain

from app.domain.chain import Chain, Step, chains, is_rcd
from app.domain.circuits._working import CannotTell, Figure, Need
from app.domain.circuits.guard import Guard, guard_of
from app.domain.circuits.needed import figure_of, need_of
from app.domain.circuits.phase import NO_ONE, SINGLE, on_different, phase_of
from app.domain.network import Network, points_on
from app.domain.record import Board, Circuit, Device, IntakeItem, Point
from app.domain.record.choices import EARTHINGS

SOCKETS = frozenset(
    {
        "socket",
        "single_socket",
        "double_socket",
        "outdoor_socket",
        "cooker_outlet_socket",
    }
)


@dataclass(frozen=True)
class Subject:
    """A circuit with what it hangs on."""

    net: Network
    circuit: Circuit

    @cached_property
    def way(self) -> Device | IntakeItem | None:
        """What it is wired to, if that is one thing only; it need not guard it."""
        if len(self.circuit.ways) != 1:
            return None
        item = self.net.record.by_ref.get(self.circuit.ways[0])
        return item if isinstance(item, Device | IntakeItem) else None

    @cached_property
    def _guard(self) -> Guard | CannotTell:
        return guard_of(self.net.record, self.circuit, self.chains)

    @property
    def guard(self) -> Guard | None:
        """What guards it against overload, its way or something before that."""
        return self._guard if isinstance(self._guard, Guard) else None

    @property
    def kind(self) -> str:
        """Code of the kind of device that guards it; empty where that is not known."""
        return self.guard.kind if self.guard else ""

    @property
    def curve(self) -> str:
        """Type of the device that guards it, for a circuit-breaker."""
        return self.guard.curve if self.guard else "unknown"

    @cached_property
    def phase(self) -> str:
        """Its phase; ``all`` for three, ``unknown`` where the record leaves it open."""
        return phase_of(self.net.record, self.circuit, self.guard)

    @property
    def three_phase(self) -> bool:
        """Whether it is on all three phases, by the record."""
        return self.phase == "all"

    @property
    def phase_assumed(self) -> tuple[str, ...]:
        """What is assumed where in a three-phase home no one phase is recorded."""
        is_open = self.phase == "unknown" and self.net.record.home.phases == "three"
        if not is_open:
            return ()
        return (NO_ONE if on_different(self.net.record, self.circuit) else SINGLE,)

    @cached_property
    def board(self) -> Board | None:
        """The board that it starts from."""
        ref = self.way.board if isinstance(self.way, Device) else None
        return self.net.record.find(Board, ref)

    @property
    def is_ring(self) -> bool:
        """Whether it is a ring final by the record."""
        return self.circuit.arrangement == "ring"

    @property
    def feeds_board(self) -> bool:
        """Whether it ends at another board."""
        circuit = self.circuit
        return "distribution" in (circuit.use, circuit.arrangement)

    @cached_property
    def points(self) -> tuple[Point, ...]:
        """The points that are on it."""
        found = points_on(self.net, self.circuit.ref)
        points = (self.net.record.find(Point, ref) for ref in found)
        return tuple(point for point in points if point)

    @property
    def has_sockets(self) -> bool:
        """Whether a socket-outlet is on it, by its use or by its points."""
        on_it = any(point.kind in SOCKETS for point in self.points)
        return self.circuit.use == "sockets" or on_it

    @cached_property
    def earthing(self) -> str:
        """The earthing of what it feeds: of its board, else of the home."""
        own = self.board.earthing if self.board else "supply"
        return own if own in EARTHINGS and own != "unknown" else self._of_home(own)

    @property
    def board_open(self) -> bool:
        """Whether how its board is earthed is not recorded."""
        return bool(self.board and self.board.earthing == "unknown")

    def earthing_needed(self) -> tuple[Need, ...]:
        """Return where the earthing would have to be written down, home and board."""
        home, board, found = self.net.record.home, self.board, []
        if home.earthing == "unknown":
            label = "the earthing arrangement"
            found.append(Need(ref=home.ref, name="earthing", label=label))
        if board and self.board_open:
            label = f"the earthing of what {board.title} feeds"
            found.append(Need(ref=board.ref, name="earthing", label=label))
        return tuple(found)

    @property
    def own_electrode(self) -> bool:
        """Whether its board is earthed otherwise than the home is."""
        own = self.board.earthing if self.board else "supply"
        home = self.net.record.home.earthing
        return own in EARTHINGS and "unknown" not in (own, home) and own != home

    @cached_property
    def chains(self) -> tuple[Chain, ...]:
        """Every way that the supply takes to it."""
        return chains(self.net, self.circuit.ref)

    @cached_property
    def before(self) -> tuple[Circuit, ...] | None:
        """The circuits on the way to it, from the street; None: more ways than one."""
        lines = {
            tuple(step.ref for step in line.steps[:-1] if step.sort == "circuit")
            for line in self.chains
        }
        if len(lines) > 1:
            return None
        refs = lines.pop() if lines else ()
        found = (self.net.record.find(Circuit, ref) for ref in refs)
        return tuple(circuit for circuit in found if circuit)

    @cached_property
    def rcd(self) -> Step | None:
        """The RCD with the smallest IΔn on every way to it; none that failed."""
        each = [[s for s in line.steps if _counts(s)] for line in self.chains]
        if not each or not all(each):
            return None
        small = [min(steps, key=_residual) for steps in each]
        return max(small, key=_residual)

    @cached_property
    def rcds_unrated(self) -> tuple[Step, ...]:
        """The RCDs without an IΔn that may be all that guards it on some way to it."""
        each = [
            [s for s in line.steps if is_rcd(s) and not s.failed]
            for line in self.chains
        ]
        if self.rcd or not each or not all(each):
            return ()
        found = {
            s.ref: s for s in chain.from_iterable(each) if not s.residual_current_ma
        }
        return tuple(found.values())

    def of(self, circuit: Circuit) -> Subject:
        """Return another circuit of the same home."""
        return Subject(self.net, circuit)

    def figure(self, name: str) -> Figure | None:
        """Return a number of the circuit, if it is recorded."""
        return figure_of(self.circuit, name)

    def rated(self) -> Figure | None:
        """Return the rating of the device that guards it, if it is recorded."""
        return self.guard.rated if self.guard else None

    def cannot(self, label: str, *names: str) -> CannotTell:
        """Return that a thing cannot be told, naming those fields that are open.

        ``rated_current_a`` is of the device; all others are of the circuit.
        """
        guard = self._guard if "rated_current_a" in names else None
        why = guard.why if isinstance(guard, CannotTell) else ""
        return CannotTell(label=label, needs=tuple(self._needs(names)), why=why)

    def _needs(self, names: Sequence[str]) -> list[Need]:
        found: list[Need] = []
        for name in names:
            if name == "rated_current_a":
                found += self._rating_needed()
            elif getattr(self.circuit, name) in (None, "unknown"):
                found.append(need_of(self.circuit, name))
        return found

    def _rating_needed(self) -> tuple[Need, ...]:
        if isinstance(self._guard, CannotTell):
            return self._guard.needs
        if self.rated():
            return ()
        item, name = self._guard.item, self._guard.item.title
        label = (
            "the rating of its device"
            if self._guard.is_way
            else f"the rating of {name}"
        )
        field = "fuse_a" if isinstance(item, Point) else "rated_current_a"
        return (need_of(item, field, label),)

    def _of_home(self, own: str) -> str:
        return "unknown" if own == "unknown" else self.net.record.home.earthing


def _counts(step: Step) -> bool:
    return bool(is_rcd(step) and step.residual_current_ma and not step.failed)


def _residual(step: Step) -> Decimal:
    return step.residual_current_ma or Decimal(0)
