"""What a plan for switching off says: shapes for page, paper, file and program."""

from __future__ import annotations

from typing import Literal

from app.domain.answers import Named
from app.domain.record._field import Model, field

Advice = Literal["nearest", "wide", "stop"]
ADVICE: dict[str, str] = {
    "nearest": "Switch off the nearest set",
    "wide": "Switch off the wide set",
    "stop": "Stop and find out first",
}


class Switch(Model):
    """One thing to switch off by hand, and where it is."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    kind: str = field("What it is", ...)
    way: str = field("Way number", "")
    label_found: str | None = field("Label as found")
    board: Named | None = field("Board")
    room: str | None = field("Where it is")
    poles: str = field("Poles that it opens", "unknown")
    carrier: bool = field("A fuse carrier to take out", default=False)
    still_live: str = field("What stays live at it", "")


class Affected(Model):
    """A point that a set of switches touches, and who misses it."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    room: str | None = field("Room")
    care: tuple[str, ...] = field("Missed if it goes off", ())


class Outcome(Model):
    """What the record expects with one set of switches off."""

    switches: tuple[Switch, ...] = field("Switches, in order", ())
    parts: bool = field("Parts everything that is worked on", default=False)
    goes_off: tuple[Affected, ...] = field("What else goes off, care first", ())
    work_off: tuple[Affected, ...] = field("What is worked on and loses supply", ())
    partly_off: tuple[Affected, ...] = field("Loses one supply, keeps another", ())
    live_here: tuple[Affected, ...] = field("Stays live in the same room", ())
    unknown_here: tuple[Affected, ...] = field("Not known, so counts as live", ())
    intake_here: tuple[Named, ...] = field("Intake there, live whatever is off", ())
    cannot: tuple[Affected, ...] = field("Cannot be parted from here", ())
    behind: tuple[str, ...] = field("What stays live behind", ())


class Reason(Model):
    """Why the plan advises what it does: one rule, one reason."""

    code: str = field("Rule", ...)
    advice: Advice = field("What it leads to", ...)
    sentence: str = field("Why", ...)
    basis: str = field("Source", ...)


class Caution(Model):
    """Something to bear in mind that does not change what is switched off."""

    code: str = field("Rule", ...)
    sentence: str = field("What", ...)
    basis: str = field("Source", ...)


class LabelFirst(Model):
    """A way that the plan relies on though its label does not say so for sure."""

    way: Named = field("Way", ...)
    board: str = field("Board", ...)
    sentence: str = field("What is wrong", ...)


class OtherSource(Model):
    """A source besides the network, and what it means for the plan."""

    kind: str = field("Kind", ...)
    title: str = field("What it is called", ...)
    known: str = field("Answer", "unknown")
    sentence: str = field("What it means here", ...)


class Step(Model):
    """One step of the work, with what to do and why."""

    code: str = field("Step", ...)
    title: str = field("What", ...)
    do: tuple[str, ...] = field("What to do", ())
    why: str = field("Why", ...)
    basis: str = field("Source", ...)
    writes: tuple[str, ...] = field("What to write down", ())
    state: Literal["open", "done", "skipped", "blocked"] = field(
        "How far it is", "open"
    )
    skipped_because: str = field("Why it was left out", "")
    shut_because: str = field("Why it stays shut", "")


class OnTheDay(Model):
    """What was answered and done on the day; the plan depends on it."""

    who: str = field("Who", "")
    when: str = field("When", "")
    sources: dict[str, str] = field("Sources answered on the day", {})
    done: tuple[str, ...] = field("Steps done", ())
    skipped: dict[str, str] = field("Steps left out, and why", {})
    settled: tuple[str, ...] = field("Reasons to stop, settled by asking", ())


class Plan(Model):
    """A plan for switching off, from the record and from the answers of the day."""

    home: str = field("Home", ...)
    home_name: str = field("Name of the home", ...)
    aim: tuple[Named, ...] = field("What is to be worked on", ())
    job: str = field("Kind of work", "any")
    rooms: tuple[Named, ...] = field("Rooms", ())
    day: OnTheDay = field("Answers of the day", OnTheDay())
    advised: Advice = field("Advised", "stop")
    reasons: tuple[Reason, ...] = field("Why", ())
    cautions: tuple[Caution, ...] = field("Bear in mind", ())
    labels_first: tuple[LabelFirst, ...] = field("Before this, label", ())
    nearest: Outcome = field("Nearest set", Outcome())
    wide: Outcome = field("Wide set", Outcome())
    alternatives: tuple[Outcome, ...] = field("One switch instead", ())
    sources: tuple[OtherSource, ...] = field("Other sources", ())
    sources_answered: bool = field("Every source answered", default=False)
    ignored: tuple[Affected, ...] = field("Extra-low voltage from elsewhere", ())
    steps: tuple[Step, ...] = field("Steps", ())
    stop_when: tuple[str, ...] = field("When to stop", ())
    call: tuple[str, ...] = field("Whom to call", ())

    @property
    def used(self) -> Outcome:
        """The set that the steps are about: the wide one unless nearest is advised."""
        return self.nearest if self.advised == "nearest" else self.wide


class StillLive(Model):
    """A thing that stays live with every switch of the home off."""

    ref: str = field("Reference", ...)
    title: str = field("What it is called", ...)
    room: str | None = field("Room")
    why: str = field("Why", ...)


class HouseOff(Model):
    """Every switch to operate to take the whole home off, and what stays live."""

    home: str = field("Home", ...)
    home_name: str = field("Name of the home", ...)
    switches: tuple[Switch, ...] = field("Switches, in order", ())
    behind: tuple[str, ...] = field("What stays live behind each", ())
    still_live: tuple[StillLive, ...] = field("Still live after", ())
    goes_off: tuple[Affected, ...] = field("What goes off, care first", ())
    may_stay: str = field("Why what goes off may stay live", "")
    batteries: tuple[str, ...] = field("Batteries that nobody answered", ())
    not_main: tuple[Caution, ...] = field("Called main switch, and is not", ())
    sources: tuple[OtherSource, ...] = field("Other sources", ())
    sources_answered: bool = field("Every source answered", default=False)
    unknown: tuple[str, ...] = field("Not known", ())
    stops: tuple[str, ...] = field("Why nothing is switched first", ())
    leave: tuple[str, ...] = field("Not to be used or touched", ())
    stop_when: tuple[str, ...] = field("When to stop", ())
    call: tuple[str, ...] = field("Whom to call", ())
