"""What a file is, by its content: its name may say anything.

Only what is listed is taken.  A picture that is at once something that a program would
open or run is refused, however well it shows.
"""

from __future__ import annotations

from app.errors import InvalidError

MOST_BYTES = 25 * 2**20
# The ending of a file of each type that is taken.
SUFFIXES = {
    "image/jpeg": "jpg",
    "image/png": "png",
    "image/webp": "webp",
    "image/heic": "heic",
    "application/pdf": "pdf",
}
TAKEN = "JPEG, PNG, WebP, HEIC and PDF are taken"
# ISO/IEC 23008-12: the brands of a still picture coded by HEVC.
HEIC_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"mif1"}
OTHER_BRANDS = {b"avif", b"avis"}
# A reader of PDF looks for the mark this far into a file; common practice, no source.
PDF_WITHIN = 1024
# APPNOTE.TXT, 4.3.16: the end of a ZIP file, and the longest comment after it.
ZIP_END, ZIP_END_BYTES, ZIP_MOST_COMMENT = b"PK\x05\x06", 22, 65_535


def media_type_of(data: bytes) -> str:
    """Return the media type of a file's content.

    Raises:
        InvalidError: It is empty, too large, or nothing that is taken.
    """
    if not data:
        raise InvalidError("The file is empty. Choose another one.")
    if len(data) > MOST_BYTES:
        raise InvalidError(
            f"The file is larger than {MOST_BYTES // 2**20} MB. "
            "Take the picture smaller, or scan the paper at 150 dots per inch."
        )
    if data.startswith(b"%PDF-"):
        return _whole_pdf(data)
    media_type = _picture(data)
    if media_type is None:
        raise InvalidError(_named_otherwise(data))
    if b"%PDF-" in data[:PDF_WITHIN] or _ends_as_zip(data):
        raise InvalidError(
            "This picture holds a second file inside. Take a screenshot of it, or "
            "save it anew in a picture program, and add that."
        )
    return media_type


def _picture(data: bytes) -> str | None:
    if data.startswith(b"\xff\xd8\xff"):
        return "image/jpeg"
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return "image/png"
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return "image/webp"
    return "image/heic" if _is_heic(data) else None


def _is_heic(data: bytes) -> bool:
    """Return whether the first box names a brand of HEIC."""
    length = int.from_bytes(data[:4], "big")
    if data[4:8] != b"ftyp" or not 16 <= length <= 256:
        return False
    brands = {data[8:12], *(data[n : n + 4] for n in range(16, length, 4))}
    return bool(brands & HEIC_BRANDS) and not brands & OTHER_BRANDS


def _whole_pdf(data: bytes) -> str:
    # ISO 32000-1, 7.5.5: a file ends with %%EOF; readers look in the last kilobyte.
    if b"%%EOF" not in data[-PDF_WITHIN:]:
        raise InvalidError("The PDF has no end: it was cut off. Choose the whole file.")
    return "application/pdf"


def _ends_as_zip(data: bytes) -> bool:
    tail = data[-(ZIP_END_BYTES + ZIP_MOST_COMMENT) :]
    place = tail.rfind(ZIP_END)
    if place < 0 or len(tail) - place < ZIP_END_BYTES:
        return False
    comment = int.from_bytes(tail[place + 20 : place + 22], "little")
    return place + ZIP_END_BYTES + comment == len(tail)


def _named_otherwise(data: bytes) -> str:
    start = data[:512].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    if start.startswith(b"gif8"):
        return f"A GIF is not taken; {TAKEN}. A screenshot of it will do."
    if b"<svg" in data[:4096].lower():
        return f"An SVG is not taken, for it may hold a program; {TAKEN}."
    if start.startswith(b"<"):
        return f"This is a web page, not a picture; {TAKEN}."
    return f"This is no picture and no PDF, by its content; {TAKEN}."
