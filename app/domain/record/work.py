"""Work on the installation, planned and done, and the papers that go with it."""

from __future__ import annotations

from datetime import date
from typing import Annotated, ClassVar

from app.domain.days import in_words
from app.domain.record import choices
from app.domain.record._field import LongText, OneOf, Ref, RefTo, ShortText, field
from app.domain.record.items import Item

# Whatever work, a paper or a photograph can be about; none of them: the home.
ABOUT = ("room", "source", "intake", "board", "device", "circuit", "point")


class Work(Item):
    """One piece of work: where, when, by whom, and whether it is planned or done.

    Work that is done puts a doubt on what was known of the things it touched before.
    """

    sort: ClassVar[str] = "work"
    plural: ClassVar[str] = "works"
    noun: ClassVar[str] = "Work"
    prefix: ClassVar[str] = "W"

    name: ShortText = field(
        "What is done", ..., hint="Such as New light over the sink."
    )
    job: ShortText = field(
        "Job, as “May I?” calls it", "", hint="Filled in from there; may stay open."
    )
    state: Annotated[str, OneOf(choices.WORK_STATES)] = field(
        "How far it is", "planned"
    )
    about: tuple[Annotated[Ref, RefTo(ABOUT)], ...] = field(
        "Where", (), hint="The things that it touches, such as a circuit or a board."
    )
    planned_for: date | None = field("Planned for", blank=True)
    done_on: date | None = field("Done on", come=True)
    done_before: date | None = field(
        "Done no later than",
        hint="If its day is not known. What is seen after that day is newer.",
        blank=True,
    )
    done_by: Annotated[str, OneOf(choices.WORKERS)] = field("By whom", "unknown")
    done_by_name: ShortText = field("Their name", "", hint="Private.", private="names")
    told: Annotated[str, OneOf(choices.TOLD)] = field(
        "Whoever must be told has been told", "unknown"
    )
    note: LongText = field("Note", "")

    @property
    def no_later_than(self) -> date | None:
        """The last day on which it can have been done; None when nobody can tell."""
        return self.done_on or self.done_before


class Paper(Item):
    """A paper about the installation: a certificate, a report, an invoice, a manual."""

    sort: ClassVar[str] = "paper"
    plural: ClassVar[str] = "papers"
    noun: ClassVar[str] = "Paper"
    prefix: ClassVar[str] = "Q"

    name: ShortText = field("Name", "", hint="Left open: what it is, and its date.")
    kind: Annotated[str, OneOf(choices.PAPER_KINDS)] = field("What it is", "unknown")
    number: ShortText = field("Its number", "")
    dated: date | None = field("Its date", come=True)
    by: ShortText = field(
        "By whom", "", hint="Who signed it. Private.", private="names"
    )
    work: Annotated[Ref, RefTo(("work",))] | None = field("Work that it is about")
    about: tuple[Annotated[Ref, RefTo(ABOUT)], ...] = field(
        "What it is about", (), hint="Left open: the home."
    )
    inspect_again_by: date | None = field("Inspection recommended by", after="dated")
    where_kept: ShortText = field("Where it is kept", "", hint="Such as blue folder.")
    note: LongText = field("Note", "")

    @property
    def title(self) -> str:
        """Its name, else what it is with its date."""
        what = "Paper" if self.kind == "unknown" else choices.PAPER_KINDS[self.kind]
        dated = f", {in_words(self.dated)}" if self.dated else ""
        return self.name or f"{what}{dated}"
