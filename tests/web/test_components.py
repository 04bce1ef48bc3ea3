"""The macros: how they are wired, what they name, and that they escape."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import html5lib
import pytest
from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup
from wtforms import Form, RadioField, SelectMultipleField, StringField, widgets
from wtforms.fields.choices import SelectChoice  # type: ignore[attr-defined]
from wtforms.validators import InputRequired, Regexp

ROOT = Path(__file__).resolve().parents[2]
NASTY = "<script>alert(1)</script>"
NS = "{http://www.w3.org/1999/xhtml}"


class UnitField(StringField):
    unit = "A"


class TicksField(SelectMultipleField):
    widget = widgets.ListWidget(prefix_label=False)
    option_widget = widgets.CheckboxInput()


class BoardForm(Form):
    name = StringField("Name", [InputRequired("Enter a name.")], description="Yours.")
    rated = UnitField("Rated current", [Regexp(r"\d+", message="Enter a number.")])
    note = StringField("Note")
    made_of = RadioField(
        "Made of",
        [InputRequired("Choose what it is made of.")],
        choices=[SelectChoice("metal", "Metal"), SelectChoice("unknown", "Not known")],
        description="Look only.",
    )
    care = TicksField("Care", choices=[SelectChoice("freezer", "Freezer")])


def environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(ROOT / "templates"),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def call(component: str, macro: str, *args: Any, **kwargs: Any) -> str:
    template = environment().get_template(f"components/{component}.html")
    made: str = getattr(template.module, macro)(*args, **kwargs)
    return made


def tree(markup: str) -> Any:
    parser = html5lib.HTMLParser(strict=True)
    return parser.parseFragment(markup)


def found(markup: str, tag: str, **attributes: str) -> list[Any]:
    return [
        element
        for element in tree(markup).iter(f"{NS}{tag}")
        if all(element.get(k) == v for k, v in attributes.items())
    ]


def text_of(element: Any) -> str:
    return " ".join("".join(element.itertext()).split())


def wrong_form() -> Any:
    form = BoardForm(data={"rated": "abc"})
    assert not form.validate()
    return form


def described(markup: str, element: Any) -> list[str]:
    """Return the texts that describe an element, all of which must be there."""
    by_id = {e.get("id"): e for e in tree(markup).iter() if e.get("id")}
    ids = (element.get("aria-describedby") or "").split()
    return [text_of(by_id[name]) for name in ids]


def test_a_field_is_described_by_its_hint_error_and_unit() -> None:
    form = wrong_form()
    name, rated = call("field", "field", form.name), call("field", "field", form.rated)
    [name_box] = found(name, "input", id="name")
    [rated_box] = found(rated, "input", id="rated")
    assert described(name, name_box) == ["Yours.", "Error: Enter a name."]
    assert described(rated, rated_box) == ["Error: Enter a number.", "A"]
    assert name_box.get("aria-invalid") == "true"


def test_a_plain_field_is_described_by_nothing_and_not_marked_wrong() -> None:
    markup = call("field", "field", BoardForm().note)
    [box] = found(markup, "input")
    assert box.get("aria-describedby") is None
    assert box.get("aria-invalid") is None
    assert [text_of(label) for label in found(markup, "label")] == ["Note"]


def test_only_what_is_needed_is_marked_as_needed() -> None:
    form = BoardForm()
    assert "(needed)" in call("field", "field", form.name)
    assert "(needed)" not in call("field", "field", form.note)


def test_radio_buttons_stand_in_a_named_and_described_group() -> None:
    markup = call("field", "field", wrong_form().made_of)
    [group] = found(markup, "fieldset", id="made_of")
    assert group.get("role") == "radiogroup"
    assert group.get("aria-invalid") == "true"
    assert described(markup, group) == [
        "Look only.",
        "Error: Choose what it is made of.",
    ]
    assert [text_of(e).split(" (")[0] for e in found(markup, "legend")] == ["Made of"]
    labels = {label.get("for"): text_of(label) for label in found(markup, "label")}
    boxes = [box.get("id") for box in found(markup, "input", type="radio")]
    assert [labels[box] for box in boxes] == ["Metal", "Not known"]


def test_boxes_to_tick_stand_in_a_group_whatever_their_class_is_called() -> None:
    markup = call("field", "field", BoardForm().care)
    [group] = found(markup, "fieldset", id="care")
    assert group.get("role") is None
    assert len(found(markup, "input", type="checkbox")) == 1


def test_a_cell_has_a_label_and_its_error_below() -> None:
    markup = call("field", "cell", wrong_form().rated)
    [box] = found(markup, "input", id="rated")
    assert described(markup, box) == ["Error: Enter a number.", "A"]
    assert [label.get("for") for label in found(markup, "label")] == ["rated"]


def test_a_cell_is_not_described_by_a_hint_that_it_does_not_show() -> None:
    markup = call("field", "cell", wrong_form().name)
    [box] = found(markup, "input", id="name")
    assert described(markup, box) == ["Error: Enter a name."]


def test_the_error_summary_leads_to_each_wrong_field() -> None:
    form = wrong_form()
    markup = call("error_summary", "error_summary", form)
    [box] = found(markup, "div", role="alert")
    assert box.get("tabindex") == "-1"
    links = {a.get("href"): text_of(a) for a in found(markup, "a")}
    assert links == {
        "#name": "Enter a name.",
        "#rated": "Rated current: Enter a number.",
        "#made_of": "Choose what it is made of.",
    }
    drawn = "".join(call("field", "field", field) for field in form)
    ids = {e.get("id") for e in tree(drawn).iter()}
    assert {link.removeprefix("#") for link in links} <= ids


def test_nothing_wrong_makes_no_summary() -> None:
    assert call("error_summary", "error_summary", BoardForm()).strip() == ""
    assert call("error_summary", "error_list", []).strip() == ""


@pytest.mark.parametrize("value", [None, ""])
def test_what_is_not_known_is_named_in_a_list_and_in_a_table(value: str | None) -> None:
    listed = call("summary_list", "summary_list", [("Year", value, None)])
    tabled = call("table", "data_table", "Ways", ["Way", "Feeds"], [["1", value]])
    for markup in (listed, tabled):
        [mark] = found(markup, "span", **{"class": "unknown"})
        assert text_of(mark) == "Not known"


def test_nought_and_no_are_known() -> None:
    rows = [("Blanks missing", 0, None), ("Surge protection", "No", None)]
    markup = call("summary_list", "summary_list", rows)
    assert "unknown" not in markup
    assert [text_of(e) for e in found(markup, "dd")] == ["0", "No"]


def test_a_change_link_says_what_it_changes() -> None:
    markup = call("summary_list", "summary_list", [("Year", "1998", "/edit")])
    assert [text_of(a) for a in found(markup, "a", href="/edit")] == ["Change Year"]


def test_a_table_names_its_columns_its_rows_and_each_cell_for_a_phone() -> None:
    rows = [[("Way 1", "/w1"), "Shower"]]
    markup = call("table", "data_table", "Ways", ["Way", "Feeds"], rows)
    assert [text_of(e) for e in found(markup, "th", scope="col")] == ["Way", "Feeds"]
    assert [text_of(e) for e in found(markup, "th", scope="row")] == ["Way 1"]
    assert [e.get("data-label") for e in found(markup, "td")] == ["Feeds"]
    assert [text_of(e) for e in found(markup, "caption")] == ["Ways"]


@pytest.mark.parametrize(("code", "strokes"), [("1", 1), ("2", 2), ("3", 3), ("4", 4)])
def test_a_grade_has_as_many_strokes_as_its_code(code: str, strokes: int) -> None:
    markup = call("evidence", "grade", code, "Seen", "3 May 2025")
    assert markup.count("<path") == strokes
    assert text_of(tree(markup)) == "Seen, 3 May 2025"


def test_no_grade_is_dashed_and_a_document_is_one_sheet() -> None:
    assert "stroke-dasharray" in call("evidence", "grade", "0", "Not known")
    sheet = call("evidence", "grade", "5", "In an electrician's document")
    assert sheet.count("<path") == 1
    assert "stroke-dasharray" not in sheet


def test_six_owners_have_six_hatches_and_the_unknown_one_is_broken() -> None:
    codes = ["network", "meter_operator", "consumer", "landlord", "shared", "unknown"]
    drawn = {code: call("owner", "owner", code, "Word") for code in codes}
    assert len(set(drawn.values())) == len(codes)
    assert [c for c in codes if "stroke-dasharray" in drawn[c]] == ["unknown"]


def test_a_caution_has_a_shape_and_a_word() -> None:
    caution = call("notice", "notice", "Leave the cover on.")
    note = call("notice", "notice", "Leave the cover on.", "note")
    assert "<svg" in caution
    assert "<svg" not in note
    assert text_of(tree(caution)) == "Take care. Leave the cover on."
    assert text_of(tree(note)) == "Note. Leave the cover on."


def test_a_fault_tells_wrong_from_open_in_words() -> None:
    links = [("Edit board B2", "/b2")]
    wrong = call(
        "fault", "fault", "It feeds itself.", "Say what feeds it.", links, True
    )
    still = call("fault", "fault", "It is tied to nothing.", "Trace it.", [], False)
    assert text_of(found(wrong, "p")[0]) == "Cannot be as written"
    assert text_of(found(still, "p")[0]) == "Still open"
    assert [text_of(a) for a in found(wrong, "a", href="/b2")] == ["Edit board B2"]


def test_a_post_button_carries_the_token_and_its_fields() -> None:
    fields = {"change": 7}
    markup = call("button", "post_button", "Undo", "/undo", "abc", fields=fields)
    [form] = found(markup, "form")
    hidden = {e.get("name"): e.get("value") for e in found(markup, "input")}
    assert (form.get("method"), form.get("action")) == ("post", "/undo")
    assert hidden == {"csrf_token": "abc", "change": "7"}


def test_an_empty_list_offers_a_beginning_only_when_there_is_one() -> None:
    assert found(call("empty", "empty", "None yet.", "Begin", "/new"), "a", href="/new")
    assert not found(call("empty", "empty", "None found."), "a")


ESCAPED = [
    ("button", "button", (NASTY,)),
    ("button", "link_button", (NASTY, "/")),
    ("button", "post_button", (NASTY, "/", NASTY)),
    ("empty", "empty", (NASTY, NASTY, "/")),
    ("error_summary", "error_list", ([("name", NASTY)],)),
    ("evidence", "grade", ("3", NASTY, NASTY)),
    ("fault", "fault", (NASTY, NASTY, [(NASTY, "/")], True)),
    ("notice", "notice", (NASTY,)),
    ("owner", "owner", ("shared", NASTY)),
    ("summary_list", "summary_list", ([(NASTY, NASTY, "/")],)),
    ("table", "data_table", (NASTY, [NASTY], [[NASTY], [(NASTY, "/")]])),
    ("term", "term", (NASTY, "/")),
    ("unknown", "unknown", (NASTY,)),
]


@pytest.mark.parametrize(("component", "macro", "args"), ESCAPED)
def test_text_is_escaped(component: str, macro: str, args: tuple[Any, ...]) -> None:
    markup = call(component, macro, *args)
    assert NASTY not in markup
    assert not found(markup, "script")
    assert "&lt;script&gt;" in markup


def test_what_was_typed_into_a_field_is_escaped() -> None:
    form = BoardForm(data={"name": f'">{NASTY}'})
    form.name.errors = [NASTY]
    for macro in ("field", "cell"):
        markup = call("field", macro, form.name)
        assert not found(markup, "script")
        assert found(markup, "input")[0].get("value") == f'">{NASTY}'


def test_markup_given_as_a_value_stays_markup() -> None:
    mark = Markup("<strong>Yours</strong>")
    markup = call("table", "data_table", "Whose", ["Item", "Whose"], [["Tails", mark]])
    assert [text_of(e) for e in found(markup, "strong")] == ["Yours"]
