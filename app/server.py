"""Serve the pages on this machine, and to phones when told to, until told to stop."""

from __future__ import annotations

import logging
import signal
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import replace
from typing import Any, NoReturn

import waitress
from flask import Flask

from app.config import Config
from app.drawing.qr import qr_lines
from app.errors import AppError
from app.services.copies import Keeper
from app.services.pairing import LASTS_S, Pairing
from app.services.running import running
from app.web import create_app

HOST = "127.0.0.1"
THREADS = 4
LONGEST_COPY_S = 20
# What anyone on the network may make the server hold: no photograph with its form is as
# large, and who says nothing is not waited for long.
SHARED_LIMITS = {
    "max_request_body_size": 32 * 2**20,
    "connection_limit": 200,
    "channel_timeout": 30,
    "cleanup_interval": 10,
}
NOT_ENCRYPTED = (
    "Nothing is encrypted on the way: whoever is on the same network and reads along "
    "sees every page, and could go on in the name of that phone until you remove it. "
    "Share on your own network only, and end it when you have done."
)


def serve(
    config: Config,
    *,
    open_browser: bool,
    say: Callable[[str], None],
    draw: Callable[[str], None] | None = None,
) -> None:
    """Serve a data folder, whose file is up to date, until SIGTERM or Ctrl+C.

    Args:
        config: Settings of this run.
        open_browser: Whether to open the first page in a browser.
        say: Writes a line for the person who started it.
        draw: Writes a line of a QR code, light on dark; None where nobody looks on, and
            then no pairing code is shown either, lest it be kept in some log.

    Raises:
        AppError: The port is taken.
    """
    with running(config), _listening(config) as listeners:
        config = replace(config, port=listeners[0].getsockname()[1])
        app = create_app(config)
        keeper = None if config.demo else Keeper(config)
        if keeper:
            app.extensions["keeper"] = keeper
            keeper.look()
        limits = SHARED_LIMITS if config.shared_at else {}
        server = waitress.create_server(
            app, sockets=listeners, threads=THREADS, ident=None, **limits
        )
        # A browser that fetches several files at once is no reason to warn.
        logging.getLogger("waitress.queue").setLevel(logging.ERROR)
        signal.signal(signal.SIGTERM, _end)
        address = f"http://{HOST}:{config.port}/"
        say(f"Ways and Points is at {address}")
        for line in _shared(app, config, draw) if config.shared_at else _alone():
            say(line)
        if open_browser:
            _open_apart(address)
        # Both signals end the loop inside; a request under way is finished first.
        server.run()
        server.close()
        if keeper:
            keeper.finish(LONGEST_COPY_S)
    say("Ended.")


def _alone() -> Iterator[str]:
    yield "It answers to this machine only. Ctrl+C ends it."


def _shared(
    app: Flask, config: Config, draw: Callable[[str], None] | None
) -> Iterator[str]:
    """Say how a phone gets in, and what it means that it can."""
    for url in config.shared_urls:
        yield f"Phones on your home network open {url}"
        for line in qr_lines(url) if draw else ():
            draw(line) if draw else None
    if draw:
        pairing: Pairing = app.extensions["pairing"]
        digits, minutes = pairing.new_code().digits, LASTS_S // 60
        yield f"A phone is paired with this code: {digits[:4]} {digits[4:]}"
        yield f"It works once, within {minutes} minutes. “Phones” here shows another."
    else:
        yield f"A phone is paired with a code: http://{HOST}:{config.port}/phones/"
    yield NOT_ENCRYPTED
    yield "Ctrl+C ends it."


@contextmanager
def _listening(config: Config) -> Iterator[list[socket.socket]]:
    """Listen on this machine, and on its shared addresses, all at one port."""
    with ExitStack() as opened:
        own = opened.enter_context(_listener(HOST, config.port))
        port = own.getsockname()[1]
        others = [opened.enter_context(_listener(a, port)) for a in config.shared_at]
        yield [own, *others]


def _listener(address: str, port: int) -> socket.socket:
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    # Windows would let two programs have one port, and elsewhere a port just left
    # could not be had again at once.
    windows = sys.platform == "win32"
    option = "SO_EXCLUSIVEADDRUSE" if windows else "SO_REUSEADDR"
    listener.setsockopt(socket.SOL_SOCKET, getattr(socket, option), 1)
    try:
        listener.bind((address, port))
        listener.listen()
    except OSError as error:
        listener.close()
        raise AppError(_not_had(address, port, error)) from error
    return listener


def _not_had(address: str, port: int, error: OSError) -> str:
    if address != HOST:
        return (
            f"{address} at port {port} cannot be had ({error.strerror}): it is no "
            "address of this machine now, or another program has that port there. "
            "Nothing is shared."
        )
    return (
        f"Port {port} of this machine cannot be had ({error.strerror}): another "
        "program has it, or this one is running already. "
        "Choose another one with --port; --port 0 takes any that is free."
    )


def _open_apart(address: str) -> None:
    """Open a browser without waiting for it: a text browser ends only when left."""
    threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()


def _end(_number: int, _frame: Any) -> NoReturn:
    raise SystemExit(0)
