"""A client that looks at every page it gets, and does what a person does with it.

No test has to ask: each HTML answer is parsed strictly and has to keep the rules of
`check` below.  Forms are sent as they stand on the page, with what the test types.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from secrets import token_hex
from typing import Any
from urllib.parse import urlsplit

import html5lib
from flask.testing import FlaskClient
from werkzeug.exceptions import HTTPException
from werkzeug.routing import RequestRedirect
from werkzeug.test import TestResponse

SVG = "{http://www.w3.org/2000/svg}"
XLINK = "{http://www.w3.org/1999/xlink}"
LABELABLE = ("input", "select", "textarea")
# The one scheme that a page may name: a number to dial.
DIALS = re.compile(r"tel:\+?[0-9]{3,15}")
NAMELESS = ("hidden", "submit", "button")
Typed = str | list[str] | None


@dataclass(frozen=True)
class Page:
    """An answer, as a reader of the page finds it."""

    response: TestResponse

    @property
    def status(self) -> int:
        return self.response.status_code

    @property
    def location(self) -> str:
        """Where the answer leads."""
        return self.response.headers["Location"]

    @cached_property
    def root(self) -> Any:
        parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
        return parser.parse(self.response.get_data(as_text=True))

    @cached_property
    def parents(self) -> dict[Any, Any]:
        return {child: parent for parent in self.root.iter() for child in parent}

    def all(self, *tags: str) -> list[Any]:
        return [e for e in self.root.iter() if e.tag in tags]

    def one(self, tag: str) -> Any:
        [element] = self.all(tag)
        return element

    def within(self, element: Any, tag: str) -> Any:
        """Return the element around this one, or None."""
        while element is not None and element.tag != tag:
            element = self.parents.get(element)
        return element

    @cached_property
    def by_id(self) -> dict[str, Any]:
        return {e.get("id"): e for e in self.root.iter() if e.get("id") is not None}

    @property
    def h1(self) -> str:
        return text_of(self.one("h1"))

    @property
    def title(self) -> str:
        return text_of(self.one("title"))

    @property
    def main(self) -> str:
        return text_of(self.one("main"))

    @property
    def links(self) -> dict[str, str]:
        """Every link of the page to a page: text and address."""
        found = {text_of(a): a.get("href") for a in self.all("a", f"{SVG}a")}
        return {text: to for text, to in found.items() if not DIALS.fullmatch(to)}

    @property
    def dials(self) -> set[str]:
        """Every number that a touch on the page dials."""
        found = (a.get("href", "") for a in self.all("a"))
        return {to.removeprefix("tel:") for to in found if DIALS.fullmatch(to)}

    def error(self, name: str) -> str:
        """Return the sentence beside a field, without the word before it."""
        element = self.by_id.get(f"{name}-error")
        return text_of(element).removeprefix("Error: ") if element is not None else ""

    @property
    def errors(self) -> list[str]:
        """Return the sentences at the head of the page."""
        return [
            text_of(item)
            for box in self.root.iter()
            if "error-summary" in (box.get("class") or "").split()
            for item in box.iter("li")
        ]

    @property
    def undo(self) -> str:
        """What the bar offers to undo; nothing when there is none."""
        bars = [e for e in self.all("div") if e.get("class") == "bar bar--undo"]
        return text_of(bars[0].find("p")) if bars else ""

    def values(self, press: str = "Save") -> dict[str, list[str]]:
        """Return what the form with this button would send."""
        return values_of(self.form(press)[0])

    def value(self, name: str, press: str = "Save") -> str:
        return self.values(press)[name][0]

    def options(self, name: str) -> dict[str, str]:
        """Return what may be chosen: words and codes."""
        [select] = [e for e in self.all("select") if e.get("name") == name]
        return {text_of(o): o.get("value", "") for o in select.iter("option")}

    def form(self, press: str) -> tuple[Any, Any]:
        """Return the one form that has a button of this text, and the button."""
        found = [
            (form, button)
            for form in self.all("form")
            for button in form.iter("button")
            if form.get("method") == "post" and text_of(button) == press
        ]
        assert len(found) == 1, f"{len(found)} buttons “{press}” in: {self.main}"
        return found[0]


class CheckedClient(FlaskClient):
    """A client whose every page keeps the rules of the house."""

    def open(self, *args: Any, **kwargs: Any) -> TestResponse:
        response = super().open(*args, **kwargs)
        leads_on = response.status_code in (301, 302, 303, 308)
        kept = response.headers.get("Content-Disposition", "").startswith("attachment")
        shown = response.mimetype == "text/html" and not leads_on and not kept
        if shown and response.get_data():
            check(page_of(response), self)
        return response

    def see(self, url: str, status: int = 200) -> Page:
        """Open an address, going where it leads."""
        page = page_of(self.get(url, follow_redirects=True))
        assert page.status == status, (page.status, page.main)
        return page

    def send(
        self, url: str, fields: Mapping[str, Any], headers: Mapping[str, str] = {}
    ) -> Page:
        """Send just these fields, with this browser's token."""
        data = {"csrf_token": self.token(), "once": token_hex(8), **fields}
        return page_of(self.post(url, data=data, headers=dict(headers)))

    def token(self) -> str:
        """Return the token of this browser's forms, as a page gives it."""
        text = super().open("/import").get_data(as_text=True)
        found = re.search(r'name="csrf_token" type="hidden" value="([^"]+)"', text)
        assert found is not None
        return found[1]

    def submit(
        self,
        url: str,
        fields: Mapping[str, Typed] = {},
        press: str = "Save",
        **more: Typed,
    ) -> Page:
        """Open a page, type into its form, press a button."""
        return self.submit_on(self.see(url), fields, press, **more)

    def submit_on(
        self,
        page: Page,
        fields: Mapping[str, Typed] = {},
        press: str = "Save",
        **more: Typed,
    ) -> Page:
        """Type into a form of a page that is open, press a button."""
        form, button = page.form(press)
        data: dict[str, Any] = dict(values_of(form))
        boxes = {e.get("name") for e in form.iter() if e.get("name")}
        for name, typed in {**fields, **more}.items():
            assert name in boxes, f"there is no box “{name}” among {sorted(boxes)}"
            data[name] = typed
        if button.get("name"):
            data[button.get("name")] = button.get("value", "")
        kept = {name: typed for name, typed in data.items() if typed is not None}
        here = page.response.request
        return page_of(self.post(form.get("action") or here.full_path, data=kept))

    def save(
        self,
        url: str,
        fields: Mapping[str, Typed] = {},
        press: str = "Save",
        **more: Typed,
    ) -> Page:
        """Do as `submit` does, have it taken, and go where that leads."""
        return self.go_on(self.submit(url, fields, press, **more))

    def go_on(self, page: Page) -> Page:
        """Go where an answer that took a form leads."""
        assert page.status == 303, (page.status, page.main)
        return self.see(page.location)


