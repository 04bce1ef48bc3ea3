"""The words of the trade, explained."""

from __future__ import annotations

from dataclasses import dataclass

from flask import Blueprint, render_template
from flask.typing import ResponseReturnValue

from app.domain.glossary import TERMS

bp = Blueprint("glossary", __name__, url_prefix="/words")


@dataclass(frozen=True, slots=True, kw_only=True)
class GlossaryPage:
    """The words of the trade.

    Attributes:
        title: Heading.
        terms: Slug, word, text, and the words it leads to (slug, word).
    """

    title: str
    terms: tuple[tuple[str, str, str, tuple[tuple[str, str], ...]], ...]


@bp.get("/")
def index() -> ResponseReturnValue:
    """Show every word with its meaning, by the alphabet."""
    terms = sorted(TERMS.items(), key=lambda pair: pair[1].word.casefold())
    page = GlossaryPage(
        title="Words of the trade",
        terms=tuple(
            (slug, t.word, t.text, tuple((s, TERMS[s].word) for s in t.see))
            for slug, t in terms
        ),
    )
    return render_template("pages/glossary.html", page=page)
