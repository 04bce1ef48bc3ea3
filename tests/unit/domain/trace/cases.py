"""The switching cases as surveys."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from app.domain.trace.survey import Look, Seen, Survey, Way

FOLDER = Path(__file__).parents[3] / "switching"
NAMES = sorted(path.stem for path in FOLDER.glob("e*.json"))


def case(name: str) -> dict[str, Any]:
    text = (FOLDER / f"{name}.json").read_text(encoding="utf-8")
    found: dict[str, Any] = json.loads(text)
    return found


def survey(data: dict[str, Any], up_to: int | None = None) -> Survey:
    rounds = [r for r in data["rounds"] if up_to is None or r["number"] <= up_to]
    return Survey(
        ways=tuple(
            Way(
                ref=way["ref"],
                parent=way.get("hangs_off"),
                poles=way["poles"],
                leave_on=way.get("left_on", ""),
            )
            for way in data["ways"]
        ),
        points=tuple(data["points"]),
        looks=tuple(_look(each, data["points"]) for each in rounds),
    )


def _look(each: dict[str, Any], points: list[str]) -> Look:
    seen: dict[str, Seen] = {
        point: "dead" if point in each["dead"] else "live"
        for point in points
        if point not in each["not_looked"]
    }
    return Look(
        ref=str(each["number"]),
        off=frozenset(each["off"]),
        seen=seen,
        night=each["night"],
    )