def page_of(response: TestResponse) -> Page:
    """Return the page of an answer, read once however often it is looked at."""
    page: Page = vars(response).setdefault("page", Page(response))
    return page


def text_of(element: Any) -> str:
    return " ".join("".join(element.itertext()).split())


def values_of(form: Any) -> dict[str, list[str]]:
    """Return what a browser would send of a form, its buttons left out."""
    found: dict[str, list[str]] = {}
    for control in form.iter():
        name = control.get("name") if control.tag in LABELABLE else None
        if name:
            found.setdefault(name, []).extend(_sent(control))
    return {name: values for name, values in found.items() if values}


def _sent(control: Any) -> list[str]:
    if control.tag == "textarea":
        return [(control.text or "").removeprefix("\n")]
    if control.tag == "select":
        options = list(control.iter("option"))
        chosen = [o for o in options if o.get("selected") is not None]
        one = control.get("multiple") is None
        chosen = chosen[-1:] or options[:1] if one else chosen
        return [o.get("value", text_of(o)) for o in chosen]
    kind = control.get("type", "text")
    if kind in ("checkbox", "radio"):
        ticked = control.get("checked") is not None
        return [control.get("value", "on")] if ticked else []
    return (
        []
        if kind in ("submit", "button", "file", "image")
        else [control.get("value", "")]
    )


def check(page: Page, client: FlaskClient) -> None:
    """Look at a page as a whole."""
    wrong = [*_head(page), *_ids(page), *_controls(page), *_beside(page)]
    wrong += [*_forms(page, client), *_links(page, client), *_names(page)]
    wrong += [*_drawings(page), *_tables(page), *_inline(page)]
    assert not wrong, "\n".join([f"{page.status} {page.response.request.path}", *wrong])


def _head(page: Page) -> Iterator[str]:
    if page.one("html").get("lang") != "en-GB":
        yield "no language"
    heads = page.all("h1")
    if len(heads) != 1 or not text_of(heads[0]):
        yield f"{len(heads)} first headings"
        return
    start = "Error: " if page.status == 422 else ""
    if not page.title.startswith(f"{start}{page.h1}"):
        plain = page.title.removeprefix("Error: ")
        if page.status == 422 or not plain.startswith(page.h1):
            yield f"the title “{page.title}” does not begin “{start}{page.h1}”"


