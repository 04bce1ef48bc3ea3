"""Help: how to begin, what each kind is, and where the data lies."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from flask import Blueprint, render_template, url_for
from flask.typing import ResponseReturnValue

from app.domain.kinds import DEVICE_KINDS, INTAKE_KINDS, KIND_HELP, POINT_KINDS, Kind

bp = Blueprint("help", __name__, url_prefix="/help")


@dataclass(frozen=True, slots=True, kw_only=True)
class HelpPage:
    """The help.

    Attributes:
        title: Heading.
        tables: Address of the reference tables.
        kinds: For each sort: its heading, and its kinds with their texts.
    """

    title: str
    tables: str
    kinds: tuple[tuple[str, tuple[tuple[str, tuple[str, ...]], ...]], ...]


@bp.get("/")
def index() -> ResponseReturnValue:
    """Show the help."""
    page = HelpPage(
        title="Help",
        tables=url_for("tables.index"),
        kinds=(
            ("Items of the intake", _kinds(INTAKE_KINDS.values(), "intake")),
            ("Devices on a board", _kinds(DEVICE_KINDS.values(), "device")),
            ("Points", _kinds(POINT_KINDS.values(), "point")),
        ),
    )
    return render_template("pages/help.html", page=page)


def _kinds(kinds: Iterable[Kind], sort: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    return tuple(
        (kind.label, tuple(KIND_HELP[sort][kind.code].split("\n\n"))) for kind in kinds
    )
