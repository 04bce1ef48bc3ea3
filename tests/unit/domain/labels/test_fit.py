from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from app.domain.labels.fit import PAD, SEE_CHART, SMALLEST, Fitted, fit
from app.domain.labels.label import Label
from app.domain.labels.width import width

LABEL = Label(
    ref="W1",
    number="12",
    name="Kitchen sockets",
    known=True,
    confirmed=True,
    printed="B32",
    rooms=("Kitchen", "Hall"),
    found=None,
    outgoing=True,
    modules=1,
)
TEXT = st.text("abcdefghijklmnop WMÉ0", min_size=1, max_size=120)


def said(fitted: Fitted) -> str:
    return "".join("".join(line.text for line in fitted.lines).split())


def within(fitted: Fitted, wide: float, tall: float) -> bool:
    """Every line inside the box, from the top of its letters to their foot."""
    return all(
        line.x >= 0
        and line.x + width(line.text, line.size, bold=line.bold) <= wide + 0.01
        and line.y - line.size * 0.75 >= 0
        and line.y + line.size * 0.25 <= tall
        and line.size >= SMALLEST
        for line in fitted.lines
    )


def test_a_short_label_is_whole_and_large() -> None:
    fitted = fit(LABEL, 60, 20)
    assert fitted.left_out == ()
    assert said(fitted) == "12KitchensocketsB32Kitchen,Hall"
    assert max(line.size for line in fitted.lines) > 5


def test_a_longer_one_gets_smaller_first() -> None:
    longer = replace(LABEL, name="Kitchen sockets and those in the hall by the stairs")
    sizes = [max(v.size for v in fit(x, 60, 20).lines) for x in (LABEL, longer)]
    assert sizes[0] > sizes[1]
    assert fit(longer, 60, 20).left_out == ()


def test_rooms_that_have_no_room_are_left_out_whole_and_named() -> None:
    crowded = replace(LABEL, rooms=tuple(f"Long name of room {n}" for n in range(20)))
    fitted = fit(crowded, 40, 15)
    assert fitted.left_out == ("its rooms",)
    assert SEE_CHART in [line.text for line in fitted.lines]
    assert "Longname" not in said(fitted)


def test_a_box_too_small_for_anything_says_so() -> None:
    assert fit(LABEL, 2, 2) == Fitted(lines=(), left_out=("everything",))


def test_an_accent_and_an_unknown_letter_are_never_narrower_than_plain_ones() -> None:
    assert width("é", 10) > width("e", 10)
    assert width("日", 10) > width("m", 10)


@given(name=TEXT, rooms=st.lists(TEXT, max_size=8), box=st.tuples(
    st.floats(15, 190), st.floats(8, 100)
))  # fmt: skip
def test_nothing_is_ever_cut(
    name: str, rooms: list[str], box: tuple[float, float]
) -> None:
    """Either all of it is there, or what is not there is named."""
    label = replace(LABEL, name=name, rooms=tuple(rooms))
    fitted = fit(label, *box)
    assert within(fitted, *box)
    whole = "12" + "".join(f"{name}B32{', '.join(rooms)}".split())
    parts = {
        (): whole,
        ("its rooms",): f"12{''.join(name.split())}B32Seethechart",
        ("its rooms", "what is printed on the device"): (
            f"12{''.join(name.split())}Seethechart"
        ),
        ("everything but its number",): "12Seethechart",
        ("everything",): "",
    }
    assert said(fitted) == parts[fitted.left_out]


def test_the_margin_is_kept() -> None:
    assert min(line.x for line in fit(LABEL, 60, 20).lines) >= PAD
