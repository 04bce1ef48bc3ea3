"""The pages on which an item is added, changed or deleted: what they show."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import groupby

from flask import render_template, request, url_for

from app.domain.edits import loosened, removal
from app.domain.kinds import KIND_HELP
from app.domain.named import called, in_a_sentence
from app.domain.record import Item, Record, Tie, specs
from app.services.homes import digest
from app.web.addresses import delete_url, item_url
from app.web.forms import Difference, ItemForm, differences
from app.web.words import how_many

# So many things without a name are named one by one; more are counted.
MOST_NAMELESS = 3
STATED = (
    "An electrician’s document says so. Leave that as it stands; write what you saw "
    "yourself as a tie of its own beside it."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class FormPage:
    """A page with the form of one item.

    Attributes:
        title: Heading.
        form: The form; its `shown` fields first, then its `further` ones.
        help: What the kind is, from its own module; may be empty.
        guess: Whether fields are filled with guesses to confirm.
        back: Address to go back to.
        delete: Address where deleting is asked about; None for a new item.
        another: Whether a like item may be added at once.
        opened: Whether the further fields are shown: something in them is wrong.
        differences: For a stale save: what was changed meanwhile.
    """

    title: str
    form: ItemForm
    help: str
    guess: bool
    back: str
    delete: str | None
    another: bool
    opened: bool
    differences: tuple[Difference, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class KindPage:
    """A page that asks what a new item is.

    Attributes:
        title: Heading.
        kinds: Label, what it is, and address of the form, for each kind.
        back: Address to go back to.
    """

    title: str
    kinds: tuple[tuple[str, str, str], ...]
    back: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DeletePage:
    """A page that asks before something is deleted.

    Attributes:
        title: Heading.
        what: What is deleted, in words.
        also: What goes with it.
        loose: What stays, but then names one feed or place less.
        mark: How the item stands.
        back: Address to go back to.
    """

    title: str
    what: str
    also: tuple[str, ...]
    loose: tuple[str, ...]
    mark: str
    back: str


def show_form(
    record: Record, form: ItemForm, item: Item | None, *, stale: bool = False
) -> str:
    """Return the page with the form of an item; None for a new one."""
    page = FormPage(
        title=_form_title(form.cls, item),
        form=form,
        help=_help(form, item),
        guess=item is None and not form.form.is_submitted(),
        back=_back(record, form, item),
        delete=delete_url(record.home.ref, item) if item else None,
        another=item is None and form.cls.sort in ("point", "room", "device"),
        opened=any(form.form[n].errors for n in ("ref", *form.further)),
        differences=differences(record, form, item) if stale else (),
    )
    if stale and item is not None:
        form.form.mark.data = digest(item)
    return render_template("pages/items/form.html", page=page)


def _form_title(cls: type[Item], item: Item | None) -> str:
    if item is None:
        return f"New {cls.noun.lower()}"
    return f"Change {cls.noun.lower()} {item.ref}"


def _help(form: ItemForm, item: Item | None) -> str:
    if isinstance(item, Tie) and item.grade == "5":
        return STATED
    kind = getattr(form.form, "kind", None)
    of_sort = KIND_HELP.get(form.cls.sort, {})
    return of_sort.get(str(kind.data), "") if kind is not None else ""


def _back(record: Record, form: ItemForm, item: Item | None) -> str:
    back = record.by_ref.get(request.args.get("back", ""))
    if back is not None:
        return item_url(record.home.ref, back)
    if item is not None:
        return item_url(record.home.ref, item)
    board = record.by_ref.get(request.args.get("board", request.args.get("room", "")))
    if board is not None:
        return item_url(record.home.ref, board)
    plural = {"devices": "boards", "ties": "points", "controls": "points"}
    return url_for(
        f"{plural.get(form.cls.plural, form.cls.plural)}.index", home=record.home.ref
    )


def _kinds(cls: type[Item]) -> Mapping[str, str]:
    return next(spec.choices for spec in specs(cls) if spec.name == "kind")


def kind_page(cls: type[Item], record: Record) -> KindPage:
    """Return the page that asks what a new item is."""
    home, board_ref = record.home.ref, request.args.get("board")
    rows = []
    for code, label in _kinds(cls).items():
        first = KIND_HELP[cls.sort][code].partition("\n")[0].partition(": ")[2]
        url = url_for(
            "items.new", home=home, plural=cls.plural, kind=code, board=board_ref
        )
        rows.append((label, first, url))
    back = url_for(
        f"{'boards' if cls.sort == 'device' else cls.plural}.index", home=home
    )
    board = record.by_ref.get(board_ref or "")
    return KindPage(
        title=f"What is the new {cls.noun.lower()}?",
        kinds=tuple(rows),
        back=item_url(home, board) if board else back,
    )


def delete_page(record: Record, item: Item, *, stale: bool = False) -> DeletePage:
    """Return the page that asks before an item is deleted."""
    going = removal(record, item.ref) - {item.ref}
    also = [i for i in record.items() if i.ref in going]
    title = (
        "It has changed since: delete it all the same?"
        if stale
        else (f"Delete {called(record, item)}?")
    )
    return DeletePage(
        title=title,
        what=f"{item.noun} {in_a_sentence(record, item)}",
        also=tuple(_in_lines(record, also)),
        loose=tuple(in_a_sentence(record, i) for i in loosened(record, item.ref)),
        mark=delete_mark(record, item),
        back=item_url(record.home.ref, item),
    )


def _in_lines(record: Record, items: Iterable[Item]) -> Iterable[str]:
    """Return things one line each; many nameless ones of a sort as their number."""
    for cls, group in groupby(items, type):
        of_a_sort = tuple(group)
        nameless = [i for i in of_a_sort if i.title == f"{i.noun} {i.ref}"]
        many = len(nameless) > MOST_NAMELESS
        if many:
            yield how_many(len(nameless), cls)
        for item in of_a_sort:
            if item not in nameless:
                yield f"{item.noun}: {item.title} ({item.ref})"
            elif not many:
                name = called(record, item)
                joins = name != item.title
                yield f"{item.noun}: {name} ({item.ref})" if joins else name


def delete_mark(record: Record, item: Item) -> str:
    """Return a mark of everything that deleting an item would touch."""
    going = removal(record, item.ref)
    gone = tuple(other for other in record.items() if other.ref in going)
    return digest((*gone, *loosened(record, item.ref)))
