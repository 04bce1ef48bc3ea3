"""Reminders: what is to be done again, done in one press, and a file for a calendar."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime

from flask import Blueprint, Response, redirect, render_template, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import RadioField, StringField
from wtforms.validators import ValidationError

from app.domain.days import in_words
from app.domain.record import LONG, Reminder
from app.domain.record.choices import REPORTED, WORKED
from app.domain.reminders import HEADS, Due, done, dues
from app.errors import NotFoundError
from app.services.homes import save
from app.web.addresses import edit_url, item_url, with_done
from app.web.fields import DayField, fits, has_come, options, tidy
from app.web.forms import sent_once
from app.web.papers import today
from app.web.session import change, opened, opened_to_change

bp = Blueprint("reminders", __name__, url_prefix="/homes/<home>/reminders")

PRESS = {
    "rcd_button": ("It tripped today", "worked"),
    "alarm_test": ("It worked today", "worked"),
}
PRESSED = {code: WORKED[code] for code in ("worked", "failed")}
OUTCOMES = {code: word for code, word in WORKED.items() if code != "unknown"}
# What else there is to say than that it was done today.
ASKS = {"inspection": "Write down what the report says", "own": "Another day"}
PRESSED_ONLY = "Say whether it worked: pressed is not tripped."
LATER_REPORT = (
    "A later report, of {}, is written down: it says when the next is. Add this one "
    "among the papers."
)
INSPECTED = {**REPORTED, "done": "Done; the report is still to come"}


@dataclass(frozen=True, slots=True, kw_only=True)
class DueView:
    """One thing to do again.

    Attributes:
        title: What to do.
        about: What it is about and its address, if it is one thing.
        says: When it was last done, and when it is next.
        basis: Why, or where that stands; empty where the one before it says the same.
        press: Words and outcome of the button that says it was done today; None where
            more has to be said.
        done: Address that takes it, and where another day or outcome is written down.
        ask: Words of the link to that page.
        set: Words and address of the form with its day.
    """

    title: str
    about: tuple[str, str] | None
    says: str
    basis: str
    press: tuple[str, str] | None
    done: str
    ask: str
    set: tuple[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class RemindersPage:
    """Everything to do again.

    Attributes:
        title: Heading.
        answer: How many wait, in one sentence.
        today: The day that a press writes down.
        groups: Code, heading and things, for each state that there is.
        new: Address of the form of a reminder of one's own.
        calendar: Address of the file for a calendar.
    """

    title: str
    answer: str
    today: str
    groups: tuple[tuple[str, str, tuple[DueView, ...]], ...]
    new: str
    calendar: str


class DoneForm(FlaskForm):  # type: ignore[misc]
    """When something was done, and how it went."""

    on = DayField("Done on", validators=[has_come])
    outcome = RadioField("How it went", choices=options(OUTCOMES))
    again_by = DayField(
        "Next inspection recommended by",
        description="The day that the report names; open, if it names none.",
    )
    note = StringField(
        "Note", description="What you noticed, if anything.", validators=[fits(LONG)]
    )

    def validate_on(self, field: DayField) -> None:
        """Take a day."""
        if field.data is None and not field.process_errors:
            raise ValidationError("Enter the day on which it was done.")

    def validate_again_by(self, field: DayField) -> None:
        """Take a day that is not before the report's own."""
        if field.data and self.on.data and field.data < self.on.data:
            raise ValidationError(f"That day is before {in_words(self.on.data)}.")

    def fit(self, due: Due) -> DoneForm:
        """Ask what there is to say of one thing."""
        self.outcome.choices = options(_outcomes(due))
        if due.kind == "own":
            del self.outcome
        if due.kind != "inspection":
            del self.again_by
        return self

    def says_how(self, due: Due) -> bool:
        """Return whether all that has to be said of it is; sentences say where not."""
        good: bool = self.validate()
        if "outcome" in self and self.outcome.errors:
            pressed = due.kind in PRESS and self.outcome.data == "done"
            self.outcome.errors = [PRESSED_ONLY if pressed else "Say how it went."]
        if good and due.last_on and self.on.data < due.last_on and self.next_one():
            self.again_by.errors = [LATER_REPORT.format(in_words(due.last_on))]
            return False
        return good

    def how(self) -> str:
        """Return how it went; what nobody tests is done, and no more."""
        return str(self.outcome.data) if "outcome" in self else "done"

    def next_one(self) -> date | None:
        """Return the day that the report names for the next inspection."""
        field = self._fields.get("again_by")
        return field.data if field else None


@dataclass(frozen=True, slots=True, kw_only=True)
class DonePage:
    """The form that takes another day or outcome.

    Attributes:
        title: Heading.
        says: How it stands.
        form: The form.
        back: Address of the list.
    """

    title: str
    says: str
    form: DoneForm
    back: str


