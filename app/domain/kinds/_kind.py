"""What a kind is, and how the kinds of a folder are found.

A kind is one module of ``devices``, ``intake`` or ``points`` holding ``KIND``.  Its
docstring is the help text: the first line names it, the rest explains it.
"""

from __future__ import annotations

import importlib
import pkgutil
from dataclasses import dataclass
from inspect import cleandoc
from types import ModuleType
from typing import Literal, TypeVar

Protection = Literal["overload", "short_circuit", "earth_leakage"]
Poles = Literal["line", "line_and_neutral", "none"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """What every kind has.

    Attributes:
        code: Stored in the record, never changed.
        label: The trade's name, as a sentence would begin.
        order: Where it stands in a list of choices; lower is earlier.
        symbol: SVG elements in a box of 24 by 24, drawn in ``currentColor``.
    """

    code: str
    label: str
    order: int
    symbol: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DeviceKind(Kind):
    """A kind of device on a board.

    Attributes:
        short: Up to eight letters for the face of the device in a drawing.
        fields: Fields of ``Device`` that apply, beyond those every device has.
        protects: What it protects what it feeds against.
        opens: Poles that it usually opens; the record's own value goes first.
        switches_itself: Whether it goes on and off by itself, so that it parts nothing
            from the supply for anyone.
        outgoing: Whether it is a way: a position that may feed a circuit.
        modules: Width that it usually takes, in modules.
    """

    short: str
    fields: tuple[str, ...] = ()
    protects: tuple[Protection, ...] = ()
    opens: Poles = "none"
    switches_itself: bool = False
    outgoing: bool = False
    modules: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class IntakeKind(Kind):
    """A kind of item between the street and the boards, or of the earthing.

    Attributes:
        usual_owner: Owner offered as a guess to confirm, a code of ``OWNERS``.
        who_opens: One sentence on who may open or alter it.
        carries_supply: False for the earthing and for what only gives orders.
        fields: Fields of ``IntakeItem`` that apply, beyond those every item has.
        protects: What it protects what it feeds against.
        opens: Poles that it opens when it is switched or withdrawn.
        switches_itself: Whether it goes on and off by itself.
    """

    usual_owner: str
    who_opens: str
    carries_supply: bool = True
    fields: tuple[str, ...] = ()
    protects: tuple[Protection, ...] = ()
    opens: Poles = "none"
    switches_itself: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PointKind(Kind):
    """A kind of point.

    Attributes:
        group: Kinds that usually share a circuit in a room share a group.
        has_fuse: Whether it holds a fuse of its own.
        switches: Poles opened by the switch in it, if every one has a switch.
        guards_onward: Whether an RCD in it guards what is tied behind it; in a
            socket-outlet it guards that outlet, and perhaps nothing more.
        often_battery: Whether one on the mains often has a battery of its own too, by
            which it stays on without its supply.
        draws: Whether it is a load itself; a switch, a box, a plate only pass it on.
    """

    group: Literal["sockets", "lights", "alarms", "fixed", "other"]
    has_fuse: bool = False
    switches: Poles = "none"
    guards_onward: bool = False
    often_battery: bool = False
    draws: bool = True


K = TypeVar("K", bound=Kind)


def found_in(package: ModuleType, form: type[K]) -> dict[str, K]:
    """Return the kinds of a folder by code, in the order they are offered.

    Raises:
        ValueError: A module holds no kind of this form, or a code is used twice.
    """
    found: list[K] = []
    for module in _modules(package):
        kind = getattr(module, "KIND", None)
        if not isinstance(kind, form):
            raise ValueError(f"{module.__name__} holds no KIND")  # noqa: TRY004
        found.append(kind)
    kinds = {kind.code: kind for kind in sorted(found, key=lambda k: (k.order, k.code))}
    if len(kinds) != len(found):
        raise ValueError(f"a code is used twice in {package.__name__}")
    return kinds


def help_texts(package: ModuleType) -> dict[str, str]:
    """Return what each kind's module says about it, by the code of the kind."""
    return {m.KIND.code: cleandoc(m.__doc__ or "") for m in _modules(package)}


def _modules(package: ModuleType) -> list[ModuleType]:
    names = [info.name for info in pkgutil.iter_modules(package.__path__)]
    return [
        importlib.import_module(f"{package.__name__}.{name}")
        for name in names
        if not name.startswith("_")
    ]
