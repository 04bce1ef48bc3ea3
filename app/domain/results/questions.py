"""Values that a slip of the pen would explain: each asked about, none refused.

Nothing here judges the installation: it asks whether the paper says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from app.domain.network import network
from app.domain.rcd_times import GENERAL_MS
from app.domain.record import Board, Circuit, Device, Record, Result
from app.domain.results.rcd_times import longest_at
from app.domain.results.sheet import COLUMNS, Row

PRACTICE = "Common practice, no source."
# Longer than any circuit of a home makes it: common practice, no source.
MOST_OHM = {
    "r1_ohm": 5, "rn_ohm": 5, "r2_ohm": 5, "r1_r2_ohm": 10, "r2_alone_ohm": 10,
}  # fmt: skip
EARTHED = ("tn_s", "tn_c_s")
# BS 7671:2018+A2:2022, Table 64: least insulation resistance at 500 V, from memory.
INSULATION = ("live_live_mohm", "live_earth_mohm")
LEAST_MOHM = 1
# Guidance Note 3: the ends of a ring's line and neutral within 0.05 Ω, from memory.
MOST_APART = Decimal("0.05")
LONGEST = "rcd_ms, at most"
FIGURES = {column.name: column for column in COLUMNS if column.unit}


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """Something to look at again on the paper.

    Attributes:
        row: Reference of what was tested.
        column: Name of the field.
        sentence: What is asked.
        source: Where the figure behind it stands.
    """

    row: str
    column: str
    sentence: str
    source: str

    @property
    def key(self) -> str:
        """Its name in a form."""
        return f"{self.column}-{self.row}"


def questions(
    row: Row,
    values: Mapping[str, object],
    earthing: str,
    longest: Callable[[str], int | None] = lambda _ref: GENERAL_MS,
) -> tuple[Question, ...]:
    """Return what to look at again in a row, one question a cell at the most.

    Args:
        row: The row.
        values: Its values by field.
        earthing: Earthing arrangement there.
        longest: Gives the longest time of the RCD at a thing [ms]; None: it is open.
    """
    numbers = {n: v for n, v in values.items() if isinstance(v, Decimal)}
    for name in INSULATION:
        if values.get(name.replace("_mohm", "_over")) == "under" and name in numbers:
            numbers[f"{name}, at most"] = numbers[name]
    if numbers.get("rcd_ms", 0) > GENERAL_MS:
        numbers[LONGEST] = Decimal(longest(row.ref) or GENERAL_MS)
    found: dict[str, Question] = {}
    for rule in RULES:
        for column, sentence, source in rule(numbers, earthing):
            question = Question(
                row=row.ref, column=column, sentence=sentence, source=source
            )
            found.setdefault(column, question)
    return tuple(found.values())


def questions_of(record: Record, result: Result) -> tuple[Question, ...]:
    """Return what to look at again in a result, wherever it came from."""
    about = result.about or record.home.ref
    row = Row(ref=about, title="", of="circuit", result=result)
    names = [c.name for c in COLUMNS] + [c.sign for c in COLUMNS if c.sign]
    values = {name: getattr(result, name) for name in names}
    earthing = earthing_at(record, about)
    return questions(
        row, values, earthing, lambda ref: longest_at(network(record), ref)
    )


def earthing_at(record: Record, ref: str) -> str:
    """Return the earthing arrangement at a thing: of its board, else of the home."""
    item = record.by_ref.get(ref)
    if isinstance(item, Circuit):
        item = record.find(Device, next(iter(item.ways), None))
    if isinstance(item, Device):
        item = record.find(Board, item.board)
    own = item.earthing if isinstance(item, Board) else "supply"
    return record.home.earthing if own == "supply" else own


Numbers = Mapping[str, Decimal]
Asked = Iterator[tuple[str, str, str]]


def _too_many_ohms(numbers: Numbers, _earthing: str) -> Asked:
    for name, most in MOST_OHM.items():
        value = numbers.get(name)
        if value is not None and value > most:
            head, meant = FIGURES[name].head, _plain(value / 1000)
            yield (
                name,
                f"{head} of {_plain(value)} Ω? Did you mean {meant} Ω?",
                PRACTICE,
            )


def _loop(numbers: Numbers, earthing: str) -> Asked:
    zs, ze, own = (numbers.get(n) for n in ("zs_ohm", "ze_ohm", "r1_r2_ohm"))
    if zs is not None and own is not None and zs < own:
        yield (
            "zs_ohm",
            f"Zs of {_plain(zs)} Ω is less than R1+R2, a part of it. The right row?",
            "Zs = Ze + (R1+R2).",
        )
    if zs is not None and zs > 20 and earthing in EARTHED:
        meant = _plain(zs / 1000)
        yield "zs_ohm", f"Zs of {_plain(zs)} Ω? Did you mean {meant} Ω?", PRACTICE
    if ze is not None and ze > 5 and earthing in EARTHED:
        meant = _plain(ze / 1000)
        yield "ze_ohm", f"Ze of {_plain(ze)} Ω? Did you mean {meant} Ω?", PRACTICE


def _ring(numbers: Numbers, _earthing: str) -> Asked:
    r1, rn, r2 = (numbers.get(n) for n in ("r1_ohm", "rn_ohm", "r2_ohm"))
    if r1 is not None and rn is not None and abs(r1 - rn) > MOST_APART:
        yield (
            "rn_ohm",
            f"r1 and rn lie {_plain(abs(r1 - rn))} Ω apart. Do both stand so?",
            "IET Guidance Note 3: within 0.05 Ω, from memory.",
        )
    if r1 is not None and r2 is not None and r2 < r1 - MOST_APART:
        yield (
            "r2_ohm",
            f"r2 of {_plain(r2)} Ω is less than r1, as seldom is. Do both stand so?",
            PRACTICE,
        )


def _insulation(numbers: Numbers, _earthing: str) -> Asked:
    for name in INSULATION:
        value = numbers.get(name)
        under = f"{name}, at most" in numbers
        if value is None or (value >= LEAST_MOHM and not under):
            continue
        said = f"{'<' if under else ''}{_plain(value)} MΩ"
        may = "may be " if value > LEAST_MOHM else ""
        yield (
            name,
            f"{said}, {may}less than {LEAST_MOHM} MΩ: does it stand so?",
            "BS 7671:2018+A2:2022, Table 64, from memory.",
        )


def _rcd(numbers: Numbers, _earthing: str) -> Asked:
    value = numbers.get("rcd_ms")
    if value is None:
        return
    if value < 1:
        meant = _plain(value * 1000)
        yield "rcd_ms", f"{_plain(value)} ms? Did you mean {meant} ms?", PRACTICE
    longest = numbers.get(LONGEST, value)
    if value > longest:
        yield (
            "rcd_ms",
            f"{_plain(value)} ms is longer than {longest} ms. Does the paper say so?",
            "BS EN 61008-1: at IΔn 300 ms for a general RCD, 500 for a time-delayed.",
        )


def _fault_current(numbers: Numbers, _earthing: str) -> Asked:
    value = numbers.get("fault_current_ka")
    if value is not None and value > 25:
        meant = _plain(value / 1000)
        yield (
            "fault_current_ka",
            f"{_plain(value)} kA? Did you mean {meant} kA?",
            PRACTICE,
        )


RULES = (_too_many_ohms, _loop, _ring, _insulation, _rcd, _fault_current)


def _plain(value: Decimal) -> str:
    return f"{value.normalize():f}"
