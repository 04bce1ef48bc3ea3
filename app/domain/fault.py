"""What a fault of the record is, and the references that one can be about."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from app.domain.network import Network
from app.domain.record import SORTS, FieldSpec, Item, specs
from app.domain.record._field import Model, field

_LINKS = {cls: tuple(s for s in specs(cls) if s.sorts) for cls in SORTS.values()}


class Fault(Model):
    """Something odd about the record itself."""

    code: str = field("Code", ...)
    wrong: bool = field("Cannot be true as written", ...)
    subjects: tuple[str, ...] = field("References it is about", ())
    sentence: str = field("What is odd", ...)
    remedy: str = field("How to put it right", ...)


Check = Callable[[Network], Iterator[Fault]]


def links_of(item: Item) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    """Yield each reference that an item holds: field, reference, sorts it may name."""
    for spec, ref in links_with_specs(item):
        yield spec.name, ref, spec.sorts


def links_with_specs(item: Item) -> Iterator[tuple[FieldSpec, str]]:
    """Yield each reference that an item holds, with the field it stands in."""
    for spec in _LINKS[type(item)]:
        value = getattr(item, spec.name)
        for ref in value if isinstance(value, tuple) else (value,):
            if ref is not None:
                yield spec, ref


def said(item: Item) -> str:
    """Return how a sentence names a thing: its title, and its reference."""
    return f"{item.title} ({item.ref})"
