"""A photograph made small enough for a paper, holding nothing but the picture."""

from __future__ import annotations

import io
import struct
import zlib
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from tenderwright.reading.photograph_files import PhotographFile

if TYPE_CHECKING:
    import PIL.Image

LONGEST = 900
"""The longer side of a picture on a contact sheet, in points: some 250 to the inch where it stands 84 mm wide."""
MOST_POINTS = 120_000_000
"""Of a photograph that is opened; telephones and cameras make less."""
_QUALITY = 82


def smaller(photograph: PhotographFile, longest: int = LONGEST) -> bytes | str:
    """Give a photograph as a JPEG whose longer side is at most so long; or in words why it cannot be shown.

    It is turned as the camera was held. Nothing is kept of what a camera or a program writes beside the picture: place,
    day, names, thumbnails, colour profile and comments. The same file gives the same bytes.
    """
    import PIL.Image
    from PIL.ImageOps import exif_transpose

    try:
        with _whole_ones_only(), PIL.Image.open(io.BytesIO(photograph.content()), formats=("JPEG", "PNG")) as opened:
            if opened.width * opened.height > MOST_POINTS:
                return f"it has {opened.width} × {opened.height} points, more than is opened: put a smaller copy there"
            opened.draft("RGB", (longest, longest))
            turned = exif_transpose(opened)
            seen = _on_white(turned)
            seen.thumbnail((longest, longest), PIL.Image.Resampling.LANCZOS)
    except (
        OSError,
        ValueError,
        SyntaxError,
        EOFError,
        struct.error,
        zlib.error,
        PIL.Image.DecompressionBombError,
    ) as error:
        return f"the file cannot be opened as a picture ({str(error) or type(error).__name__})"
    bare = PIL.Image.new("RGB", seen.size)
    bare.paste(seen)
    written = io.BytesIO()
    bare.save(written, "JPEG", quality=_QUALITY, optimize=True)
    return written.getvalue()


@contextmanager
def _whole_ones_only() -> Iterator[None]:
    """Refuse a file that is cut short, whatever else asked the library to bear with such: the typesetter does."""
    import PIL.ImageFile

    before = PIL.ImageFile.LOAD_TRUNCATED_IMAGES
    PIL.ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        PIL.ImageFile.LOAD_TRUNCATED_IMAGES = before


def _on_white(picture: PIL.Image.Image) -> PIL.Image.Image:
    """Give a picture in colours without transparency: what shows through is white, as paper is."""
    import PIL.Image

    if "A" not in picture.getbands() and "transparency" not in picture.info:
        return picture.convert("RGB")
    over = picture.convert("RGBA")
    ground = PIL.Image.new("RGBA", over.size, "white")
    return PIL.Image.alpha_composite(ground, over).convert("RGB")
