"""A circuit's cable in words short enough for a diagram."""

from __future__ import annotations

from app.domain.record import Circuit
from app.domain.record.choices import ARRANGEMENTS, CABLES
from app.drawing.phrase import joined, quantity

NO_SIZE = "cable size not known"


def cable_of(circuit: Circuit) -> tuple[str, bool]:
    """Return what is known of a circuit's cable, and whether its size is."""
    kind = _inside(CABLES[circuit.cable]) if circuit.cable != "unknown" else ""
    known = circuit.arrangement != "unknown"
    laid = _inside(ARRANGEMENTS[circuit.arrangement]) if known else ""
    length = quantity(circuit.length_m, "m") if circuit.length_m else ""
    size = _size(circuit)
    return joined([size or NO_SIZE, kind, laid, length]), bool(size)


def _inside(words: str) -> str:
    """Write words as they stand inside a sentence; PVC stays as it is."""
    return words[:1].lower() + words[1:]


def _size(circuit: Circuit) -> str:
    """Return line and protective conductor, such as 2.5/1.5 mm²."""
    if not circuit.line_mm2:
        return ""
    line = f"{circuit.line_mm2.normalize():f}"
    if circuit.has_cpc == "no":
        return f"{line}\xa0mm², no protective conductor"
    if circuit.cpc_mm2:
        return f"{line}/{circuit.cpc_mm2.normalize():f}\xa0mm²"
    return f"{line}\xa0mm²"
