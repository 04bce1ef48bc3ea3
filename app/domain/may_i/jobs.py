"""The jobs that people ask about, as the rules look at them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from app.domain.may_i._case import Confidence
from app.domain.may_i.cautions import Care


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One job.

    Attributes:
        code: Its name in addresses and on the command line.
        title: What it is called.
        sets: Fields of the case that are settled by what the job is.
        asks: Codes of the questions that stay open.
        doubt: How sure any verdict can be, at most.
        cares: Which cautions of ``CARES`` can go with it; some only in some places.
        note: One sentence that belongs to the job alone.
        limits: Answers that a question can have for this job, where not all make sense.
    """

    code: str
    title: str
    sets: Mapping[str, Any]
    asks: tuple[str, ...] = ()
    doubt: Confidence = "high"
    cares: tuple[Care, ...] = ()
    note: str = field(default="")
    limits: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


_SOCKET = {"work": "add", "thing": "socket_or_spur"}
_LIGHT = {"work": "add", "thing": "light_or_switch"}
_OTHER = {"work": "add", "thing": "other"}
_REPLACE = {"work": "replace"}
_NEW = {"work": "new_circuit"}
# With new cable it is an addition, and then the place counts.
_MOVED = ("new_cable", "place", "outdoor_wiring")

_JOBS = (
    Job(
        code="add-socket",
        title="Add a socket to an existing circuit",
        sets=_SOCKET,
        asks=("place", "new_circuit", "outdoor_wiring"),
        cares=("bath_socket", "bath", "if_outdoors", "socket_rcd"),
    ),
    Job(
        code="add-spur",
        title="Add a spur, fused or not",
        sets=_SOCKET,
        asks=("place", "new_circuit", "outdoor_wiring"),
        note="How many points a spur may feed is a matter of BS 7671, not of telling.",
        cares=("bath_socket", "bath_switch", "bath", "if_outdoors", "socket_rcd"),
    ),
    Job(
        code="outside-light",
        title="Light on an outside wall, from an existing circuit",
        sets={**_LIGHT, "place": "outdoors"},
        asks=("outdoor_wiring", "new_circuit"),
        cares=("lighting", "outdoors"),
    ),
    Job(
        code="garden-lights",
        title="Garden lighting, mains, fixed or buried",
        sets={**_LIGHT, "place": "outdoors", "outdoor_wiring": True},
        asks=("new_circuit",),
        cares=("lighting", "outdoors", "earthing"),
        note="A ready-made plug-in set is a matter of plugging in, in every nation.",
    ),
    Job(
        code="outside-socket",
        title="Socket on an outside wall, from an existing circuit",
        sets={**_SOCKET, "place": "outdoors"},
        asks=("new_circuit",),
        cares=("outdoors",),
    ),
    Job(
        code="replace-socket",
        title="Replace a socket",
        sets={**_REPLACE, "thing": "socket_or_spur"},
        asks=_MOVED,
        cares=("bath_socket", "bath_old_socket", "bath", "if_outdoors", "socket_rcd"),
    ),
    Job(
        code="replace-switch",
        title="Replace a light switch",
        sets={**_REPLACE, "thing": "light_or_switch"},
        asks=_MOVED,
        cares=("bath_switch", "bath", "lighting"),
    ),
    Job(
        code="replace-bath-light",
        title="Replace a light in a bathroom, same place",
        sets={**_REPLACE, "thing": "light_or_switch"},
        asks=("new_cable", "place"),
        limits={"place": ("bath_zone", "bathroom", "bath_void")},
        cares=("bath", "lighting"),
    ),
    Job(
        code="replace-light",
        title="Replace a light elsewhere, same place",
        sets={**_REPLACE, "thing": "light_or_switch"},
        asks=_MOVED,
        cares=("bath", "if_outdoors", "lighting"),
    ),
    Job(
        code="replace-shower",
        title="Replace an electric shower",
        sets={**_REPLACE, "place": "bath_zone"},
        asks=("bigger",),
        cares=("bath",),
    ),
    Job(
        code="bath-fan",
        title="Add an extractor fan in a bathroom",
        sets=_OTHER,
        asks=("place", "new_circuit"),
        limits={"place": ("bath_zone", "bathroom", "bath_void")},
        cares=("bath", "lighting"),
        note="Rules on ventilation apply as well.",
    ),
    Job(
        code="new-cooker",
        title="New circuit for a cooker",
        sets={**_NEW, "place": "kitchen"},
    ),
    Job(
        code="replace-cooker",
        title="Replace a cooker on the outlet that is there",
        sets={**_REPLACE, "place": "kitchen"},
        asks=("bigger",),
    ),
    Job(
        code="new-shower",
        title="New circuit for a shower",
        sets={**_NEW, "place": "bath_zone"},
        cares=("bath",),
    ),
    Job(
        code="move-kitchen-socket",
        title="Move a socket in a kitchen",
        sets={**_SOCKET, "place": "kitchen"},
        asks=("new_circuit",),
        cares=("socket_rcd",),
    ),
    Job(
        code="replace-board",
        title="Replace a consumer unit",
        sets={"work": "consumer_unit"},
        cares=("board_cover",),
        note="The supply to it has to be off: by an isolator after the meter, or by a "
        "visit of the supplier or the network. For a small board in a garage ask "
        "building control whether it counts.",
    ),
    Job(
        code="replace-breaker",
        title="Replace a failed circuit-breaker by the same",
        sets=_REPLACE,
        doubt="medium",
        cares=("board_cover",),
    ),
    Job(
        code="breaker-to-rcbo",
        title="An RCBO in place of a breaker, same circuit",
        sets=_REPLACE,
        doubt="medium",
        cares=("board_cover",),
        note="It has to be one that the board's maker allows, and the neutral moves.",
    ),
    Job(
        code="rcbo-in-spare-way",
        title="An RCBO in a spare way for something new",
        sets=_NEW,
        cares=("board_cover",),
    ),
    Job(
        code="supply-fuse",
        title="Change the fuse in the cut-out",
        sets={"work": "network_side"},
    ),
    Job(
        code="move-meter",
        title="Move the meter",
        sets={"work": "network_side"},
        note="The tails after the meter are yours; the supplier moves the meter, and "
        "the network its cut-out.",
    ),
    Job(
        code="shed-new-way",
        title="Supply to a shed from a new way",
        sets={**_NEW, "place": "outbuilding", "outdoor_wiring": True},
        cares=("earthing", "outdoors"),
    ),
    Job(
        code="shed-extend",
        title="Supply to a shed from an indoor circuit, by a fused spur",
        sets={**_SOCKET, "place": "outbuilding", "outdoor_wiring": True},
        asks=("new_circuit",),
        doubt="medium",
        cares=("earthing", "outdoors"),
    ),
    Job(
        code="shed-socket",
        title="Add a socket inside a shed that has a supply",
        sets={**_SOCKET, "place": "outbuilding"},
        asks=("outdoor_wiring", "new_circuit"),
        cares=("socket_rcd",),
    ),
    Job(
        code="vehicle-charger",
        title="Vehicle charge point",
        sets={**_NEW, "place": "outdoors"},
        cares=("network_first", "earthing"),
    ),
    Job(
        code="heat-pump",
        title="Heat pump",
        sets={**_NEW, "place": "outdoors"},
        asks=("building_change",),
        cares=("network_first",),
    ),
    Job(
        code="solar",
        title="Solar panels",
        sets={**_NEW, "special": "generator"},
        asks=("building_change",),
        cares=("network_first", "board_cover"),
        note="Small generation is told to the network within 28 days (G98); larger, or "
        "with other sources, is asked for beforehand (G99). Planning rules may apply.",
    ),
    Job(
        code="battery",
        title="Home battery",
        sets={**_NEW, "special": "generator"},
        cares=("network_first", "board_cover"),
        note="Where it may stand has rules of its own. G98 or G99 apply as for panels.",
    ),
    Job(
        code="add-alarm",
        title="Mains smoke or heat alarm on an existing lighting circuit",
        sets=_OTHER,
        asks=("place", "new_circuit"),
        cares=("bath", "lighting", "alarms"),
        note="In Scotland every home has to have interlinked alarms.",
    ),
    Job(
        code="replace-alarm",
        title="Replace a mains alarm",
        sets=_REPLACE,
        cares=("alarms",),
    ),
    Job(
        code="floor-heating",
        title="Electric floor heating",
        sets={**_OTHER, "special": "floor_heating"},
        asks=("place", "new_circuit"),
        cares=("bath",),
    ),
    Job(
        code="hot-tub-plug",
        title="Hot tub on a 13 A plug",
        sets={"work": "plug_in", "place": "outdoors"},
        doubt="medium",
        cares=("outdoors",),
        note="The socket that it plugs into is a job of its own.",
    ),
    Job(
        code="hot-tub-wired",
        title="Hot tub, wired in",
        sets={**_NEW, "place": "outdoors", "outdoor_wiring": True},
        cares=("earthing", "outdoors"),
    ),
    Job(
        code="plug-or-fuse",
        title="Wire a plug, or change its fuse",
        sets={"work": "plug_in"},
    ),
    Job(
        code="repair-cable",
        title="Mend a damaged cable",
        sets={"work": "repair"},
        asks=_MOVED,
        cares=("bath",),
    ),
    Job(
        code="smart-switch",
        title="Smart switch, with the neutral there already",
        sets={**_REPLACE, "thing": "light_or_switch"},
        cares=("bath_switch", "bath", "lighting"),
        note="Never take the neutral of another circuit for it.",
    ),
    Job(
        code="smart-switch-cable",
        title="Smart switch that needs a new neutral cable",
        sets=_LIGHT,
        asks=("place",),
        doubt="medium",
        cares=("bath_switch", "bath", "lighting"),
    ),
    Job(
        code="replace-thermostat",
        title="Replace a thermostat or programmer on its wiring",
        sets={"work": "replace_control"},
        asks=_MOVED,
        note="Switch off the boiler at its fused connection unit, and look for other "
        "feeds: heating controls often have more than one.",
        cares=("bath_switch", "bath"),
    ),
    Job(
        code="heating-controls",
        title="New wiring for heating controls or valves",
        sets={"work": "control_wiring", "thing": "other"},
        asks=("place", "new_circuit"),
        doubt="medium",
        cares=("bath_switch", "bath"),
    ),
    Job(
        code="bonding",
        title="Better main bonding",
        sets={"work": "bonding"},
        doubt="medium",
        note="Have it measured by an electrician.",
    ),
    Job(
        code="immersion-element",
        title="Replace an immersion heater's element",
        sets=_REPLACE,
    ),
    Job(
        code="rewire",
        title="Rewire, in whole or in part",
        sets={"work": "rewire"},
    ),
    Job(
        code="isolator",
        title="Isolator between the meter and the consumer unit",
        sets={"work": "network_side"},
        note="A supplier may fit one if asked. It cannot be done with the tails live.",
    ),
    Job(
        code="something-else",
        title="Something else",
        sets={},
        asks=("work", "thing", "special", "place", "new_circuit", "outdoor_wiring"),
        cares=("bath_socket", "bath_switch", "bath", "if_outdoors", "socket_rcd"),
    ),
)
JOBS: dict[str, Job] = {job.code: job for job in _JOBS}


def job_titled(title: str) -> Job | None:
    """Return the job of a title, as planned work names it."""
    return next((job for job in _JOBS if job.title == title), None)
