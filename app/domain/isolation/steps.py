"""The steps of the work, in order, each with what to do and why.

None is left out without a reason being written down, and those that prove are never
left out.  The method is the accepted one; the words are ours.
"""

from __future__ import annotations

from collections.abc import Callable

from app.domain.answers import Named
from app.domain.isolation.names import called
from app.domain.isolation.shapes import (
    Affected,
    OnTheDay,
    Outcome,
    Plan,
    Step,
    Switch,
)
from app.domain.isolation.turns import GUIDES, MEMORY, PRACTICE
from app.domain.record.choices import CARE

FINDING_OUT = frozenset({"identify", "sources", "warn"})
# Proving has no substitute, so no reason lets it be left out (GS38, HSG85, in part).
PROVING = ("prove_tester", "prove_dead", "prove_again")
STOPPED = "This step stays shut while the plan says stop."
UNPROVED = "Prove dead first. Until then it counts as live: do not touch it."
PROVE = (
    "Line to neutral, line to earth, neutral to earth, and between every other pair.",
    "Every cable in the box, not only the one that you expect.",
)


def steps(plan: Plan) -> tuple[Step, ...]:
    """Return the steps of a plan, each marked as far as it is."""
    return tuple(_marked(make(plan), plan) for make in STEPS)


def progress_of(plan: Plan) -> str:
    """Return how far the steps are; one left out is not done, and is counted apart."""
    done = sum(step.state == "done" for step in plan.steps)
    left_out = sum(step.state == "skipped" for step in plan.steps)
    apart = f", {left_out} left out" if left_out else ""
    return f"{done} of {len(plan.steps)} steps done{apart}"


def next_step(plan: Plan) -> Step | None:
    """Return the first step that is neither done nor left out with a reason."""
    left = ("open", "blocked")
    return next((step for step in plan.steps if step.state in left), None)


def unproved(day: OnTheDay) -> tuple[str, ...]:
    """Return the steps of proving that are not done."""
    return tuple(code for code in PROVING if code not in day.done)


def _marked(step: Step, plan: Plan) -> Step:
    """Shut what comes after finding out while the plan says stop, work until proved."""
    day = plan.day
    if plan.advised == "stop" and step.code not in FINDING_OUT:
        return _shut(step, STOPPED)
    if step.code == "work" and unproved(day):
        return _shut(step, UNPROVED)
    because = day.skipped.get(step.code, "").strip()
    if step.code in day.done:
        return step.model_copy(update={"state": "done"})
    if because and step.code not in PROVING:
        return step.model_copy(update={"state": "skipped", "skipped_because": because})
    return step


def _shut(step: Step, because: str) -> Step:
    return step.model_copy(update={"state": "blocked", "shut_because": because})


def _identify(plan: Plan) -> Step:
    lines = [f"{label.way.title}: {label.sentence}" for label in plan.labels_first]
    return Step(
        code="identify",
        title="Identify",
        do=(
            "Read what the record says of this work, and what it does not know.",
            "Find each switch of the plan at its board and read its label aloud.",
            *lines,
        ),
        why="The wrong way off is the commonest way to meet a live wire.",
        basis=GUIDES,
    )


def _sources(plan: Plan) -> Step:
    known = [source for source in plan.sources if source.known == "yes"]
    lines = [f"{source.title}: {source.sentence}" for source in known]
    return Step(
        code="sources",
        title="Look for every other supply",
        do=(
            "Panels, battery, generator, vehicle, next door, landlord: yes or no.",
            "A second board, an old fuse box, a time switch: look for them too.",
            *lines,
        ),
        why="A main switch stops the network only. Anything else goes on feeding.",
        basis=MEMORY,
    )


def _warn(plan: Plan) -> Step:
    lost = (*plan.used.goes_off, *plan.used.work_off)
    return Step(
        code="warn",
        title="Warn the household",
        do=(
            "Say what goes off, from when to when, and that nobody switches it on.",
            *care_lines(lost),
            "Carry this sheet on paper or as a saved file: the router may go off too.",
            "Have a torch that stands by itself.",
        ),
        why="Someone who finds the power off goes to the board and puts it back on.",
        basis=GUIDES,
        writes=("Told",),
    )


def _loads_off(plan: Plan) -> Step:
    del plan
    return Step(
        code="loads_off",
        title="Turn off what is running",
        do=(
            "Heaters, cooker, shower, washing machine, computer: where they stand.",
            "That isolates nothing; it only spares the switch at the board.",
        ),
        why="A switch opened under load arcs, and what is on starts again by itself.",
        basis=PRACTICE,
    )


def _switch_off(plan: Plan) -> Step:
    return Step(
        code="switch_off",
        title="Switch off",
        do=tuple(switch_line(n, s) for n, s in enumerate(plan.used.switches, 1))
        or ("The record names no switch of yours that cuts this off.",),
        why=_why_this_set(plan),
        basis=PRACTICE,
        writes=("Time",),
    )


def _why_this_set(plan: Plan) -> str:
    if plan.advised == "nearest":
        return "By the record these part every supply of what you work on."
    return "The wide set, for the reasons given. It leaves less to what is not known."


def _lock(plan: Plan) -> Step:
    carrier = any(switch.carrier for switch in plan.used.switches)
    return Step(
        code="lock",
        title="Lock it off",
        do=(
            "A lock-off clip and padlock on each switch; the only key in your pocket.",
            "What takes no lock: switch off and lock the main switch instead.",
            *(("A fuse carrier: take it away with you.",) if carrier else ()),
        ),
        why="A notice is not a lock.",
        basis=GUIDES,
    )