def _ids(page: Page) -> Iterator[str]:
    ids = [e.get("id") for e in page.root.iter() if e.get("id") is not None]
    twice = [name for name, count in Counter(ids).items() if count > 1]
    yield from (f"the id {name} stands twice" for name in twice)
    yield from (f"“{name}” is no id" for name in ids if len(name.split()) != 1)
    for element in page.root.iter():
        for attribute in ("aria-describedby", "aria-labelledby", "aria-controls"):
            for name in (element.get(attribute) or "").split():
                if name not in page.by_id:
                    yield f"{attribute} names {name}, which is not there"


def _controls(page: Page) -> Iterator[str]:
    labels = {e.get("for"): e for e in page.all("label") if e.get("for")}
    for control in page.all(*LABELABLE):
        label = labels.get(control.get("id"))
        if label is None:
            label = page.within(control, "label")
        named = label is not None and text_of(label)
        if control.get("type") == "image":
            named = control.get("alt")
        if control.get("type") not in NAMELESS and not named:
            yield f"{control.get('name')} has no label"


def _beside(page: Page) -> Iterator[str]:
    """Look at what stands beside a control: its label, its error."""
    for label in page.all("label"):
        name = label.get("for")
        if name and (name not in page.by_id or page.by_id[name].tag not in LABELABLE):
            yield f"a label is for {name}, which is no control"
    for error in page.all("p"):
        name = error.get("id") or ""
        if name.endswith("-error") and name.removesuffix("-error") not in page.by_id:
            yield f"an error stands beside nothing: {name}"


def _forms(page: Page, client: FlaskClient) -> Iterator[str]:
    for form in page.all("form"):
        method, action = form.get("method"), form.get("action")
        sent = values_of(form)
        if method not in ("get", "post"):
            yield f"a form of method {method}"
        elif (method == "post") != bool(sent.get("csrf_token", [""])[0]):
            yield f"a form by {method} to {action}: its token is wrong"
        elif action is not None and not _leads(action, method, client):
            yield f"a form by {method} leads nowhere: {action}"


def _links(page: Page, client: FlaskClient) -> Iterator[str]:
    for link in page.all("a", f"{SVG}a"):
        href = link.get("href", link.get(f"{XLINK}href", ""))
        if not (text_of(link) or link.get("aria-label")):
            yield f"a link to {href} without a name"
        if href.startswith("#"):
            if href[1:] not in page.by_id:
                yield f"a link to {href}, which is not there"
        elif not DIALS.fullmatch(href) and not _leads(href, "get", client):
            yield f"a link that leads nowhere: {href}"


def _leads(address: str, method: str, client: FlaskClient) -> bool:
    """Return whether an address is a path of this program, and taken."""
    if not address.startswith("/") or address.startswith("//"):
        return False
    routes = client.application.url_map.bind("127.0.0.1")
    try:
        routes.match(urlsplit(address).path, method=method.upper())
    except RequestRedirect:
        return False
    except HTTPException:
        return False
    return True


def _names(page: Page) -> Iterator[str]:
    for image in page.all("img"):
        if image.get("alt") is None:
            yield f"an image without a text: {image.get('src')}"
    for button in page.all("button"):
        if not (text_of(button) or button.get("aria-label")):
            yield "a button without a name"


def _drawings(page: Page) -> Iterator[str]:
    for drawing in page.all(f"{SVG}svg"):
        if drawing.get("aria-hidden") == "true":
            continue
        named = drawing.get("aria-label") or drawing.get("aria-labelledby")
        if not named and drawing.find(f"{SVG}title") is None:
            yield "a drawing without a name"
        if drawing.get("role") not in ("img", "group", "graphics-document"):
            yield f"a drawing in the role {drawing.get('role')}"


def _tables(page: Page) -> Iterator[str]:
    for table in page.all("table"):
        if table.find("caption") is None or not text_of(table.find("caption")):
            yield "a table without a caption"
        heads = list(table.iter("th"))
        if not heads:
            yield "a table without headers"
        for head in heads:
            if head.get("scope") not in ("col", "row") or not text_of(head):
                yield f"a header without scope or text: {text_of(head)}"
        for row in list(table.iter("tr")):
            if not row.findall("th"):
                yield f"a row without a header: {text_of(row)}"


def _inline(page: Page) -> Iterator[str]:
    for element in page.root.iter():
        if not isinstance(element.tag, str):
            continue
        if element.tag in ("style", f"{SVG}style", f"{SVG}script"):
            yield f"inline {element.tag}"
        if element.tag == "script" and (not element.get("src") or element.text):
            yield "an inline script"
        for name, value in element.attrib.items():
            plain = str(name).rpartition("}")[2].lower()
            if plain == "style" or plain.startswith("on"):
                yield f"inline: {plain}={value}"
            if plain in ("href", "src", "action") and _has_scheme(value):
                yield f"an address with a scheme: {value}"


def _has_scheme(value: str) -> bool:
    return ":" in value.partition("/")[0] and not DIALS.fullmatch(value)
