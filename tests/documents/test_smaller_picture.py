"""What is sent of a photograph is the picture alone, smaller, and the same each time."""

from __future__ import annotations

import io
from pathlib import Path

import PIL.ImageFile
import pytest
from PIL import Image, PngImagePlugin

from tenderwright.documents.smaller_picture import LONGEST, smaller
from tenderwright.reading.photograph_files import photograph_file

SECRET = "Harrow Point, 54.321 N, Jane Doe"


def jpeg(folder: Path, size: tuple[int, int] = (1600, 1200), *, turned: bool = False) -> str:
    """Write a JPEG with a place, a name and a comment in it, white above and black below."""
    picture = Image.new("RGB", size, "black")
    picture.paste("white", (0, 0, size[0], size[1] // 2))
    exif = Image.Exif()
    exif[0x013B] = SECRET
    exif.get_ifd(0x8825)[1] = "N"
    if turned:
        exif[0x0112] = 6
    picture.save(folder / "a.jpg", exif=exif, comment=SECRET.encode(), icc_profile=SECRET.encode() * 4)
    return "a.jpg"


def shown(folder: Path, name: str) -> Image.Image:
    """Make it smaller and open what was made."""
    made = smaller(photograph_file(folder, name))
    assert isinstance(made, bytes)
    return Image.open(io.BytesIO(made))


def test_nothing_but_the_picture_is_sent(tmp_path: Path) -> None:
    name = jpeg(tmp_path)
    before = (tmp_path / name).read_bytes()
    assert SECRET.encode() in before
    made = smaller(photograph_file(tmp_path, name))
    assert isinstance(made, bytes)
    assert SECRET.encode() not in made
    assert b"Exif" not in made
    picture = Image.open(io.BytesIO(made))
    assert (picture.size, dict(picture.getexif()), set(picture.info)) == (
        (LONGEST, LONGEST * 3 // 4),
        {},
        {"jfif", "jfif_version", "jfif_unit", "jfif_density"},
    )
    assert smaller(photograph_file(tmp_path, name)) == made
    assert (tmp_path / name).read_bytes() == before


def test_it_stands_as_the_camera_was_held(tmp_path: Path) -> None:
    picture = shown(tmp_path, jpeg(tmp_path, turned=True))
    assert picture.size == (LONGEST * 3 // 4, LONGEST)
    left, right = (picture.convert("L").getpixel((x, 450)) for x in (30, 640))
    assert (left, right) == (0, 255)


def test_a_small_one_is_not_made_larger_and_what_is_clear_becomes_paper(tmp_path: Path) -> None:
    about = PngImagePlugin.PngInfo()
    about.add_text("Author", SECRET)
    Image.new("RGBA", (40, 30), (0, 0, 0, 0)).save(tmp_path / "a.png", pnginfo=about)
    picture = shown(tmp_path, "a.png")
    assert (picture.size, picture.convert("L").getextrema()) == ((40, 30), (255, 255))


@pytest.mark.parametrize("content", [b"", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n\0\0", b"GIF89a\1\0\1\0\0\0\0;"])
def test_what_is_no_picture_is_told_in_words(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "a.jpg").write_bytes(content)
    made = smaller(photograph_file(tmp_path, "a.jpg"))
    assert isinstance(made, str)
    assert "cannot be opened as a picture" in made


@pytest.mark.parametrize("elsewhere", [False, True])
def test_a_broken_end_is_told_too(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, elsewhere: bool) -> None:
    monkeypatch.setattr(PIL.ImageFile, "LOAD_TRUNCATED_IMAGES", elsewhere)
    name = jpeg(tmp_path)
    content = (tmp_path / name).read_bytes()
    (tmp_path / name).write_bytes(content[: len(content) * 2 // 3])
    assert "truncated" in str(smaller(photograph_file(tmp_path, name)))
    assert PIL.ImageFile.LOAD_TRUNCATED_IMAGES is elsewhere
