"""Find a browser of the Chromium family on this machine."""

from __future__ import annotations

import os
import shutil
import sys
from pathlib import Path

NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "microsoft-edge",
)
ON_MACOS = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
)
ON_WINDOWS = (
    r"Google\Chrome\Application\chrome.exe",
    r"Chromium\Application\chrome.exe",
    r"Microsoft\Edge\Application\msedge.exe",
)
PROGRAM_FOLDERS = ("PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA")
# A name as one on the home network, on this machine: see tests/browser/door.py.
HOUSE = "house.local"
FLAGS = [
    f"--host-resolver-rules=MAP {HOUSE} 127.0.0.1",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def browser_path() -> str | None:
    """Return the path of a browser: the system's, else Playwright's own."""
    found = next(filter(None, map(shutil.which, NAMES)), None)
    if found:
        return found
    places = (path for path in _usual_places() if path.is_file())
    own = next(places, None) or _own()
    return str(own) if own else None


def flags() -> list[str]:
    """Return what to start it with: silent towards the network, also as root."""
    root = sys.platform != "win32" and os.geteuid() == 0
    return [*FLAGS, "--no-sandbox"] if root else FLAGS


def _usual_places() -> list[Path]:
    if sys.platform == "darwin":
        return [Path(place) for place in ON_MACOS]
    folders = [os.environ[name] for name in PROGRAM_FOLDERS if name in os.environ]
    return [Path(folder, place) for folder in folders for place in ON_WINDOWS]


def _own() -> Path | None:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        path = Path(playwright.chromium.executable_path)
    return path if path.is_file() else None
