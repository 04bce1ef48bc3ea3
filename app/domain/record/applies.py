"""Which fields of a class apply to which of its kinds."""

from __future__ import annotations

from collections.abc import Mapping

from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS
from app.domain.kinds._kind import DeviceKind, IntakeKind
from app.domain.record._field import FieldSpec, specs
from app.domain.record.items import Item

KINDS: dict[str, Mapping[str, DeviceKind] | Mapping[str, IntakeKind]] = {
    "device": DEVICE_KINDS,
    "intake": INTAKE_KINDS,
}


def fields_of_kind(cls: type[Item], kind: str | None) -> frozenset[str]:
    """Return the fields that apply to a kind; all of the class if it has no kinds."""
    every = frozenset(spec.name for spec in specs(cls))
    kinds = KINDS.get(cls.sort, {})
    if kind is None or kind not in kinds:
        return every
    of_some_kind = {name for each in kinds.values() for name in each.fields}
    return every - of_some_kind | frozenset(kinds[kind].fields)


def hint_of_kind(cls: type[Item], spec: FieldSpec, kind: str | None) -> str:
    """Return the hint of a field, but for a kind that it says nothing of."""
    found = KINDS.get(cls.sort, {}).get(kind or "")
    known = found is not None and kind != "unknown"
    return "" if known and not getattr(found, spec.hinted or "code") else spec.hint


def fields_beside(item: Item) -> tuple[str, ...]:
    """Return the fields of an item that do not apply to its kind."""
    kind = getattr(item, "kind", None)
    applying = fields_of_kind(type(item), kind)
    return tuple(s.name for s in specs(type(item)) if s.name not in applying)
