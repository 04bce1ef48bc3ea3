"""The symbol of an item: its kind's, or one of those below."""

from __future__ import annotations

from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS, POINT_KINDS, Kind

_CIRCLED_WAVE = (
    '<circle cx="12" cy="12" r="9"/><path d="M6.5 12c1.5-4 4-4 5.5 0s4 4 5.5 0"/>'
)
_CABLE = '<path d="M4 4v16M4 12h13"/><path d="M14 8l5 4l-5 4"/>'
_BOARD = '<rect x="2.5" y="5" width="19" height="14"/><path d="M2.5 19L21.5 5"/>'
_NOT_KNOWN = '<path d="M8 9a4 4 0 1 1 5.5 3.7q-1.5.8-1.5 3.3"/><path d="M12 19.5v.5"/>'
EARTH = '<path d="M12 3v10M4 13h16M7 17h10M10 21h4"/>'
_KINDS: dict[str, dict[str, Kind]] = {
    "device": {**DEVICE_KINDS},
    "intake": {**INTAKE_KINDS},
    "point": {**POINT_KINDS},
}
_SORTS = {"source": _CIRCLED_WAVE, "circuit": _CABLE, "board": _BOARD}


def symbol_of(sort: str, kind: str | None) -> str:
    """Return SVG elements in a box of 24 by 24 for an item of a sort and kind."""
    found = _KINDS.get(sort, {}).get(kind or "")
    if found and found.symbol:
        return found.symbol
    return _SORTS.get(sort, _NOT_KNOWN)
