"""Whoever sends forms to the real server, over its own connection."""

from __future__ import annotations

import re
import secrets
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from html import unescape
from http.client import HTTPConnection, HTTPException
from urllib.parse import urlencode

FIELD = re.compile(
    r'<input[^>]*?name="(?P<name>[^"]+)"[^>]*?>'
    r'|<textarea[^>]*name="(?P<area>[^"]+)"[^>]*>(?P<text>[^<]*)</textarea>'
    r'|<select[^>]*name="(?P<select>[^"]+)"[^>]*>(?P<options>.*?)</select>',
    re.DOTALL,
)
CHOSEN = re.compile(r'<option[^>]*selected[^>]*value="([^"]*)"|value="([^"]*)"[^>]*sel')
VALUE = re.compile(r'value="([^"]*)"')
TOKEN = re.compile(r'name="csrf_token" type="hidden" value="([^"]+)"')
# What a server that is ended in the middle leaves on this side.
CUT_OFF = (OSError, HTTPException)
LONGEST_S = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What came back: its status, where it leads, its text."""

    status: int
    location: str
    text: str


class Sender:
    """Someone at the computer itself, with a browser's cookie and token."""

    def __init__(self, port: int) -> None:
        self.port = port
        self._cookie = ""
        self._token = ""

    def get(self, path: str) -> Answer:
        return self._ask("GET", path)

    def form_at(self, path: str) -> dict[str, str]:
        """Return what the form of a page would send."""
        answer = self.get(path)
        if answer.status != 200:
            return {}
        return fields_of(answer.text)

    def post(self, path: str, fields: Mapping[str, str]) -> Answer:
        data = urlencode({"csrf_token": self.token(), **fields}).encode()
        return self._ask("POST", path, data, "application/x-www-form-urlencoded")

    def upload(
        self, path: str, name: str, data: bytes, fields: Iterable[tuple[str, str]] = ()
    ) -> Answer:
        """Send a file in the box of a name."""
        edge = secrets.token_hex(12)
        parts = [
            f"--{edge}\r\nContent-Disposition: form-data; "
            f'name="{key}"\r\n\r\n{value}\r\n'
            for key, value in (("csrf_token", self.token()), *fields)
        ]
        head = (
            f'--{edge}\r\nContent-Disposition: form-data; name="{name}"; '
            'filename="sent"\r\nContent-Type: application/octet-stream\r\n\r\n'
        )
        body = "".join(parts).encode() + head.encode() + data
        body += f"\r\n--{edge}--\r\n".encode()
        return self._ask("POST", path, body, f"multipart/form-data; boundary={edge}")

    def token(self) -> str:
        """Return the token of this browser's forms, as a page gives it."""
        if not self._token:
            found = TOKEN.search(self.get("/import").text)
            assert found is not None
            self._token = found[1]
        return self._token

    def _ask(
        self, method: str, path: str, body: bytes | None = None, kind: str = ""
    ) -> Answer:
        connection = HTTPConnection("127.0.0.1", self.port, timeout=LONGEST_S)
        headers = {"Cookie": self._cookie} if self._cookie else {}
        if kind:
            headers["Content-Type"] = kind
        try:
            connection.request(method, path, body, headers)
            answer = connection.getresponse()
            text = answer.read().decode()
        finally:
            connection.close()
        if cookie := answer.headers["Set-Cookie"]:
            self._cookie = cookie.partition(";")[0]
        location = answer.headers["Location"] or ""
        return Answer(status=answer.status, location=location, text=text)


def fields_of(text: str) -> dict[str, str]:
    """Return what the form of an item would send."""
    found = {}
    for match in FIELD.finditer(text[text.index("<main") :]):
        if match["area"]:
            found[match["area"]] = unescape(match["text"]).strip()
        elif match["select"]:
            chosen = CHOSEN.search(match["options"])
            found[match["select"]] = (chosen[1] or chosen[2] or "") if chosen else ""
        elif 'type="checkbox"' not in match[0] or "checked" in match[0]:
            value = VALUE.search(match[0])
            found[match["name"]] = unescape(value[1]) if value else ""
    return found
