"""A board's labels typed as a list, one way a line, turned into its ways."""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import pairwise

from app.domain.kinds import DEVICE_KINDS
from app.domain.record import Record
from app.domain.spreadsheet.growing import Asked, Making
from app.domain.spreadsheet.made import Made, finished, making_of
from app.domain.spreadsheet.marks import IN_LABEL, device_marks
from app.domain.spreadsheet.rows import CellFault, MadeRow, RowIn
from app.domain.spreadsheet.targets import TARGETS
from app.domain.spreadsheet.values import plain, tidied
from app.domain.spreadsheet.ways import make_way
from app.domain.spreadsheet.words import USES

MOST_LINES = 200
NUMBERED = re.compile(
    r"(?:way\s+)?(\d{1,3}[A-Za-z]?|[A-Za-z]\d{1,3})(?:[.):\t ]+|-(?=\S))(.*)",
    re.IGNORECASE,
)
ALONE = re.compile(r"(?:way\s+)?(\d{1,3}[A-Za-z]?)", re.IGNORECASE)
# Labels that name no circuit.
NO_CIRCUIT = frozenset({"", "-", "spare", "blank", "not used", "unused", "empty"})
TARGET_BY_CODE = {target.code: target for target in TARGETS["ways"]}
COLUMNS: Mapping[str, str] = {
    "way": "way",
    "label_found": "label",
    "device": "device",
    "ways.circuit": "circuit",
}


def made_of_list(text: str, record: Record, asked: Asked) -> Made:
    """Return what a typed list makes of a board: devices, and circuits by their labels.

    Every label is kept as found: that a way feeds what its label says is the label's
    word, and nobody's who has looked.
    """
    making = making_of(record, asked)
    rows: list[MadeRow] = []
    faults: list[CellFault] = []
    lines = text.splitlines()
    if len(lines) > MOST_LINES:
        reason = f"The list has {len(lines)} lines; {MOST_LINES} is the most."
        faults.append(CellFault(row=0, column="", typed="", reason=reason))
        return finished(making, rows, faults, [])
    for number, line in enumerate(lines, 1):
        if tidied(line):
            _take(number, line, making, rows, faults)
    if not rows and not faults:
        reason = "Type one way a line, such as: 1 Sockets up B32"
        faults.append(CellFault(row=0, column="", typed="", reason=reason))
    return finished(making, rows, faults, [])


def _take(
    number: int,
    line: str,
    making: Making,
    rows: list[MadeRow],
    faults: list[CellFault],
) -> None:
    row = RowIn(
        number=number,
        cells=cells_of(line, making.asked.kind_unsaid),
        columns=COLUMNS,
        targets=TARGET_BY_CODE,
        faults=[],
        line=True,
    )
    made = make_way(row, making)
    faults.extend(_each_once(row.faults))
    if made:
        rows.append(made)


def _each_once(faults: list[CellFault]) -> list[CellFault]:
    """Return the faults of a line; the circuit's name is its label, wrong once."""
    label, circuit = COLUMNS["label_found"], COLUMNS["ways.circuit"]
    if not any(fault.column == label for fault in faults):
        return faults
    return [fault for fault in faults if fault.column != circuit]


def cells_of(line: str, kind_unsaid: str = "unknown") -> dict[str, str]:
    """Return a line in its parts: way, label, device, circuit."""
    shown = line.strip()
    hit = NUMBERED.fullmatch(shown)
    alone = ALONE.fullmatch(shown)
    way, rest = (hit[1], hit[2]) if hit else ((alone[1], "") if alone else ("", shown))
    marks = device_marks(rest, IN_LABEL)
    label = marks.rest.lstrip("-– ")
    kind = marks.values.get("kind", kind_unsaid)
    name = label if DEVICE_KINDS[kind].outgoing else ""
    name = "" if plain(name) in NO_CIRCUIT else name
    cells = {"way": way, "device": marks.taken, "ways.circuit": name, "use": _use(name)}
    if label or tidied(rest).startswith("-"):
        cells["label_found"] = label or "-"
    return {code: text for code, text in cells.items() if text}


def _use(name: str) -> str:
    """Return what a label says that a circuit is for, if its words say one thing."""
    words = plain(name).split()
    pairs = [f"{a} {b}" for a, b in pairwise(words)]
    singular = [w.removesuffix("s") for w in (*words, *pairs)]
    uses = {USES[word] for word in (*words, *pairs, *singular) if word in USES}
    return uses.pop() if len(uses) == 1 else ""
