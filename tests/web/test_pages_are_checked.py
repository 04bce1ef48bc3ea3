"""The client that looks at every page finds the faults that it is there for."""

from __future__ import annotations

import pytest
from flask import Flask, Response

from tests.pages import CheckedClient

GOOD = (
    '<!DOCTYPE html><html lang="en-GB"><head><title>Rooms · W</title></head>'
    "<body><main id=main><h1>Rooms</h1>{}</main></body></html>"
)
LABEL = "<label for=a>A</label>"
FAULTS = {
    "two heads": "<h1>Again</h1>",
    "the same id twice": "<p id=x></p><p id=x></p>",
    "an id with a space": '<p id="x y"></p>',
    "a control without a label": "<input id=a name=a>",
    "an empty label": "<label for=a></label><input id=a name=a>",
    "a label for nothing": LABEL,
    "described by nothing": f"{LABEL}<input id=a name=a aria-describedby=b>",
    "a link to no anchor": '<a href="#nowhere">x</a>',
    "a link to no page": '<a href="/nowhere">x</a>',
    "a link to another place": '<a href="https://example.org/">x</a>',
    "a link to the same scheme": '<a href="//example.org/">x</a>',
    "a script as an address": '<a href="javascript:alert(1)">x</a>',
    "a link without a name": '<a href="/"></a>',
    "a form without a method": "<form></form>",
    "a form without a token": "<form method=post></form>",
    "a token in an address": (
        "<form method=get><input type=hidden name=csrf_token value=x></form>"
    ),
    "a form to nowhere": '<form method=get action="/nowhere"></form>',
    "a form by the wrong method": (
        '<form method=post action="/"><input type=hidden name=csrf_token value=x>'
        "</form>"
    ),
    "an image without a text": '<img src="/static/x.png">',
    "a drawing without a name": "<svg role=img></svg>",
    "a drawing without a role": "<svg><title>x</title></svg>",
    "a button without a name": "<button></button>",
    "a table without headers": (
        "<table><caption>x</caption><tbody><tr><td>x</td></tr></tbody></table>"
    ),
    "a table without a caption": (
        "<table><tbody><tr><th scope=row>x</th></tr></tbody></table>"
    ),
    "a header without a scope": (
        "<table><caption>x</caption><tbody><tr><th>x</th></tr></tbody></table>"
    ),
    "an inline style": '<p style="color: red">x</p>',
    "a style element": "<style>p {}</style>",
    "an inline script": "<script>alert(1)</script>",
    "an inline handler": '<p onclick="x()">x</p>',
    "an error beside nothing": '<p id="a-error">Error: x</p>',
    "broken markup": "<p><b>x</p></b>",
}


def client_of(html: str, status: int = 200) -> CheckedClient:
    app = Flask("tests")
    app.test_client_class = CheckedClient
    app.add_url_rule("/", view_func=lambda: Response(html, status), endpoint="page")
    client = app.test_client()
    assert isinstance(client, CheckedClient)
    return client


def test_a_good_page_passes() -> None:
    client_of(GOOD.format('<p>x</p><a href="/">x</a><a href="#main">y</a>')).get("/")


@pytest.mark.parametrize("fault", FAULTS)
def test_a_fault_is_found(fault: str) -> None:
    client = client_of(GOOD.format(FAULTS[fault]))
    with pytest.raises(Exception, match=r".") as found:
        client.get("/")
    assert type(found.value).__name__ in ("AssertionError", "ParseError")


@pytest.mark.parametrize(
    ("html", "status"),
    [
        (GOOD.format("").replace(' lang="en-GB"', ""), 200),
        (GOOD.format("").replace("Rooms ·", "Other ·"), 200),
        (GOOD.format("").replace("<h1>Rooms</h1>", ""), 200),
        (GOOD.format(""), 422),
    ],
)
def test_a_fault_of_the_head_is_found(html: str, status: int) -> None:
    with pytest.raises(AssertionError):
        client_of(html, status).get("/")
