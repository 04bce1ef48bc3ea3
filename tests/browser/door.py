"""A name for the program as a phone on the home network knows it: plain http.

To a browser 127.0.0.1 is as trusted as https, so that a page there has much that it
lacks on a phone.  The door has a name of the home network, and hands on to 127.0.0.1
what comes to it.  When nobody answers there, it closes without a word.
"""

from __future__ import annotations

import threading
from http.client import HTTPConnection, HTTPException
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

from tests.browser_path import HOUSE

HOP = ("connection", "host", "origin", "keep-alive", "transfer-encoding")
ANSWER_WITHIN_S = 30


class Door(ThreadingHTTPServer):
    """Hands on what comes, to whatever port the program has just now."""

    daemon_threads = True

    def __init__(self) -> None:
        super().__init__(("127.0.0.1", 0), Handler)
        self.behind = 0
        threading.Thread(target=self.serve_forever, daemon=True).start()

    @property
    def url(self) -> str:
        """Its address."""
        return f"http://{HOUSE}:{self.server_port}/"

    def close(self) -> None:
        """Shut it."""
        self.shutdown()
        self.server_close()


class Handler(BaseHTTPRequestHandler):
    """One request, handed on as it is but for whom it is for."""

    server: Door

    def do_GET(self) -> None:
        """Hand it on."""
        body = self.rfile.read(int(self.headers.get("Content-Length", "0")))
        try:
            status, headers, answer = self._asked(body)
        except (OSError, HTTPException):
            self.close_connection = True
            return
        self.send_response_only(status)
        for name, value in headers:
            if name.lower() not in HOP:
                self.send_header(name, value)
        self.end_headers()
        self.wfile.write(answer)

    do_POST = do_GET  # noqa: N815 - the names are the library's

    def _asked(self, body: bytes) -> tuple[int, list[tuple[str, str]], bytes]:
        own, there = self.server.url.rstrip("/"), f"127.0.0.1:{self.server.behind}"
        headers = {n: v for n, v in self.headers.items() if n.lower() not in HOP}
        headers["Host"] = there
        if origin := self.headers.get("Origin"):
            headers["Origin"] = origin.replace(own, f"http://{there}")
        to = HTTPConnection("127.0.0.1", self.server.behind, timeout=ANSWER_WITHIN_S)
        try:
            to.request(self.command, self.path, body, headers)
            answer = to.getresponse()
            return answer.status, answer.getheaders(), answer.read()
        finally:
            to.close()

    def log_message(self, *_what: object) -> None:
        """Say nothing."""
