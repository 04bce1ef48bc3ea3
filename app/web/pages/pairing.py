"""Pairing, as the phone sees it: the one page there is before it is paired."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from flask import Blueprint, jsonify, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from sqlalchemy.exc import SQLAlchemyError
from wtforms import StringField, ValidationError
from wtforms.validators import DataRequired, Length, Regexp

from app.services.pairing import Refusal
from app.services.phones import let_in
from app.web.fields import UNSEEN
from app.web.paired import (
    COOKIE,
    COOKIE_LASTS_S,
    HERE,
    PAIRING_SHEETS,
    NotPairedError,
    from_here,
    pairing,
    phone,
)
from app.web.session import change
from app.web.wants_json import wants_json

bp = Blueprint("pairing", __name__)

MOST_NAME = 40
MINUTE_S = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class PairPage:
    """The page that pairs a phone.

    Attributes:
        title: Heading.
        form: The form of the code and the name.
        sheets: The style sheets that an unpaired phone may have.
        refusal: Why what was sent by another page was not taken; may be empty.
    """

    title: str
    form: Any
    sheets: tuple[str, ...] = PAIRING_SHEETS
    refusal: str = ""


def _seen(text: str | None) -> str:
    """Return a line as a screen shows it."""
    return UNSEEN.sub(" ", text or "")


class PairForm(FlaskForm):  # type: ignore[misc]
    """What a phone is asked."""

    code = StringField(
        "Code",
        [
            DataRequired("Enter the code that the computer shows."),
            Regexp(r"^[0-9]{8}$", message="The code is eight digits. Look again."),
        ],
        filters=[lambda text: "".join(_seen(text).replace("-", " ").split())],
        description="Eight digits, as the computer shows them.",
        render_kw={"inputmode": "numeric", "autocomplete": "off", "maxlength": "20"},
    )
    name = StringField(
        "Name of this phone",
        [
            DataRequired("Enter a name, such as Hall phone."),
            Length(max=MOST_NAME, message="Use a name of at most 40 characters."),
        ],
        filters=[lambda text: " ".join(_seen(text).split())],
        description="So that you know it again in the list, and in what it wrote down.",
        render_kw={"autocomplete": "off", "maxlength": str(MOST_NAME)},
    )

    def validate_name(self, field: StringField) -> None:
        """Refuse the name that is the computer's."""
        if (field.data or "").casefold() == HERE:
            raise ValidationError("That is what the computer is called. Use another.")


@bp.get("/pair")
def show() -> ResponseReturnValue:
    """Ask for the code and a name."""
    return _elsewhere() or _page(PairForm())


@bp.post("/pair")
def pair() -> ResponseReturnValue:
    """Pair the phone, if the code is the one that the computer shows."""
    if elsewhere := _elsewhere():
        return elsewhere
    form = PairForm()
    if not form.validate():
        return _page(form), 422
    refusal = pairing().take(str(form.code.data), request.remote_addr or "")
    if refusal:
        form.code.errors = [_sentence(refusal)]
        if refusal.kind == "wrong":
            return _page(form), 422
        return _page(form), 429, {"Retry-After": str(refusal.wait_s)}
    try:
        with change() as connection:
            token = let_in(connection, str(form.name.data), datetime.now(UTC))
    except SQLAlchemyError:
        pairing().give_back()
        raise
    answer = redirect(url_for("homes.start"), 303)
    answer.set_cookie(
        COOKIE, token, max_age=COOKIE_LASTS_S, httponly=True, samesite="Lax"
    )
    return answer


@bp.app_errorhandler(NotPairedError)
def refuse(error: NotPairedError) -> ResponseReturnValue:
    """Take nothing from a phone that is not paired; offer to pair it."""
    sentence = error.description or ""
    if wants_json():
        return jsonify(error=403, sentence=sentence), 403
    return _page(PairForm(formdata=None), sentence), 403


def _elsewhere() -> ResponseReturnValue | None:
    """Return where this computer, or a phone that is paired already, goes instead."""
    if not from_here() and phone() is None:
        return None
    place = url_for("phones.index" if from_here() else "homes.start")
    return redirect(place, 303 if request.method == "POST" else 302)


def _sentence(refusal: Refusal) -> str:
    if refusal.kind == "locked":
        return (
            "Too many wrong codes were tried; none is taken for "
            f"{_duration(refusal.wait_s)}. A new code on the computer lifts this."
        )
    wait = f"Wait {_duration(refusal.wait_s)}, then enter it once more."
    if refusal.kind == "soon":
        return f"That was too soon after a wrong code. {wait}"
    return (
        "This is not the code that the computer shows now. It may have been used, or "
        f"be too old. {wait}"
    )


def _duration(seconds: int) -> str:
    if seconds < 2 * MINUTE_S:
        return "1 second" if seconds == 1 else f"{seconds} seconds"
    return f"{-(-seconds // MINUTE_S)} minutes"


def _page(form: PairForm, refusal: str = "") -> str:
    page = PairPage(title="Pair this phone", form=form, refusal=refusal)
    return render_template("pages/pair.html", page=page)
