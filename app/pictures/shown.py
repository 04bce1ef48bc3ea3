"""What is shown of a picture: upright, in two sizes, and nothing but its pixels.

Where it was taken, by what, the small picture inside it and every comment stay behind,
for the pixels are put into a new picture.
"""

from __future__ import annotations

import threading
import warnings
from dataclasses import dataclass
from datetime import date
from functools import cache
from io import BytesIO

from PIL import Image, ImageCms
from PIL.Image import Transpose

from app.errors import InvalidError

MOST_PIXELS = 80_000_000
# The longer side of what is shown, in pixels, by its name.
SIZES = {"large": 1600, "small": 320}
QUALITY = 82
FORMATS = {
    "image/jpeg": "JPEG",
    "image/png": "PNG",
    "image/webp": "WEBP",
    "image/heic": "HEIF",
}
# Exif 2.32 (CIPA DC-008), tags 274, 34665 and 36867.
ORIENTATION, EXIF_IFD, TAKEN_AT = 0x0112, 0x8769, 0x9003
UPRIGHT = {
    2: Transpose.FLIP_LEFT_RIGHT,
    3: Transpose.ROTATE_180,
    4: Transpose.FLIP_TOP_BOTTOM,
    5: Transpose.TRANSPOSE,
    6: Transpose.ROTATE_270,
    7: Transpose.TRANSVERSE,
    8: Transpose.ROTATE_90,
}
NO_HEIC = (
    "This is a HEIC picture, which this installation does not read. Let the camera "
    "take JPEG, or have pip install pillow-heif beside this program; then add it."
)
BROKEN = "The picture cannot be read: it is cut off or damaged. Choose it again."
# A large picture takes some hundred megabytes while it is made smaller.
_one_at_a_time = threading.Lock()


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What is shown of a picture.

    Attributes:
        jpegs: A JPEG file for each name in `SIZES`.
        taken_on: The day that the camera wrote; None when it wrote none.
    """

    jpegs: dict[str, bytes]
    taken_on: date | None


def shown_of(data: bytes, media_type: str) -> Shown:
    """Return what is shown of a picture's file.

    Raises:
        InvalidError: It has too many pixels, or is not whole, or cannot be read here.
    """
    if media_type == "image/heic" and not _reads_heic():
        raise InvalidError(NO_HEIC)
    with _one_at_a_time:
        try:
            return _shown(data, FORMATS[media_type])
        except Image.DecompressionBombError as error:
            raise InvalidError(_too_many("far more")) from error
        except InvalidError:
            raise
        except Exception as error:  # a decoder fed with anything may raise anything
            raise InvalidError(BROKEN) from error


def size_of(jpeg: bytes) -> tuple[int, int]:
    """Return width and height of a picture that `shown_of` made, in pixels."""
    with Image.open(BytesIO(jpeg), formats=("JPEG",)) as image:
        return image.size


def _too_many(many: str) -> str:
    return (
        f"The picture has {many} pixels; {MOST_PIXELS // 1_000_000} million are taken. "
        "Take it smaller."
    )


def _opened(data: bytes, form: str) -> Image.Image:
    """Open a picture; of its size the sentence of a refusal tells, not the console."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", Image.DecompressionBombWarning)
        return Image.open(BytesIO(data), formats=(form,))


def _shown(data: bytes, form: str) -> Shown:
    largest = max(SIZES.values())
    with _opened(data, form) as image:
        width, height = image.size
        if width * height > MOST_PIXELS:
            raise InvalidError(_too_many(f"{width * height / 1e6:.0f} million"))
        exif = image.getexif()
        orientation = exif.get(ORIENTATION, 1)
        taken_on = _day(exif.get_ifd(EXIF_IFD).get(TAKEN_AT))
        profile = image.info.get("icc_profile")
        if form == "JPEG":
            image.draft(image.mode, (largest, largest))
        image.load()
        smaller = _smaller(_with_plain_colours(image), largest)
    turned = _upright(_in_srgb(smaller, profile), orientation)
    jpegs = {name: _jpeg(_smaller(turned, side)) for name, side in SIZES.items()}
    return Shown(jpegs=jpegs, taken_on=taken_on)


def _with_plain_colours(image: Image.Image) -> Image.Image:
    """Return it in a mode that can be made smaller smoothly."""
    if image.mode.startswith(("I", "F")):
        # Sixteen bits of grey; the other plain modes have eight.
        return (
            image.convert("F").point(lambda value: value * (1 / 256) + 0).convert("L")
        )
    clear = "transparency" in image.info or image.mode in ("LA", "PA", "La", "RGBa")
    if clear:
        return image.convert("RGBA")
    return image if image.mode in ("RGB", "RGBA", "L", "CMYK") else image.convert("RGB")


def _smaller(image: Image.Image, side: int) -> Image.Image:
    copy = image.copy()
    copy.thumbnail((side, side), Image.Resampling.LANCZOS, reducing_gap=2)
    return copy


def _in_srgb(image: Image.Image, profile: bytes | None) -> Image.Image:
    """Return it on white paper, its colours as every screen shows them."""
    if image.mode == "RGBA":
        paper = Image.new("RGB", image.size, "white")
        paper.paste(image, mask=image.getchannel("A"))
        image = paper
    if profile:
        try:
            found = ImageCms.profileToProfile(
                image,
                ImageCms.ImageCmsProfile(BytesIO(profile)),
                ImageCms.createProfile("sRGB"),
                outputMode="RGB",
            )
        except (ImageCms.PyCMSError, OSError, ValueError, TypeError):
            found = None
        if found is not None:
            return found
    return image.convert("RGB")


def _upright(image: Image.Image, orientation: object) -> Image.Image:
    turn = UPRIGHT.get(orientation) if isinstance(orientation, int) else None
    return image if turn is None else image.transpose(turn)


def _jpeg(image: Image.Image) -> bytes:
    # Saved from a new picture: an old one hands on comments and profiles.
    clean = Image.new("RGB", image.size)
    clean.paste(image)
    file = BytesIO()
    clean.save(file, "JPEG", quality=QUALITY, progressive=True, optimize=True)
    return file.getvalue()


def _day(written: object) -> date | None:
    """Return the day of a time as cameras write it: ``2026:03:01 14:05:00``."""
    try:
        return date.fromisoformat(str(written)[:10].replace(":", "-"))
    except ValueError:
        return None


@cache
def _reads_heic() -> bool:
    try:
        from pillow_heif import register_heif_opener  # noqa: PLC0415 - may not be there
    except ImportError:
        return False
    register_heif_opener(thumbnails=False)
    return True
