"""What was measured of a circuit beside what is calculated: neither overrules."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from app.domain.circuits import CircuitAnswer, Part, Working, measured
from app.domain.circuits.side_by_side import beside
from app.domain.days import in_words
from app.domain.record import Circuit, Record, Result
from app.domain.results.over_time import results_of

# Field of a result, its label, and the parts of the arithmetic that it stands beside.
PAIRS = (
    ("r1_r2_ohm", "R1+R2", "r1r2", ""),
    ("zs_ohm", "Zs", "zs", "zs-measured"),
    ("r1_ohm", "r1", "ring-r1", ""),
    ("rn_ohm", "rn", "ring-rn", ""),
    ("r2_ohm", "r2", "ring-r2", ""),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredBeside:
    """One measured figure.

    Attributes:
        label: What was measured.
        shown: The figure with its unit.
        source: Who measured it, when, from which paper.
        says: How it lies to what is calculated, and to its limit.
    """

    label: str
    shown: str
    source: str
    says: tuple[str, ...]


def measured_beside(
    record: Record, circuit: Circuit, answer: CircuitAnswer
) -> tuple[MeasuredBeside, ...]:
    """Return every measured figure that has a calculated one, the newest first."""
    return tuple(
        _pair(record, result, answer, pair)
        for result in results_of(record, circuit.ref)
        for pair in PAIRS
        if getattr(result, pair[0]) is not None
    )


def source_of(record: Record, result: Result) -> str:
    """Return who measured, when, and from which paper that is copied."""
    paper = record.by_ref.get(result.paper or "")
    day = in_words(result.tested_on) if result.tested_on else "day not known"
    from_paper = paper.title if paper else "from no paper named"
    return ", ".join(part for part in (day, from_paper, result.tested_by) if part)


def _pair(
    record: Record,
    result: Result,
    answer: CircuitAnswer,
    pair: tuple[str, str, str, str],
) -> MeasuredBeside:
    name, label, code, limit = pair
    source = source_of(record, result)
    found = measured(label, getattr(result, name), "Ω", source)
    return MeasuredBeside(
        label=label,
        shown=found.shown,
        source=source,
        says=(
            *_beside(answer.part(code), found.value, label, source),
            *_against(answer.part(limit), found.value),
        ),
    )


def _beside(
    part: Part | None, value: Decimal, label: str, source: str
) -> Iterator[str]:
    if part is None or not isinstance(part.found, Working):
        yield "Nothing is calculated to set beside it: the record lacks something."
        return
    yield beside(measured(label, value, part.found.unit, source), part.found).sentence


def _against(part: Part | None, value: Decimal) -> Iterator[str]:
    if part is None or not isinstance(part.found, Working):
        return
    limit, more = part.found, "it is more. Let an electrician look at it."
    says = "it is within that." if value <= limit.value else more
    yield " ".join((f"A measured one may reach {limit.shown}: {says}", *limit.assumes))