@bp.get("/")
def index(home: str) -> ResponseReturnValue:
    """List everything to do again, what is to be done now first."""
    found = dues(opened(home).record, today())
    groups = (
        (state, head, _views(home, [due for due in found if due.state == state]))
        for state, head in HEADS.items()
    )
    page = RemindersPage(
        title="Reminders",
        answer=_answer(found),
        today=today().isoformat(),
        groups=tuple(group for group in groups if group[2]),
        new=url_for("items.new", home=home, plural=Reminder.plural),
        calendar=url_for(".calendar", home=home),
    )
    return render_template("pages/reminders/index.html", page=page)


@bp.get("/calendar.ics")
def calendar(home: str) -> ResponseReturnValue:
    """Give the reminders as a file for a calendar."""
    # Late: the library takes a tenth of a second, and few ask for the file.
    from app.interchange.calendar import reminders_calendar  # noqa: PLC0415

    record = opened(home).record
    stamp = datetime.now(UTC).replace(microsecond=0)
    made = reminders_calendar(record.home, dues(record, today()), stamp)
    answer = Response(made, mimetype="text/calendar")
    name = f"{record.home.ref}-reminders.ics"
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return answer


@bp.get("/<due>/done")
def ask_done(home: str, due: str) -> ResponseReturnValue:
    """Ask on which day something was done, and how it went."""
    found = _find(dues(opened(home).record, today()), due)
    outcome = None if found.kind == "inspection" else "worked"
    return _form(home, found, DoneForm(on=today(), outcome=outcome).fit(found))


@bp.post("/<due>/done")
def take_done(home: str, due: str) -> ResponseReturnValue:
    """Write down that something was done."""
    with change() as connection:
        start = opened_to_change(connection, home)
        found = _find(dues(start.record, today()), due)
        form = DoneForm().fit(found)
        if form.says_how(found):
            record = done(
                start.record,
                found,
                form.on.data,
                form.how(),
                tidy(form.note.data or ""),
                form.next_one(),
            )
            number = save(
                connection, start, record, _said(found, form), once=sent_once()
            )
            return redirect(with_done(url_for(".index", home=home), number), 303)
    return _form(home, found, form), 422


def _outcomes(due: Due) -> Mapping[str, str]:
    """Return how it may have gone: pressed is not tripped, which has to be said."""
    if due.kind in PRESS:
        return PRESSED
    return INSPECTED if due.kind == "inspection" else OUTCOMES


def _said(due: Due, form: DoneForm) -> str:
    words = _outcomes(due)[form.how()]
    return f"{due.named}, {in_words(form.on.data)}: {words[0].lower()}{words[1:]}."


def _form(home: str, due: Due, form: DoneForm) -> str:
    page = DonePage(
        title=due.named, says=due.says, form=form, back=url_for(".index", home=home)
    )
    return render_template("pages/reminders/done.html", page=page)


def _views(home: str, group: list[Due]) -> tuple[DueView, ...]:
    views, said = [], ""
    for due in group:
        views.append(_view(home, due, "" if due.basis == said else due.basis))
        said = due.basis
    return tuple(views)


def _view(home: str, due: Due, basis: str) -> DueView:
    record = opened(home).record
    about = record.by_ref.get(due.about.ref) if due.about else None
    inspected = due.kind == "inspection"
    return DueView(
        title=due.title,
        about=(about.title, item_url(home, about)) if about else None,
        says=due.says,
        basis=basis,
        press=None if inspected else PRESS.get(due.kind, ("Done today", "done")),
        done=url_for(".take_done", home=home, due=due.key),
        ask=ASKS.get(due.kind, "Another day, or it failed"),
        set=_set(home, due),
    )


def _set(home: str, due: Due) -> tuple[str, str]:
    reminder = opened(home).record.find(Reminder, due.reminder)
    if reminder is not None:
        return "Change", edit_url(home, reminder)
    about = due.about.ref if due.about else None
    url = url_for(
        "items.new", home=home, plural=Reminder.plural, kind=due.kind, about=about
    )
    return "Set another day, or switch it off", url


def _find(found: tuple[Due, ...], key: str) -> Due:
    for due in found:
        if due.key == key:
            return due
    raise NotFoundError("There is no such reminder in this home any more.")


def _answer(found: tuple[Due, ...]) -> str:
    now = sum(due.state == "now" for due in found)
    days = [due.next_on for due in found if due.state == "later" and due.next_on]
    things = "One thing waits." if now == 1 else f"{now} things wait."
    first = things if now else "Nothing that has a day waits."
    return f"{first} The next is on {in_words(min(days))}." if days else first
