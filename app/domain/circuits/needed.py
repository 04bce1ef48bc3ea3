"""A number of the record as a figure, and what of it is open."""

from __future__ import annotations

from decimal import Decimal

from app.domain.circuits._working import CannotTell, Figure, Need, recorded
from app.domain.record import Circuit, Item, specs


def figure_of(item: Item, name: str) -> Figure | None:
    """Return a number of an item, if it is recorded; nought is no rating or size."""
    value = getattr(item, name)
    if value is None or (value == 0 and name not in ("grouped_with", "insulation_mm")):
        return None
    spec = next(spec for spec in specs(type(item)) if spec.name == name)
    where = f"{item.title} ({item.ref})"
    return recorded(spec.label, Decimal(value), spec.unit, where)


def need_of(item: Item, name: str, label: str = "") -> Need:
    """Return that a field of an item is open."""
    spec = next(spec for spec in specs(type(item)) if spec.name == name)
    words = spec.label[0].lower() + spec.label[1:]
    named = words if words.startswith("how ") else f"the {words}"
    return Need(ref=item.ref, name=name, label=label or named)


def needs_elsewhere(found: CannotTell, circuit: Circuit, here: Circuit) -> CannotTell:
    """Return what is missing with the circuit named, where it is another than this."""
    if circuit.ref == here.ref:
        return found
    title = circuit.title
    needs = tuple(
        need.model_copy(update={"label": f"{need.label} ({title})"})
        for need in found.needs
    )
    why = f"{title}: {found.why}" if found.why else ""
    return found.model_copy(update={"needs": needs, "why": why})
