"""What a column may hold: fields of the record, and what stands beside them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from app.domain.record import Circuit, Device, FieldSpec, Item, Point, specs

Kind = Literal["circuits", "points", "ways"]
KINDS: Mapping[str, str] = {
    "circuits": "Circuits",
    "points": "Points",
    "ways": "Ways of a board",
}
assert set(KINDS) == set(get_args(Kind))  # noqa: S101
CLASSES: Mapping[str, type[Item]] = {
    "circuits": Circuit,
    "points": Point,
    "ways": Device,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """What a column may hold.

    Attributes:
        code: Its name: that of the field, or its own.
        label: Its words.
        words: Headings by which it is guessed, in plain letters.
        spec: The field, if it is one.
        sort: Sort of the item that has the field.
    """

    code: str
    label: str
    words: tuple[str, ...]
    spec: FieldSpec | None = None
    sort: str = ""


# Headings as they are met: common practice, no source.
_WORDS: Mapping[str, str] = {
    "ref": "reference; id",
    "circuit.number": "circuit no; circuit number; cct no; cct; number; no",
    "circuit.name": "circuit; circuit name; name; description; designation; "
    "circuit description; circuit designation",
    "circuit.use": "use; used for; type of circuit; purpose; serves",
    "circuit.arrangement": "arrangement; ring or radial; ring radial; wiring; topology",
    "circuit.cable": "cable; cable type; type of cable; wiring type",
    "circuit.line_mm2": "live csa; line csa; l csa; live; line; csa; line conductor",
    "circuit.cpc_mm2": "cpc; cpc csa; earth csa; earth; protective conductor",
    "circuit.method": "method; installation method; ref method; reference method",
    "circuit.length_m": "length; cable length; run",
    "circuit.installed": "installed; year; when installed; date installed; "
    "when it was put in",
    "circuit.connected_w": "load; connected load; watts; power",
    "circuit.floor_area_m2": "floor area; area served; area",
    "circuit.grouped_with": "grouping; grouped with",
    "circuit.colours": "colours; colors; wire colours",
    "device.rated_current_a": "rating; rated current; amps; in; size; a; current; "
    "mcb rating; device rating; breaker size; fuse rating",
    "device.curve": "type; curve; mcb type; breaker type; tripping type",
    "device.residual_current_ma": "rcd ma; ma; idn; i n; rcd rating; residual current",
    "device.rcd_type": "rcd type",
    "device.breaking_capacity_ka": "ka; breaking capacity; icn",
    "device.poles": "poles; pole; breaks",
    "device.kind": "device; protective device; what it is; device type; kind",
    "device.label_found": "label; label as found; description; circuit; name; "
    "designation; marked",
    "device.in_use": "in use; used",
    "device.way": "way; way no; way number; position; no; number",
    "device.modules": "modules; width",
    "device.note": "note; notes; remarks; comments; comment",
    "circuit.note": "note; notes; remarks; comments; comment",
    "point.note": "note; notes; remarks; comments; comment",
    "point.kind": "what; what it is; type; kind; point; item; accessory; fitting",
    "point.place": "where; where in the room; position; place; location in room",
    "point.name": "name; label",
    "point.count": "count; qty; quantity; how many; number of; no off; number",
    "point.connection": "how joined; spur; connection; joined",
    "point.fuse_a": "fuse; fuse a; fuse rating",
    "point.residual_current_ma": "rcd; rcd ma; ma",
    "point.care": "care; missed; important; critical",
    "point.load_w": "load; watts; power; w; kw",
    "point.outdoor": "outdoor; outdoors; outside",
    "point.ip": "ip; ip code; ip rating",
    "point.current": "runs on; supply",
    "point.metal": "metal",
    "point.battery_backed": "battery",
    "point.looked_behind": "looked behind",
    "way": "way; ways; way no; way number; position; device no; mcb no; breaker",
    "board": "board; db; consumer unit; cu; distribution board; fuse box",
    "sizes": "cable size; size; csa; conductor size; cable csa; mm2",
    "device": "device; protective device; mcb; breaker; protection; fuse; ocpd",
    "room": "room; location; area",
    "storey": "storey; floor; level",
    "circuit": "circuit; circuit no; circuit number; cct; circuit name; tied to; "
    "fed from; "
    "fed by; feeds",
    "ways.circuit": "feeds; circuit it feeds; serves",
    "fed_from": "fed from; rcd; behind rcd; fed by; rcd group",
}
# Left to the pages of the record: dates, marks of work, and what is settled elsewhere.
_NOT_TAKEN: Mapping[str, frozenset[str]] = {
    "circuits": frozenset({"ways"}),
    "points": frozenset({"room"}),
    "ways": frozenset(
        {
            "board", "fed_from", "second_feed", "leave_on", "button_pressed_on",
            "when", "fuse_wire_a", "phase", "time_delayed",
        }
    ),
}  # fmt: skip
_BESIDE: Mapping[str, tuple[tuple[str, str], ...]] = {
    "circuits": (
        ("way", "Way it is wired to"),
        ("board", "Board of that way"),
        ("sizes", "Cable sizes together, as 2.5/1.5"),
        ("device", "Device on the way, as B32"),
    ),
    "points": (
        ("room", "Room"),
        ("storey", "Storey of the room"),
        ("circuit", "Circuit, its way, or what it is behind"),
    ),
    "ways": (
        ("device", "Device, as B32 RCBO"),
        ("ways.circuit", "Circuit it feeds"),
        ("fed_from", "Fed from"),
    ),
}
# Of the device on a circuit's way.
DEVICE_FIELDS = (
    "kind", "rated_current_a", "curve", "residual_current_ma", "rcd_type",
    "breaking_capacity_ka",
)  # fmt: skip


def _own(kind: str) -> list[Target]:
    cls = CLASSES[kind]
    names = [s for s in specs(cls) if s.name not in _NOT_TAKEN[kind]]
    return [_of_field(spec, cls.sort, spec.name) for spec in names]


def _of_field(spec: FieldSpec, sort: str, code: str) -> Target:
    words = _split("ref" if spec.name == "ref" else f"{sort}.{spec.name}")
    label = f"{spec.label}, {spec.unit}" if spec.unit else spec.label
    return Target(code=code, label=label, words=words, spec=spec, sort=sort)


def _split(key: str) -> tuple[str, ...]:
    return tuple(word.strip() for word in _WORDS.get(key, "").split(";") if word)


def _of_device() -> list[Target]:
    by_name = {spec.name: spec for spec in specs(Device)}
    return [
        _of_field(by_name[name], "device", f"device.{name}") for name in DEVICE_FIELDS
    ]


def _targets(kind: str) -> tuple[Target, ...]:
    beside = [
        Target(code=code, label=label, words=_split(code))
        for code, label in _BESIDE[kind]
    ]
    of_device = _of_device() if kind == "circuits" else []
    return (*beside, *_own(kind), *of_device)


TARGETS: Mapping[str, tuple[Target, ...]] = {kind: _targets(kind) for kind in KINDS}
