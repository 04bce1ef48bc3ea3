"""The jobs in groups, and how one finds a job by the words that people use."""

from __future__ import annotations

from collections.abc import Mapping

from app.domain.may_i.jobs import JOBS, Job

GROUPS: Mapping[str, tuple[str, ...]] = {
    "Sockets and spurs": (
        "replace-socket", "add-socket", "add-spur", "move-kitchen-socket",
        "outside-socket",
    ),
    "Lights and switches": (
        "replace-light", "replace-bath-light", "replace-switch", "smart-switch",
        "smart-switch-cable", "outside-light", "garden-lights",
    ),
    "Bathroom, kitchen and alarms": (
        "bath-fan", "replace-shower", "new-shower", "replace-cooker", "new-cooker",
        "replace-alarm", "add-alarm",
    ),
    "Heating and hot water": (
        "replace-thermostat", "heating-controls", "immersion-element",
        "floor-heating", "heat-pump",
    ),
    "Garden and outbuildings": (
        "shed-socket", "shed-extend", "shed-new-way", "hot-tub-plug",
        "hot-tub-wired",
    ),
    "Vehicle, panels, battery": ("vehicle-charger", "solar", "battery"),
    "Boards and the supply": (
        "replace-breaker", "breaker-to-rcbo", "rcbo-in-spare-way", "replace-board",
        "bonding", "isolator", "supply-fuse", "move-meter",
    ),
    "Mending, and the whole home": ("plug-or-fuse", "repair-cable", "rewire"),
    "None of these": ("something-else",),
}  # fmt: skip
# Other words by which people look for a job.
ALSO: Mapping[str, str] = {
    "replace-socket": "socket-outlet faceplate plate usb",
    "add-socket": "socket-outlet new extra bedroom living",
    "add-spur": "fused connection unit fcu extra",
    "move-kitchen-socket": "socket-outlet worktop",
    "outside-socket": "socket-outlet outdoor garden patio",
    "replace-light": "lamp fitting ceiling rose pendant downlight",
    "replace-bath-light": "lamp fitting downlight shower room",
    "replace-switch": "dimmer plate",
    "smart-switch": "dimmer wireless",
    "smart-switch-cable": "dimmer wireless",
    "outside-light": "lamp outdoor security porch",
    "garden-lights": "lamp outdoor pond path",
    "bath-fan": "ventilation shower room toilet",
    "replace-shower": "bathroom heater",
    "new-shower": "bathroom instant electric",
    "replace-cooker": "oven hob kitchen",
    "new-cooker": "oven hob kitchen",
    "replace-alarm": "smoke heat detector fire",
    "add-alarm": "detector fire interlinked",
    "replace-thermostat": "heating controls boiler room",
    "heating-controls": "thermostat boiler zone valve",
    "immersion-element": "hot water cylinder tank",
    "floor-heating": "underfloor mat",
    "shed-socket": "garage outbuilding workshop",
    "shed-extend": "garage outbuilding workshop",
    "shed-new-way": "garage outbuilding workshop armoured",
    "hot-tub-plug": "spa pool",
    "hot-tub-wired": "spa pool",
    "vehicle-charger": "car ev electric charging",
    "solar": "photovoltaic pv roof generation",
    "battery": "storage inverter generation",
    "replace-breaker": "mcb trip fuse",
    "breaker-to-rcbo": "mcb rcd",
    "rcbo-in-spare-way": "mcb new circuit",
    "replace-board": "fuse box fuse board distribution",
    "bonding": "earth gas water clamp",
    "isolator": "switch tails",
    "supply-fuse": "main service head upgrade 100 amp",
    "move-meter": "cupboard relocate",
    "plug-or-fuse": "flex lead appliance",
    "repair-cable": "drilled nail rodent damaged wire",
    "rewire": "old wiring whole home",
}


def jobs_found(query: str = "") -> tuple[tuple[str, tuple[Job, ...]], ...]:
    """Return the jobs that hold every word, by group; all of them for no word.

    *Something else* always stays, so that nobody is left without a way on.
    """
    words = query.casefold().split()
    found = []
    for group, codes in GROUPS.items():
        jobs = tuple(JOBS[code] for code in codes if _holds(group, JOBS[code], words))
        if jobs:
            found.append((group, jobs))
    return tuple(found)


def _holds(group: str, job: Job, words: list[str]) -> bool:
    if not job.sets:
        return True
    text = f"{group} {job.title} {ALSO.get(job.code, '')}".casefold()
    return all(word in text for word in words)
