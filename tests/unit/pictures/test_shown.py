"""Pictures of every sort that a camera or scanner makes; names that do no harm."""

from __future__ import annotations

from io import BytesIO

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from PIL import Image, ImageCms

from app.errors import InvalidError
from app.pictures import SIZES, media_type_of, shown_of, size_of
from app.services.files import one_line, plain_name
from tests import photographs as made


def encoded(image: Image.Image, form: str, **more: object) -> bytes:
    file = BytesIO()
    image.save(file, form, **more)
    return file.getvalue()


@pytest.mark.parametrize(
    ("mode", "form"),
    [
        ("L", "JPEG"), ("CMYK", "JPEG"), ("P", "PNG"), ("LA", "PNG"), ("RGBA", "PNG"),
        ("1", "PNG"), ("I;16", "PNG"), ("RGBA", "WEBP"),
    ],
)  # fmt: skip
def test_every_mode_is_shown(mode: str, form: str) -> None:
    data = encoded(Image.new(mode, (50, 30)), form)
    shown = shown_of(data, media_type_of(data))
    assert {name: size_of(jpeg) for name, jpeg in shown.jpegs.items()} == {
        "large": (50, 30), "small": (50, 30),
    }  # fmt: skip


def test_what_is_clear_is_white_as_paper() -> None:
    data = encoded(Image.new("RGBA", (10, 10), (0, 0, 0, 0)), "PNG")
    with Image.open(BytesIO(shown_of(data, "image/png").jpegs["small"])) as image:
        assert image.getpixel((5, 5)) == (255, 255, 255)


def test_sixteen_bits_keep_their_grey() -> None:
    data = encoded(Image.new("I;16", (10, 10), 128 * 256), "PNG")
    with Image.open(BytesIO(shown_of(data, "image/png").jpegs["small"])) as image:
        assert image.convert("L").getpixel((5, 5)) == pytest.approx(128, abs=2)


def test_a_large_picture_is_made_small_in_its_shape() -> None:
    data = made.picture(4000, 3000)
    shown = shown_of(data, "image/jpeg")
    sizes = {name: size_of(jpeg) for name, jpeg in shown.jpegs.items()}
    assert sizes == {"large": (1600, 1200), "small": (320, 240)}
    assert max(SIZES.values()) == 1600


@pytest.mark.parametrize("orientation", range(1, 9))
def test_every_orientation_is_turned_upright(orientation: int) -> None:
    """Checked against what the library itself does with the tag."""
    from PIL import ImageOps

    data = made.with_all_a_camera_writes(orientation=orientation)
    with Image.open(BytesIO(data)) as image:
        expected = ImageOps.exif_transpose(image)
    with Image.open(BytesIO(shown_of(data, "image/jpeg").jpegs["large"])) as found:
        assert found.size == expected.size
        for place in ((5, 5), (5, found.height - 5), (found.width - 5, 5)):
            one, other = found.getpixel(place), expected.getpixel(place)
            assert isinstance(one, tuple)
            assert isinstance(other, tuple)
            assert (one[0] > one[2]) == (other[0] > other[2])


def test_a_colour_profile_is_carried_out_and_left_out() -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    for icc in (profile, b"no profile at all"):
        data = made.picture(icc_profile=icc)
        jpeg = shown_of(data, "image/jpeg").jpegs["small"]
        assert b"ICC_PROFILE" not in jpeg
        assert profile[:50] not in jpeg


@pytest.mark.parametrize("orientation", [0, 9, 65535])
def test_an_orientation_that_is_none_turns_nothing(orientation: int) -> None:
    exif = Image.Exif()
    exif[0x0112] = orientation
    jpeg = shown_of(made.picture(exif=exif), "image/jpeg").jpegs["small"]
    assert size_of(jpeg) == (60, 40)


def test_a_picture_of_another_type_than_named_is_refused() -> None:
    with pytest.raises(InvalidError):
        shown_of(made.picture(form="GIF"), "image/jpeg")


@given(st.binary(max_size=300), st.sampled_from(["JPEG", "PNG", "WEBP"]))
def test_a_picture_that_was_spoilt_is_shown_or_refused(spoil: bytes, form: str) -> None:
    data = bytearray(made.picture(form=form))
    at = len(spoil) % len(data)
    data[at : at + len(spoil)] = spoil
    try:
        shown = shown_of(bytes(data), media_type_of(bytes(data)))
    except InvalidError:
        return
    assert shown.jpegs.keys() == SIZES.keys()


@given(st.text(max_size=60))
@example("x" * 300)
@example("\u2067../..\\x\x00\n\r\u2028.jpg")
def test_a_name_is_one_plain_line(name: str) -> None:
    plain = plain_name(name)
    assert plain == one_line(plain)
    assert len(plain) <= 120
    assert not set(plain) & set("/\\\n\r\t\0\u2028\u202e\u2067")
