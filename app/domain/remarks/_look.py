"""All remarks: found by themselves, looked through once, in the order that matters."""

from __future__ import annotations

import hashlib
import importlib
import pkgutil
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from inspect import cleandoc
from types import ModuleType

from app.domain.record import Aside, Item, Record, specs
from app.domain.remarks._kind import (
    EXTRA_SECTION,
    GROUPS,
    RANKS,
    SECTIONS,
    CannotTell,
    Found,
    Look,
    Need,
    Outcome,
    Remark,
    RemarkKind,
)
from app.domain.remarks._sight import Sight

FREE_TEXT = {"text", "long"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """One remark: what it is, what its text says, and how it looks.

    Attributes:
        kind: Its code, rank and group.
        title: First line of its text, without the full stop.
        sections: Heading and text of each section.
        look: Yields what it finds in a sight.
    """

    kind: RemarkKind
    title: str
    sections: Mapping[str, str]
    look: Look


def units_in(package: ModuleType) -> dict[str, Unit]:
    """Return the remarks of a package by code, the worst rank first.

    Raises:
        ValueError: A module holds no remark, or a code is used twice.
    """
    names = [info.name for info in pkgutil.iter_modules(package.__path__)]
    modules = [
        importlib.import_module(f"{package.__name__}.{name}")
        for name in names
        if not name.startswith("_")
    ]
    found = sorted((_unit(module) for module in modules), key=_unit_order)
    units = {unit.kind.code: unit for unit in found}
    if len(units) != len(found):
        raise ValueError("a code of a remark is used twice")
    return units


def run(unit: Unit, sight: Sight) -> Iterator[Remark]:
    """Yield what one remark finds, in the shape that pages and programs read."""
    for outcome in unit.look(sight):
        yield _remark(unit, sight, outcome)


def in_order(remarks: Iterable[Remark]) -> tuple[Remark, ...]:
    """Return remarks with the worst first, and what cannot be told last."""
    return tuple(sorted(remarks, key=_order))


def with_asides(record: Record, remarks: Iterable[Remark]) -> Iterator[Remark]:
    """Yield remarks, each marked if it is set aside, or back since its facts changed.

    Where one is set aside twice, the one that still holds counts.
    """
    asides: dict[tuple[str, str], list[Aside]] = {}
    for aside in record.asides:
        key = (aside.remark, aside.about or record.home.ref)
        asides.setdefault(key, []).append(aside)
    for remark in remarks:
        of_it = asides.get((remark.code, remark.about[0]), [])
        of_it.sort(key=lambda aside: (aside.facts != remark.facts, aside.ref))
        yield _aside(remark, of_it[0]) if of_it else remark


def _aside(remark: Remark, aside: Aside) -> Remark:
    state = "set" if aside.facts == remark.facts else "back"
    return remark.model_copy(update={"aside": state, "aside_ref": aside.ref})


def _unit(module: ModuleType) -> Unit:
    kind, look = getattr(module, "KIND", None), getattr(module, "look", None)
    if not isinstance(kind, RemarkKind) or look is None:
        raise ValueError(f"{module.__name__} holds no remark")
    title, sections = read_sections(module.__doc__ or "")
    return Unit(kind=kind, title=title, sections=sections, look=look)


def read_sections(text: str) -> tuple[str, dict[str, str]]:
    """Return the title and the sections of a docstring, each as one paragraph."""
    head, *lines = cleandoc(text).split("\n")
    sections: dict[str, str] = {}
    heading = ""
    for line in lines:
        if line.removesuffix(":") in (*SECTIONS, EXTRA_SECTION):
            heading = line.removesuffix(":")
            sections[heading] = ""
        elif heading:
            sections[heading] = f"{sections[heading]} {line.strip()}".strip()
    return head.removesuffix("."), sections


def _remark(unit: Unit, sight: Sight, outcome: Outcome) -> Remark:
    told = isinstance(outcome, Found)
    figures = outcome.figures if isinstance(outcome, Found) else ()
    needs = outcome.needs if isinstance(outcome, CannotTell) else ()
    return Remark(
        code=unit.kind.code,
        title=unit.title,
        rank=unit.kind.rank,
        group=unit.kind.group,
        outcome="remark" if told else "cannot_tell",
        about=_known(sight, outcome.about),
        sentence=_sentence(sight, outcome),
        figures=figures,
        needs=needs,
        to_do=unit.sections.get("What to do", ""),
        source=unit.sections.get("Source", ""),
        not_retrospective=unit.sections.get(EXTRA_SECTION, ""),
        facts=_mark(sight, outcome),
    )


def _known(sight: Sight, refs: tuple[str, ...]) -> tuple[str, ...]:
    """Leave out what is named in the record but is not in it."""
    here = sight.record.by_ref
    known = (ref for ref in refs if ref in here or ref == sight.home)
    return tuple(dict.fromkeys(known)) or (sight.home,)


def _sentence(sight: Sight, outcome: Outcome) -> str:
    if isinstance(outcome, Found):
        return outcome.sentence
    if outcome.why:
        return f"Cannot tell: {outcome.why.removesuffix('.')}."
    return _needs(sight, outcome.needs)


def _needs(sight: Sight, needs: tuple[Need, ...]) -> str:
    of: dict[str, dict[str, None]] = {}
    for need in needs:
        of.setdefault(need.what, {})[need.ref] = None
    parts = [
        what if list(refs) == [sight.home] else f"{what}, for {sight.names(refs)}"
        for what, refs in of.items()
    ]
    return f"Cannot tell: needs {'; '.join(parts)}."


def _mark(sight: Sight, outcome: Outcome) -> str:
    """Return a short mark of what is recorded of everything an outcome looked at.

    Names, notes and other free words do not count.
    """
    record = sight.record
    items = [record.by_ref.get(ref, record.home) for ref in outcome.about]
    figures = outcome.figures if isinstance(outcome, Found) else ()
    needs = outcome.needs if isinstance(outcome, CannotTell) else ()
    parts = (outcome.about, figures, needs, [_facts(item) for item in items])
    return hashlib.sha256(repr(parts).encode()).hexdigest()[:16]


def _facts(item: Item) -> list[object]:
    return [
        getattr(item, spec.name)
        for spec in specs(type(item))
        if spec.type not in FREE_TEXT
    ]


def _unit_order(unit: Unit) -> tuple[int, int, str]:
    kind = unit.kind
    return list(RANKS).index(kind.rank), list(GROUPS).index(kind.group), kind.code


def _order(remark: Remark) -> tuple[bool, int, int, str]:
    """Sorting is stable: within a kind, the order of the sight is kept."""
    rank, group = list(RANKS), list(GROUPS)
    return (
        remark.outcome != "remark",
        rank.index(remark.rank),  # type: ignore[arg-type]
        group.index(remark.group),
        remark.code,
    )
