"""What crosses a layer when a request cannot be done: sentences in the user's words."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One reason for a refusal, and where it lies.

    Attributes:
        place: Where, such as ``devices[3].rated_current_a``.
        reason: Why, as a sentence.
    """

    place: str
    reason: str


class AppError(Exception):
    """A request that cannot be done; its text is shown as it is."""

    def __init__(self, sentence: str, problems: tuple[Problem, ...] = ()) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.problems = problems


class NotFoundError(AppError):
    """What was asked for is not there."""


class ConflictError(AppError):
    """Someone else has changed it since."""


class InvalidError(AppError):
    """What was given cannot be taken."""


class DatabaseTooNewError(AppError):
    """The file was made by a newer version of this program."""


class DatabaseError(AppError):
    """The file cannot be read, or is not ours."""