def _notice(plan: Plan) -> Step:
    del plan
    return Step(
        code="notice",
        title="Hang the notice",
        do=("At every board switched: who, what, since when, how to reach you.",),
        why="Whoever comes must know that a person is at the other end of the wire.",
        basis=GUIDES,
    )


def _prove_tester(plan: Plan) -> Step:
    del plan
    return Step(
        code="prove_tester",
        title="Prove the tester",
        do=(
            "On a proving unit, or on a supply that you know to be live.",
            "A two-pole voltage detector with fused, finger-guarded leads.",
            "No multimeter, neon screwdriver, contactless stick or plug-in tester.",
        ),
        why="A broken tester shows nothing, and nothing is what you hope to see.",
        basis=GUIDES,
        writes=("Tester", "Reading on the live supply"),
    )


def _prove_dead(plan: Plan) -> Step:
    light = any(reason.code == "lighting" for reason in plan.reasons)
    shared = (
        "A shared neutral shows nothing here until it is parted: that is why the whole "
        "board is off."
    )
    return Step(
        code="prove_dead",
        title="Prove dead, where you will touch",
        do=(
            "Open as little as possible. Never a board's cover.",
            *PROVE,
            *((shared,) if light else ()),
            "Any reading at all: stop.",
        ),
        why="The record says what should be. Only the tester says what is.",
        basis=GUIDES,
        writes=("Line to neutral", "Line to earth", "Neutral to earth"),
    )


def _prove_again(plan: Plan) -> Step:
    del plan
    return Step(
        code="prove_again",
        title="Prove the tester again",
        do=("On the same supply as before. If it fails now, begin again from there.",),
        why="It may have broken between. Then what it showed counts for nothing.",
        basis=GUIDES,
        writes=("Reading on the live supply",),
    )


def _work(plan: Plan) -> Step:
    del plan
    return Step(
        code="work",
        title="Work",
        do=("Prove dead again after every break, and whenever you left the room.",),
        why="Someone may have been at the board, or a time switch at work.",
        basis=GUIDES,
    )


def _restore(plan: Plan) -> Step:
    back = [switch_line(n, s) for n, s in enumerate(reversed(plan.used.switches), 1)]
    return Step(
        code="restore",
        title="Put it back on",
        do=(
            "Close everything, count tools, tell everyone. Locks and notices off.",
            *back,
            "Press each RCD's test button. Look at freezer, alarm, heating, router.",
            "Write in the record what was done.",
        ),
        why="The largest switch closes first, onto little; then the others in turn.",
        basis=PRACTICE,
        writes=("Time",),
    )


def switch_line(number: int, switch: Switch) -> str:
    """Return where a switch is and what it is called, in one line."""
    place = ", ".join(
        text
        for text in (switch.board.title if switch.board else "", switch.room)
        if text
    )
    after = " Only after its main switch." if switch.carrier else ""
    where = f": {place}" if place else ""
    return f"{number}. {switch_name(switch)}{where}.{after}"


def switch_name(switch: Switch) -> str:
    """Return what a switch is called, with its kind if the name does not say it."""
    name = called(Named(ref=switch.ref, title=switch.title))
    said = switch.kind.casefold() in name.casefold()
    return name if said else f"{name}, {_within(switch.kind)}"


def _within(kind: str) -> str:
    """Return a kind as it stands within a sentence: RCD and BS keep their letters."""
    return kind if kind[:2].isupper() else kind[0].lower() + kind[1:]


def care_lines(lost: tuple[Affected, ...]) -> tuple[str, ...]:
    """Return what would be missed, one line each, as it matters."""
    return tuple(
        f"{', '.join(CARE[care] for care in point.care)}: {point.title} ({point.ref})"
        + (f", {point.room}." if point.room else ".")
        for point in lost
        if point.care
    )


def household(outcome: Outcome) -> tuple[str, ...]:
    """Return what to do before the supply goes off, for what goes off here."""
    lost = (*outcome.goes_off, *outcome.work_off)
    cares = {care for point in lost for care in point.care}
    return tuple(line for care, line in BEFORE.items() if care in cares)


BEFORE = {
    "medical": "Medical equipment: ask the person who uses it first. Do not begin.",
    "care_alarm": "Care alarm: ask the person who wears it first. Do not begin.",
    "stairlift": "Stairlift: bring it, and whoever needs it, to the right floor.",
    "alarm": "Alarms: tell whoever watches them; someone stays awake meanwhile.",
    "router": "Router: save what you are doing; telephones over it stop as well.",
    "freezer": "Freezer: keep it shut. Look at it when the supply is back.",
    "fridge": "Fridge: keep it shut.",
    "heating": "Heating: turn it down first; look at it when the supply is back.",
    "water": "Water: draw what you need; a pump stops.",
    "livestock": "Animals, fence or fish tank: see to them first.",
    "washing": "Washing machine, dryer: let them end; turn them off.",
    "work": "Computer or machine: save and shut down.",
    "other": "Other things that are missed: ask whose they are.",
}

STEPS: tuple[Callable[[Plan], Step], ...] = (
    _identify,
    _sources,
    _warn,
    _loads_off,
    _switch_off,
    _lock,
    _notice,
    _prove_tester,
    _prove_dead,
    _prove_again,
    _work,
    _restore,
)
