"""Serve the pages on this machine until told to stop."""

from __future__ import annotations

import logging
import signal
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable
from typing import Any, NoReturn

import waitress

from app.config import Config
from app.errors import AppError
from app.web import create_app

HOST = "127.0.0.1"
THREADS = 4


def serve(config: Config, *, open_browser: bool, say: Callable[[str], None]) -> None:
    """Serve a data folder, whose file is up to date, until SIGTERM or Ctrl+C.

    Args:
        config: Settings of this run.
        open_browser: Whether to open the first page in a browser.
        say: Writes a line for the person who started it.

    Raises:
        AppError: The port is taken.
    """
    with _listening(config.port) as listener:
        address = f"http://{HOST}:{listener.getsockname()[1]}/"
        server = waitress.create_server(
            create_app(config), sockets=[listener], threads=THREADS, ident=None
        )
        # A browser that fetches several files at once is no reason to warn.
        logging.getLogger("waitress.queue").setLevel(logging.ERROR)
        signal.signal(signal.SIGTERM, _end)
        say(f"Ways and Points is at {address}")
        say("It answers to this machine only. Ctrl+C ends it.")
        if open_browser:
            _open_apart(address)
        # Both signals end the loop inside; a request under way is finished first.
        server.run()
        server.close()
    say("Ended.")


def _listening(port: int) -> socket.socket:
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    # Windows would let two programs have one port, and elsewhere a port just left
    # could not be had again at once.
    windows = sys.platform == "win32"
    option = "SO_EXCLUSIVEADDRUSE" if windows else "SO_REUSEADDR"
    listener.setsockopt(socket.SOL_SOCKET, getattr(socket, option), 1)
    try:
        listener.bind((HOST, port))
        listener.listen()
    except OSError as error:
        listener.close()
        raise AppError(
            f"Port {port} of this machine cannot be had ({error.strerror}): another "
            "program has it, or this one is running already. "
            "Choose another one with --port; --port 0 takes any that is free."
        ) from error
    return listener


def _open_apart(address: str) -> None:
    """Open a browser without waiting for it: a text browser ends only when left."""
    threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()


def _end(_number: int, _frame: Any) -> NoReturn:
    raise SystemExit(0)
