"""Draw what goes along with Marram's tender: `python -m tests.lives.reference_files`.

Documents and pictures are invented as she is, and drawn from her package where it holds what they show. They lie in
package_src/references/ as they were drawn once; drawn anew they have other bytes.
"""

from __future__ import annotations

import hashlib

from PIL import Image, ImageDraw

from tenderwright.model.history import EarlierDocking
from tenderwright.model.package import sound
from tenderwright.pipeline import compile_package, read
from tests.pipeline.packages import MARRAM

FOLDER = MARRAM / "references"
INK, GREY, PAPER = 40, 130, 245
Polyline = list[tuple[float, float]]


def dxf(lines: list[tuple[str, Polyline]]) -> str:
    """Write polylines as DXF text, each on a layer of its own, in metres."""
    codes: list[object] = [0, "SECTION", 2, "ENTITIES"]
    for layer, points in lines:
        codes += [0, "POLYLINE", 8, layer, 66, 1, 70, 0]
        for x, y in points:
            codes += [0, "VERTEX", 8, layer, 10, f"{x:.3f}", 20, f"{y:.3f}", 30, "0.000"]
        codes += [0, "SEQEND"]
    codes += [0, "ENDSEC", 0, "EOF"]
    return "".join(f"{code}\n" for code in codes)


def body_plan() -> str:
    """Draw her stations, starboard half forward and port half aft, from the offsets."""
    offsets = sound(compile_package(read(MARRAM)).package.offsets)
    lines = []
    middle = offsets.stations[len(offsets.stations) // 2].at.si
    for one in offsets.stations:
        side = 1.0 if one.at.si >= middle else -1.0
        heights = zip(offsets.waterlines, one.half_breadths, strict=False)
        points = [(side * half.si, height.si) for height, half in heights if half.si > 0]
        lines.append((f"STATION-{one.station}".replace("/", "-"), points))
    return dxf([line for line in lines if len(line[1]) > 1])


def docking_plan(docking: EarlierDocking, words: list[str], *, most: float, cut: int = 0) -> Image.Image:
    """Draw the blocks of an earlier docking from above, to a scale of 30 dots a metre, with a table of them."""
    wide, high, scale = 1700, 760, 30
    sheet = Image.new("L", (wide, high), PAPER)
    pen = ImageDraw.Draw(sheet)
    left, middle = 90, 300
    pen.rectangle((8, 8, wide - 9, high - 9), outline=INK, width=2)
    pen.line((left - 40, middle, wide - 60, middle), fill=GREY)
    for block in (*docking.blocks.keel, *docking.blocks.sides):
        first, last = block.at.x, min(block.to.x if block.to else block.at.x, most)
        pitch = block.pitch.si if block.pitch else 1.0
        long, broad = block.length.si if block.length else 0.3, block.width.si if block.width else 0.6
        off = block.off_centre.si if block.off_centre else 0.0
        for index in range(round((last - first) / pitch) + 1 if pitch else 1):
            x = left + (first + index * pitch) * scale
            for side in (-1, 1) if off else (0,):
                y = middle + side * off * scale
                pen.rectangle(
                    (x - long * scale / 2, y - broad * scale / 2, x + long * scale / 2, y + broad * scale / 2),
                    outline=INK,
                    width=2,
                )
        said = f"{block.at}"
        pen.text((left + first * scale - 14, middle - 150 if off else middle + 130), said, fill=INK, font_size=17)
    for row, line in enumerate(words):
        pen.text((40, 480 + row * 34), line, fill=INK, font_size=24)
    return sheet.crop((0, 0, wide - cut, high))


def bilge_keel() -> Image.Image:
    """Draw the port bilge keel as it looks from the dock floor: set in over a metre, with its tee bar and rivets."""
    picture = Image.new("RGB", (900, 640), (120, 60, 52))
    pen = ImageDraw.Draw(picture)
    pen.rectangle((0, 0, 900, 150), fill=(112, 54, 47))
    pen.line((0, 150, 900, 150), fill=(70, 34, 30), width=7)
    pen.rectangle((0, 235, 900, 300), fill=(104, 50, 44), outline=(64, 30, 26), width=4)
    for place in range(24, 900, 52):
        pen.ellipse((place - 11, 256, place + 11, 278), fill=(138, 76, 66), outline=(76, 38, 34), width=2)
    fair = [(0.0, 470.0), (250.0, 470.0)]
    dent = [(330.0, 440.0), (420.0, 396.0), (500.0, 392.0), (580.0, 432.0), (650.0, 466.0)]
    edge = [*fair, *dent, (900.0, 470.0)]
    pen.polygon([(0, 300), *edge, (900, 300)], fill=(92, 44, 40))
    pen.line(edge, fill=(48, 24, 22), width=22, joint="curve")
    pen.line([(250, 512), (650, 512)], fill=(236, 226, 206), width=3)
    for end in (250, 650):
        pen.line([(end, 500), (end, 524)], fill=(236, 226, 206), width=3)
    pen.text((400, 524), "1.1 m", fill=(236, 226, 206), font_size=30)
    pen.text((200, 24), "Fr 53", fill=(236, 226, 206), font_size=34)
    pen.text((640, 24), "Fr 51", fill=(236, 226, 206), font_size=34)
    pen.text((24, 590), "Drawing, not a photograph", fill=(236, 226, 206), font_size=24)
    return picture


def main() -> None:
    """Draw them all, and print the checksum of each."""
    FOLDER.mkdir(exist_ok=True)
    dockings = {one.docking: one for one in compile_package(read(MARRAM)).package.history}
    (FOLDER / "d-02.dxf").write_text(body_plan(), "ascii")
    words = [
        "D-10  DOCKING PLAN AS USED, 2007",
        "Blocks from above, bow to the right; frames as on the ship",
        "As used",
    ]
    sheet = docking_plan(dockings["docking-2007"], words, most=60.0).convert("1", dither=Image.Dither.NONE)
    sheet.save(FOLDER / "d-10.pdf", resolution=150)
    words = ["D-11  DOCKING PLAN AS USED, 1988", "Photocopy; the right-hand edge is missing"]
    docking_plan(dockings["docking-1988"], words, most=37.5, cut=460).save(FOLDER / "d-11.png", optimize=True)
    bilge_keel().quantize(48).save(FOLDER / "345-bilge-keel.png", optimize=True)
    for path in sorted(FOLDER.iterdir()):
        print(path.relative_to(MARRAM), path.stat().st_size, hashlib.sha256(path.read_bytes()).hexdigest())


if __name__ == "__main__":
    main()
