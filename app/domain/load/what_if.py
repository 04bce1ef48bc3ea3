"""What would be, if something more were connected: beside today, and what to do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal, InvalidOperation
from typing import Annotated

from app.domain.circuits import recorded
from app.domain.circuits.current import by_watts
from app.domain.load.against import Against, supply_fuses
from app.domain.load.demand import Demand, demand
from app.domain.load.differ import Said
from app.domain.load.loads import Load
from app.domain.load.phases import PhaseDemand, by_phase
from app.domain.network import Network
from app.domain.record._field import Model, Number, OneOf, field
from app.domain.record.choices import YES_NO
from app.errors import InvalidError

FROM_MEMORY = "from memory"
MOST_KW = Decimal(50)
HELD_BACK = "held back"
# What may be added: code, words, group of loads.
ADDABLE: dict[str, tuple[str, str]] = {
    "shower": ("Electric shower", "instant_water"),
    "charger": ("Vehicle charger", "vehicle"),
    "heat-pump": ("Heat pump", "heat_pump"),
    "cooker": ("Cooker or hob", "cooking"),
    "immersion": ("Immersion heater", "storage_water"),
    "heater": ("Electric heater", "space_heating"),
    "battery": ("Battery", "battery"),
}
TO_THE_NETWORK = frozenset({"charger", "heat-pump", "battery"})


class Addition(Model):
    """One thing more."""

    kind: str = field("What", ...)
    kw: Number = field("Its load", ..., unit="kW")
    managed: bool = field("Held back when the home draws much", default=False)

    @property
    def title(self) -> str:
        """What it is called."""
        held = f", {HELD_BACK}" if self.managed else ""
        return f"{ADDABLE[self.kind][0]}, {self.kw} kW{held}"


class Asked(Model):
    """What a form asks to add; a load that is left open adds nothing."""

    shower_kw: Number | None = field(
        "Electric shower", unit="kW", low=0, high=50, hint="Such as 8.5.", blank=True
    )
    charger_kw: Number | None = field(
        "Vehicle charger", unit="kW", low=0, high=50, hint="Such as 7.4.", blank=True
    )
    charger_managed: Annotated[str, OneOf(YES_NO)] = field(
        "Is the charger held back when the home draws much", "no"
    )
    heat_pump_kw: Number | None = field(
        "Heat pump",
        unit="kW",
        low=0,
        high=50,
        hint="The electricity that it takes, not the heat that it gives.",
        blank=True,
    )
    cooker_kw: Number | None = field(
        "Cooker or hob", unit="kW", low=0, high=50, blank=True
    )

    def additions(self) -> tuple[Addition, ...]:
        """Return what is to be added."""
        managed = self.charger_managed == "yes"
        loads = (
            ("shower", self.shower_kw, False),
            ("charger", self.charger_kw, managed),
            ("heat-pump", self.heat_pump_kw, False),
            ("cooker", self.cooker_kw, False),
        )
        return tuple(
            Addition(kind=kind, kw=kw, managed=held) for kind, kw, held in loads if kw
        )


class WhatIf(Model):
    """The home with something more, beside the home today."""

    additions: tuple[Addition, ...] = field("What is added", ())
    then: Demand = field("Demand then; of three phases, all of them together", ...)
    phases: tuple[PhaseDemand, ...] = field("Phase by phase, in a three-phase home", ())
    against: tuple[Against, ...] = field("Against the supply fuse, then", ())
    to_do: tuple[Said, ...] = field("What to do first", ())


def addition(text: str) -> Addition:
    """Read one addition, such as ``shower=8.5`` or ``charger=7.4:held-back``.

    Raises:
        InvalidError: It cannot be read.
    """
    kind, _, amount = text.partition("=")
    number, _, how = amount.partition(":")
    if kind not in ADDABLE:
        known = ", ".join(ADDABLE)
        raise InvalidError(f"“{kind}” cannot be added; these can: {known}.")
    if how not in ("", "held-back"):
        raise InvalidError(f"“{how}” is not understood: only held-back may follow.")
    return Addition(kind=kind, kw=kilowatts(number), managed=bool(how))


def kilowatts(text: str) -> Decimal:
    """Read a number of kilowatts; a comma is taken for a point.

    Raises:
        InvalidError: It is no such number.
    """
    try:
        value = Decimal(text.strip().replace(",", "."))
    except InvalidOperation:
        value = Decimal("NaN")
    fits = value.is_finite() and 0 < value <= MOST_KW and _places(value) <= 3
    if not fits:
        raise InvalidError(
            f"Enter the load in kW, more than 0 and at most {MOST_KW}, such as 7.4."
        )
    return value


def what_if(
    net: Network, loads: tuple[Load, ...], additions: Sequence[Addition]
) -> WhatIf:
    """Return the demand with something more, and what to do first."""
    every = (*loads, *(_load(each) for each in additions))
    then = supply_fuses(net, every)
    return WhatIf(
        additions=tuple(additions),
        then=demand(net, every),
        phases=by_phase(net, every),
        against=then,
        to_do=tuple(_to_do(net, additions, then)),
    )


def _load(each: Addition) -> Load:
    watts = recorded("Load", each.kw * 1000, "W", "as asked here")
    return Load(
        title=each.title,
        group=ADDABLE[each.kind][1],
        current=by_watts(watts),
        managed=each.managed,
        phase="unknown",
    )


def _to_do(
    net: Network, additions: Sequence[Addition], then: tuple[Against, ...]
) -> Iterator[Said]:
    looped = net.record.home.looped
    if any(each.rated is None for each in then):
        text = "Find out the rating of the supply fuse: ask the network."
        yield Said(text=text)
    if looped == "yes":
        text = (
            "Ask the network before anything is added: the supply is looped, so that "
            "two homes share one cable."
        )
        yield Said(text=text, source=FROM_MEMORY)
    elif looped == "unknown":
        text = (
            "Ask the network whether the supply is looped with next door: the record "
            "does not say."
        )
        yield Said(text=text, source=FROM_MEMORY)
    if any(each.kind in TO_THE_NETWORK for each in additions):
        text = (
            "The network wants to hear of vehicle chargers, heat pumps and batteries, "
            "of some before they go in. Ask whoever fits it who tells the network."
        )
        yield Said(text=text, source=FROM_MEMORY)
    if any(each.sign == "beyond" for each in then):
        text = (
            "On paper it is more than the supply fuse: ask the network what it can "
            "give, and an electrician whether the new load can be held back."
        )
        yield Said(text=text)
    text = "Ask an electrician whether board, tails and earthing can take it."
    yield Said(text=text)


def _places(value: Decimal) -> int:
    exponent = value.as_tuple().exponent
    return -exponent if isinstance(exponent, int) else 0
