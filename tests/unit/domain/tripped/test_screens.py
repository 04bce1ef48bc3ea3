"""Every walk through the screens ends, and stops before it resets."""

from __future__ import annotations

from collections.abc import Iterator

from app.domain.tripped import FIRST, SCREENS, Screen, asked, choices_of, trail


def walks(codes: tuple[str, ...] = ()) -> Iterator[tuple[Screen, ...]]:
    walked = trail(codes)
    assert walked is not None
    if not walked[-1].choices:
        yield walked
    for code in walked[-1].choices:
        yield from walks((*codes, code))


WALKS = tuple(walks())


def test_every_walk_ends_at_a_stop() -> None:
    assert len(WALKS) > 20
    assert all(walk[-1].stop for walk in WALKS)


def test_every_screen_is_on_some_walk() -> None:
    assert {screen.code for walk in WALKS for screen in walk} == set(SCREENS)


def test_what_stops_everything_is_asked_before_any_resetting() -> None:
    for walk in WALKS:
        codes = [screen.code for screen in walk]
        assert codes[0] == FIRST == "stop"
        assert not walk[0].resets
        if any(screen.resets for screen in walk):
            assert codes[1] == "moved"


def test_nothing_is_reset_after_a_stop() -> None:
    for walk in WALKS:
        after = False
        for screen in walk:
            assert not (after and screen.resets)
            after = after or screen.stop


def test_a_device_is_switched_on_twice_at_most_before_the_fault_is_narrowed() -> None:
    narrowed = {"plug-in", "way-by-way"}
    for walk in WALKS:
        resets = [s for s in walk if s.resets and s.code not in narrowed]
        assert len(resets) <= 2


def test_a_neutral_fault_is_reached_when_it_trips_with_every_way_off() -> None:
    walked = trail(("moved", "rcd", "rcd-on", "ways-off", "neutral"))
    assert walked is not None
    assert walked[-1].stop
    assert "neutral" in " ".join(walked[-1].says)


def test_a_walk_that_leaves_the_screens_is_none() -> None:
    assert trail(("moved", "neutral")) is None
    assert trail(("no-such",)) is None


def test_a_way_that_trips_by_itself_has_no_ways_to_switch_off() -> None:
    on, off = SCREENS["rcd-on"], SCREENS["ways-off"]
    assert [*choices_of(on, ways_below=False)] == ["plug-in", "fault"]
    assert [*choices_of(on, ways_below=True)] == ["plug-in", "ways-off"]
    assert [*choices_of(on, ways_below=None)] == ["plug-in", "ways-off"]
    assert [*choices_of(off, ways_below=True)] == ["way-by-way", "neutral"]
    assert [*choices_of(off, ways_below=None)] == ["way-by-way", "neutral", "fault"]


def test_no_screen_offers_one_answer_twice() -> None:
    for screen in SCREENS.values():
        for below in (True, False, None):
            words = [*choices_of(screen, ways_below=below).values()]
            assert len(words) == len(set(words))


def test_what_has_to_be_named_is_asked_when_it_can_be_known() -> None:
    way = ("moved", "rcd", "rcd-on", "ways-off", "way-by-way", "fault", "tell")
    thing = ("moved", "breaker", "breaker-on", "plug-in", "found")
    itself = ("moved", "breaker", "breaker-on", "fault")
    for codes, wanted in (
        (way, ("device", "way")),
        (thing, ("device", "point")),
        (itself, ("device",)),
        (("moved", "nothing"), ()),
    ):
        walked = trail(codes)
        assert walked is not None
        assert asked(walked) == wanted


def test_whoever_saw_danger_can_say_what_to_tell() -> None:
    assert trail(("leave", "tell")) is not None
    assert trail(("moved", "rcd", "leave", "tell")) is not None
