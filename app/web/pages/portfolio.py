"""Several homes: what is due where, a copy of one, one put aside."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime
from functools import partial

from flask import Blueprint, Response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import StringField
from wtforms.validators import ValidationError

from app.domain.days import in_words
from app.domain.record import SHORT
from app.services.homes import free_home_ref
from app.services.portfolio import Standing, archive, copy_home, take_up
from app.store.homes import all_homes
from app.store.settings import set_home_sent_as
from app.web.addresses import Link
from app.web.fields import tidy
from app.web.forms import home_made, sent_once
from app.web.pages.homes import ref_from
from app.web.session import change, opened, opened_to_change, read
from app.web.standings import standing_of_home

bp = Blueprint("portfolio", __name__, url_prefix="/homes")
HEADS = ("Home", "What", "When", "In words")


@dataclass(frozen=True, slots=True, kw_only=True)
class DuePage:
    """What is due in all homes.

    Attributes:
        title: Heading.
        now: What waits: home, what, day, in words.
        later: What is still to come.
        no_day: What has no day yet.
        untold: Planned work of which somebody is still to be told.
        heads: Heads of the tables.
        calendar: Address of one file for a calendar.
    """

    title: str
    now: tuple[tuple[object, ...], ...]
    later: tuple[tuple[object, ...], ...]
    no_day: tuple[tuple[object, ...], ...]
    untold: tuple[Link, ...]
    heads: tuple[str, ...]
    calendar: str


class CopyForm(FlaskForm):  # type: ignore[misc]
    """What a copy of a home is called."""

    name = StringField("Name of the copy")

    def validate_name(self, field: StringField) -> None:
        """Take a name that fits on a line."""
        name = tidy(field.data or "")
        if not name:
            raise ValidationError("Enter a name for the copy.")
        if len(name) > SHORT:
            raise ValidationError(f"Enter {SHORT} characters at most.")


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyPage:
    """The form that copies a home.

    Attributes:
        title: Heading.
        form: The form.
        back: Address of the home.
    """

    title: str
    form: CopyForm
    back: str


@bp.get("/due")
def index() -> ResponseReturnValue:
    """Show what is due in all homes that are looked after, by day."""
    found = [standing_of_home(home.ref) for home in all_homes(read())]
    page = DuePage(
        title="What is due where",
        now=tuple(row for _, row in sorted(_rows(found, ("now",)), key=_first)),
        later=tuple(row for _, row in sorted(_rows(found, ("later",)), key=_first)),
        no_day=tuple(row for _, row in sorted(_rows(found, ("no_day",)), key=_first)),
        untold=tuple(
            (
                f"{each.home.name}: {work.title}",
                url_for("works.show", home=each.home.ref, ref=work.ref),
            )
            for each in found
            for work in each.untold
        ),
        heads=HEADS,
        calendar=url_for(".calendar"),
    )
    return render_template("pages/portfolio/due.html", page=page)


@bp.get("/due.ics")
def calendar() -> ResponseReturnValue:
    """Give the reminders of all homes as one file for a calendar."""
    # Late: the library takes a tenth of a second, and few ask for the file.
    from app.interchange.calendar import homes_calendar  # noqa: PLC0415

    found = [standing_of_home(home.ref) for home in all_homes(read())]
    stamp = datetime.now(UTC).replace(microsecond=0)
    made = homes_calendar([(each.home, each.dues) for each in found], stamp)
    answer = Response(made, mimetype="text/calendar")
    answer.headers["Content-Disposition"] = 'attachment; filename="homes.ics"'
    return answer


@bp.get("/<home>/copy")
def ask_copy(home: str) -> ResponseReturnValue:
    """Ask what a copy of a home is to be called."""
    name = opened(home).record.home.name
    return _copy_page(home, CopyForm(name=f"{name}, copy"[:SHORT]))


@bp.post("/<home>/copy")
def make_copy(home: str) -> ResponseReturnValue:
    """Copy a home."""
    form = CopyForm()
    with change() as connection:
        start = opened_to_change(connection, home)
        if made := home_made(connection):
            return redirect(url_for("homes.show", home=made), 303)
        if form.validate():
            name = tidy(form.name.data or "")
            ref = free_home_ref(connection, ref_from(name))
            copy_home(connection, start, ref, name)
            set_home_sent_as(connection, sent_once(), ref)
            return redirect(url_for("homes.show", home=ref), 303)
    return _copy_page(home, form), 422


@bp.post("/<home>/aside")
def aside(home: str) -> ResponseReturnValue:
    """Put a home aside, or take it up again."""
    with change() as connection:
        back = request.form.get("way") == "back"
        (take_up if back else archive)(connection, home)
    to = partial(url_for, "homes.index")
    return redirect(to(taken_up=home) if back else to(aside=home), 303)


def _copy_page(home: str, form: CopyForm) -> str:
    page = CopyPage(
        title=f"Copy {opened(home).record.home.name}",
        form=form,
        back=url_for("homes.show", home=home),
    )
    return render_template("pages/portfolio/copy.html", page=page)


def _rows(
    found: list[Standing], states: tuple[str, ...]
) -> Iterator[tuple[tuple[date, str], tuple[object, ...]]]:
    for each in found:
        link = (each.home.name, url_for("reminders.index", home=each.home.ref))
        for due in each.dues:
            if due.state in states:
                day = due.next_on or date.min
                said = in_words(due.next_on) if due.next_on else "Not known"
                yield (day, each.home.name), (link, due.named, said, due.says)


def _first(row: tuple[tuple[date, str], object]) -> tuple[date, str]:
    return row[0]
