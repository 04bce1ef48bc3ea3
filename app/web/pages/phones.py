"""Phones, as this computer sees them: pairing one, the list, and removing one."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from flask_wtf import FlaskForm
from wtforms import StringField, ValidationError
from wtforms.validators import Length

from app.drawing.qr import QrCode, qr_code
from app.errors import InvalidError, NotFoundError
from app.services.pairing import Code, Lock
from app.services.phones import remove
from app.store.phones import Phone, all_phones
from app.store.settings import computer_name, set_computer_name
from app.web.fields import UNSEEN
from app.web.paired import pairing, shared_urls
from app.web.session import change, read
from app.web.words import day

bp = Blueprint("phones", __name__, url_prefix="/phones")

MOST_KEY_DIGITS = 12
MOST_NAME = 40


class ComputerForm(FlaskForm):  # type: ignore[misc]
    """Asks what changes made on this computer are signed with."""

    name = StringField(
        "Name of this computer",
        [Length(max=MOST_NAME, message="Use a name of at most 40 characters.")],
        filters=[lambda text: " ".join(UNSEEN.sub(" ", text or "").split())],
        description="Such as “Study”. Left empty, it is “this computer”.",
        render_kw={"autocomplete": "off", "maxlength": str(MOST_NAME)},
    )

    def validate_name(self, field: StringField) -> None:
        """Refuse the name of a phone, or nobody could tell which it was."""
        if field.data in {phone.name for phone in all_phones(read())}:
            raise ValidationError("A phone has that name. Use another.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PhoneView:
    """A paired phone as the page shows it.

    Attributes:
        key: Its number.
        name: What its owner called it.
        since: When it was paired.
        seen: When it was last seen, to within some minutes.
    """

    key: int
    name: str
    since: str
    seen: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeView:
    """The code that pairs the next phone.

    Attributes:
        halves: Its digits, in two groups.
        until: The hour and minute until which it works.
    """

    halves: tuple[str, str]
    until: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PhonesPage:
    """The phones.

    Attributes:
        title: Heading.
        addresses: What a phone opens, each with its QR code; none: nothing is shared.
        code: The code, if there is one now.
        locked: That codes are refused for a while; empty when they are not.
        phones: The paired phones.
        form: What changes made on this computer are signed with.
    """

    title: str
    addresses: tuple[tuple[str, QrCode], ...]
    code: CodeView | None
    locked: str
    phones: tuple[PhoneView, ...]
    form: ComputerForm


@bp.get("/")
def index() -> ResponseReturnValue:
    """Show how a phone is paired, and those that are."""
    return _page(ComputerForm(data={"name": computer_name(read())}))


@bp.post("/this-computer")
def name_computer() -> ResponseReturnValue:
    """Keep what changes made on this computer are signed with from now on."""
    form = ComputerForm()
    if not form.validate_on_submit():
        return _page(form), 422
    with change() as connection:
        set_computer_name(connection, form.name.data or "")
    return redirect(url_for(".index", _anchor="this-computer"), 303)


@bp.post("/code")
def renew() -> ResponseReturnValue:
    """Show a new code; the former one and every lock end."""
    if not shared_urls():
        raise InvalidError("No phone can reach this program now, so no code is shown.")
    pairing().new_code()
    return redirect(url_for(".index"), 303)


@bp.post("/remove")
def destroy() -> ResponseReturnValue:
    """Remove a phone, at once."""
    text = request.form.get("token", "")
    number = text.isascii() and text.isdigit() and len(text) <= MOST_KEY_DIGITS
    if not number:
        raise NotFoundError("There is no such phone.")
    with change() as connection:
        remove(connection, int(text))
    return redirect(url_for(".index"), 303)


def _page(form: ComputerForm) -> str:
    code, lock = pairing().code(), pairing().lock()
    page = PhonesPage(
        title="Phones",
        addresses=tuple((url, qr_code(url)) for url in shared_urls()),
        code=_code(code) if code else None,
        locked=_locked(lock) if lock else "",
        phones=tuple(_phone(phone) for phone in all_phones(read())),
        form=form,
    )
    return render_template("pages/phones.html", page=page)


def _code(code: Code) -> CodeView:
    half = len(code.digits) // 2
    until = datetime.now().astimezone() + timedelta(seconds=code.left_s)
    return CodeView(
        halves=(code.digits[:half], code.digits[half:]), until=f"{until:%H:%M}"
    )


def _locked(lock: Lock) -> str:
    minutes = -(-lock.left_s // 60)
    end = f"This ends by itself within {minutes} minutes; a new code ends it now."
    if lock.everywhere:
        return (
            "Too many wrong codes were tried, so the code was withdrawn and none is "
            f"taken. Someone on your network may be guessing. {end}"
        )
    from_where = ", ".join(lock.addresses)
    return (
        f"Too many wrong codes came from {from_where}, so none is taken from there. "
        f"If that is no phone of yours, someone on your network may be guessing. {end}"
    )


def _phone(phone: Phone) -> PhoneView:
    return PhoneView(
        key=phone.key,
        name=phone.name,
        since=_when(phone.paired_at),
        seen=_when(phone.seen_at),
    )


def _when(at: datetime) -> str:
    local = at.replace(tzinfo=at.tzinfo or UTC).astimezone()
    return f"{day(local)}, {local:%H:%M}"
