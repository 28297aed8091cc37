"""Draw the photographs of the invented ships: `python -m tests.lives.photograph_files`.

They are pictures made by calculation, as invented as the ships, and each says so in itself. They lie in photographs/
and owner/photographs/ as they were drawn once; drawn anew they may have other bytes.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFilter, ImageFont

from tests.pipeline.packages import MARRAM

WITHY = Path(__file__).parents[1] / "packages" / "withy"
WIDE, HIGH = 720, 540
MOST_BYTES = 40_000

Canvas = Image.Image
Colour = tuple[int, int, int]
RUST, STEEL, RED_OXIDE, TIMBER = (122, 74, 44), (98, 104, 108), (118, 58, 48), (128, 98, 66)


def surface(colour: Colour, seed: int, roughness: float = 16.0) -> Canvas:
    """Make an uneven surface: noise of three sizes over a colour, darker towards the edges."""
    random = np.random.default_rng(seed)
    field: NDArray[np.float64] = np.zeros((HIGH, WIDE))
    for cell, share in ((180, 1.0), (48, 0.7), (12, 0.25)):
        small = random.normal(size=(HIGH // cell + 2, WIDE // cell + 2)).astype(np.float32)
        field += share * np.asarray(Image.fromarray(small).resize((WIDE, HIGH), Image.Resampling.BICUBIC))
    y, x = np.mgrid[-1 : 1 : HIGH * 1j, -1 : 1 : WIDE * 1j]
    light = 1.0 - 0.28 * (x**2 + y**2)
    made = (np.array(colour)[None, None] + roughness * field[..., None]) * light[..., None]
    return Image.fromarray(np.clip(made, 0, 255).astype(np.uint8))


def rivets(
    pen: ImageDraw.ImageDraw, y: float, *, pitch: int = 34, slope: float = 0.0, weak: tuple[int, ...] = ()
) -> None:
    """Draw a row of rivet points; the weak ones are wasted and weep rust."""
    for number, x in enumerate(range(-10, WIDE + 10, pitch)):
        at, radius = y + slope * x, 5 if number in weak else 9
        pen.ellipse((x - radius + 2, at - radius + 3, x + radius + 2, at + radius + 3), fill=(50, 36, 28))
        pen.ellipse((x - radius, at - radius, x + radius, at + radius), fill=(146, 112, 88))
        pen.ellipse((x - radius // 2, at - radius // 2 - 1, x, at), fill=(182, 150, 124))
        if number in weak:
            pen.polygon([(x - 3, at + 4), (x + 4, at + 4), (x + 9, at + 90), (x - 6, at + 84)], fill=(156, 78, 30))


def seam(pen: ImageDraw.ImageDraw, y: float, *, slope: float = 0.0, opened: tuple[int, int] | None = None) -> None:
    """Draw the edge of a lap, open over a stretch."""
    pen.line((0, y, WIDE, y + slope * WIDE), fill=(58, 42, 34), width=4)
    pen.line((0, y + 4, WIDE, y + 4 + slope * WIDE), fill=(166, 130, 104), width=2)
    if opened:
        pen.line((opened[0], y + slope * opened[0], opened[1], y + slope * opened[1]), fill=(18, 12, 10), width=9)


def pits(pen: ImageDraw.ImageDraw, seed: int, number: int) -> None:
    """Strew pits over the middle of a plate."""
    random = np.random.default_rng(seed)
    for _ in range(number):
        x, y = random.normal(WIDE / 2, 130), random.normal(HIGH / 2 + 20, 80)
        radius = random.uniform(4, 19)
        pen.ellipse((x - radius, y - radius * 0.8, x + radius, y + radius * 0.8), fill=(62, 40, 28))
        pen.arc((x - radius, y - radius * 0.8, x + radius, y + radius * 0.8), 20, 170, fill=(170, 128, 96), width=2)


def scale(pen: ImageDraw.ImageDraw, x: int, y: int) -> None:
    """Lay a rule with parts of ten by the place."""
    for part in range(10):
        fill = (240, 240, 236) if part % 2 else (24, 24, 24)
        pen.rectangle((x + 18 * part, y, x + 18 * part + 17, y + 13), fill=fill)


def plate(colour: Colour, seed: int, draw: Callable[[ImageDraw.ImageDraw], None], *, rule: bool = True) -> Canvas:
    """Draw something on a surface, soften it as a lens does, and lay a rule by it."""
    made = surface(colour, seed)
    draw(ImageDraw.Draw(made))
    made = made.filter(ImageFilter.GaussianBlur(1.1))
    if rule:
        scale(ImageDraw.Draw(made), 40, HIGH - 78)
    return made


def ship_afloat() -> Canvas:
    """Draw the tender from starboard, afloat by a quay."""
    sky = np.linspace((206, 214, 218), (226, 228, 222), 330)[:, None].repeat(WIDE, axis=1)
    water = np.linspace((112, 126, 130), (64, 78, 84), HIGH - 330)[:, None].repeat(WIDE, axis=1)
    made = Image.fromarray(np.concatenate([sky, water]).astype(np.uint8))
    pen = ImageDraw.Draw(made)
    pen.rectangle((0, 292, WIDE, 330), fill=(120, 116, 108))
    hull = [(60, 258), (112, 268), (400, 272), (560, 258), (676, 226), (648, 352), (110, 352), (76, 316)]
    pen.polygon(hull, fill=(34, 36, 40))
    pen.polygon([(78, 330), (652, 330), (648, 352), (110, 352), (92, 344)], fill=RED_OXIDE)
    pen.rectangle((196, 206, 430, 272), fill=(196, 184, 158))
    pen.rectangle((330, 164, 410, 208), fill=(206, 196, 172))
    pen.polygon([(268, 98), (306, 98), (312, 206), (264, 206)], fill=(176, 148, 82))
    pen.line((520, 262, 512, 60), fill=(92, 70, 48), width=7)
    pen.line((516, 120, 604, 66), fill=(92, 70, 48), width=4)
    pen.line((150, 264, 146, 120), fill=(92, 70, 48), width=5)
    for x in range(212, 424, 34):
        pen.ellipse((x, 226, x + 16, 242), fill=(58, 62, 64))
    for y in range(356, 470, 13):
        pen.line((70 + y % 50, y, 650 - y % 70, y), fill=(84, 98, 102), width=2)
    return made.filter(ImageFilter.GaussianBlur(0.8))


def grid(pen: ImageDraw.ImageDraw) -> None:
    """Draw a sea chest with its grid half off."""
    pen.rectangle((170, 110, 560, 430), fill=(22, 20, 20), outline=(150, 116, 90), width=12)
    for x in range(196, 400, 34):
        pen.line((x, 122, x + 12, 418), fill=(112, 84, 62), width=13)
    for at in ((150, 90), (566, 90), (150, 440), (566, 440), (358, 90), (358, 440)):
        pen.ellipse((at[0], at[1], at[0] + 22, at[1] + 22), fill=(150, 118, 94), outline=(40, 30, 24), width=3)


def anode(left: float) -> Callable[[ImageDraw.ImageDraw], None]:
    """Give what draws an anode of which so much is left, on its two straps."""

    def draw(pen: ImageDraw.ImageDraw) -> None:
        pen.rectangle((120, 254, 600, 276), fill=(76, 66, 58))
        long, thick = 340, 40 + 90 * left
        random = np.random.default_rng(int(left * 100))
        for _ in range(60):
            x, y = 360 + random.uniform(-long / 2, long / 2), 265 + random.normal(0, thick / 4)
            radius = random.uniform(10, 12 + 30 * left)
            fill = tuple(int(tone + random.uniform(-16, 16)) for tone in (176, 178, 172))
            pen.ellipse((x - radius, y - radius * 0.7, x + radius, y + radius * 0.7), fill=fill)

    return draw


def floors(pen: ImageDraw.ImageDraw) -> None:
    """Draw the floors of a peak tank as seen from its manhole."""
    for number in range(5):
        inset = 40 + 58 * number
        pen.polygon(
            [(inset, HIGH), (WIDE / 2, 120 + 46 * number), (WIDE - inset, HIGH)],
            fill=(118 - 14 * number, 80 - 10 * number, 52 - 7 * number),
            outline=(46, 30, 22),
        )
        pen.ellipse((WIDE / 2 - 26, 330 + 20 * number, WIDE / 2 + 26, 372 + 20 * number), fill=(26, 18, 14))
    pen.line((WIDE / 2, 0, WIDE / 2, HIGH), fill=(52, 36, 26), width=10)


def planks(seed: int) -> Callable[[ImageDraw.ImageDraw], None]:
    """Give what draws four strakes of planking with treenails, one plank soft at its butt."""

    def draw(pen: ImageDraw.ImageDraw) -> None:
        random = np.random.default_rng(seed)
        for y in range(70, HIGH, 128):
            pen.line((0, y, WIDE, y + 12), fill=(42, 30, 22), width=5)
            pen.line((0, y + 5, WIDE, y + 17), fill=(196, 184, 158), width=2)
            for x in range(80, WIDE, 168):
                for side in (34, 88):
                    pen.ellipse(
                        (x - 9, y + side - 9, x + 9, y + side + 9), fill=(98, 74, 48), outline=(58, 42, 28), width=2
                    )
            for _ in range(14):
                x, at = random.uniform(0, WIDE), y + random.uniform(16, 112)
                pen.line((x, at, x + random.uniform(60, 190), at + 3), fill=(108, 82, 54), width=2)
        pen.line((430, 200, 434, 326), fill=(30, 22, 16), width=6)
        pen.ellipse((438, 214, 600, 316), fill=(72, 56, 44))

    return draw


def bolt(pen: ImageDraw.ImageDraw) -> None:
    """Draw a drawn fastening on a bench, wasted at its neck."""
    pen.polygon(
        [
            (130, 250),
            (352, 256),
            (372, 276),
            (392, 256),
            (590, 250),
            (590, 306),
            (392, 300),
            (372, 282),
            (352, 300),
            (130, 306),
        ],
        fill=(88, 62, 46),
    )
    pen.rectangle((96, 222, 140, 334), fill=(76, 54, 42))


def riveted(
    *rows: tuple[float, tuple[int, ...]], joint: float = 0.0, opened: tuple[int, int] | None = None
) -> Callable[[ImageDraw.ImageDraw], None]:
    """Give what draws rows of rivets along a seam."""

    def draw(pen: ImageDraw.ImageDraw) -> None:
        if joint:
            seam(pen, joint, opened=opened)
        for y, weak in rows:
            rivets(pen, y, weak=weak)

    return draw


def doubler(pen: ImageDraw.ImageDraw) -> None:
    """Draw the corner of a doubler welded over riveted plate, weeping at its edge."""
    rivets(pen, 90)
    pen.polygon([(190, 180), (WIDE, 168), (WIDE, HIGH), (196, HIGH)], fill=(112, 82, 64))
    for step in range(70):
        pen.ellipse((184, 178 + 6 * step, 200, 188 + 6 * step), fill=(134, 126, 118))
        pen.ellipse((190 + 9 * step, 172 - step * 0.15, 202 + 9 * step, 186 - step * 0.15), fill=(134, 126, 118))
    for x in (214, 330, 352, 520):
        pen.polygon([(x, 182), (x + 10, 182), (x + 18, 330), (x - 6, 310)], fill=(160, 82, 34))


def bilge_keel(pen: ImageDraw.ImageDraw) -> None:
    """Draw a bilge keel set in over a stretch."""
    pen.line([(0, 250), (240, 258), (330, 300), (430, 302), (520, 262), (WIDE, 268)], fill=(42, 32, 28), width=26)
    pen.line([(0, 240), (240, 248), (330, 290), (430, 292), (520, 252), (WIDE, 258)], fill=(150, 112, 88), width=5)
    rivets(pen, 214)


def pitted(seed: int, number: int) -> Callable[[ImageDraw.ImageDraw], None]:
    """Give what draws a pitted plate between two seams."""

    def draw(pen: ImageDraw.ImageDraw) -> None:
        rivets(pen, 52)
        pits(pen, seed, number)

    return draw


DRAWN: dict[Path, Callable[[], Canvas]] = {
    MARRAM / "photographs/2026-06-16-profile-starboard.jpg": ship_afloat,
    MARRAM / "photographs/2026-06-16-a-port-fr-34-seam.jpg": lambda: plate(
        RUST, 2, riveted((178, ()), (330, (7, 8)), joint=254, opened=(250, 470))
    ),
    MARRAM / "photographs/2026-06-16-b-port-fr-38-pits.jpg": lambda: plate(RUST, 3, pitted(3, 60)),
    MARRAM / "photographs/2026-06-16-b-starboard-fr-40-pits.jpg": lambda: plate(RUST, 4, pitted(4, 34)),
    MARRAM / "photographs/2026-06-16-c-port-fr-40-doubler.jpg": lambda: plate(RED_OXIDE, 5, doubler),
    MARRAM / "photographs/2026-06-16-c-port-fr-44-rivets.jpg": lambda: plate(
        RUST, 6, riveted((150, (4, 9)), (240, (5, 6, 13)), (330, ()), joint=390)
    ),
    MARRAM / "photographs/2026-06-16-bilge-keel-port-fr-52.jpg": lambda: plate(RED_OXIDE, 7, bilge_keel),
    MARRAM / "photographs/2026-06-16-sea-chest-main.jpg": lambda: plate(RED_OXIDE, 8, grid),
    MARRAM / "photographs/2026-06-16-anode-p2.jpg": lambda: plate(RED_OXIDE, 9, anode(0.2)),
    MARRAM / "photographs/2026-06-16-anode-p12.jpg": lambda: plate(RED_OXIDE, 10, anode(0.55)),
    MARRAM / "photographs/2025-10-07-forepeak-floors.jpg": lambda: plate(RUST, 11, floors, rule=False),
    MARRAM / "owner/photographs/2027-05-10-f-port-fr-23.jpg": lambda: plate(
        STEEL, 12, riveted((120, ()), (420, (3, 4, 10)), joint=470)
    ),
    MARRAM / "owner/photographs/2027-05-11-sea-chest-auxiliary.jpg": lambda: plate(STEEL, 13, grid),
    WITHY / "photographs/plank-p4-2.jpg": lambda: plate(TIMBER, 21, planks(21)),
    WITHY / "photographs/plank-p1-1-butt.jpg": lambda: plate(TIMBER, 22, planks(22)),
    WITHY / "photographs/hood-end-h4.jpg": lambda: plate((150, 142, 128), 23, bolt),
}  # fmt: skip


def main() -> None:
    """Draw every picture, with the words that it is invented, in as few bytes as it takes."""
    for path, draw in DRAWN.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        made = draw()
        pen = ImageDraw.Draw(made)
        pen.rectangle((0, HIGH - 34, WIDE, HIGH), fill=(244, 244, 240))
        pen.text(
            (14, HIGH - 30),
            "invented picture, drawn by calculation",
            fill=(20, 20, 20),
            font=ImageFont.load_default(22),
        )
        made.save(path, "JPEG", quality=58, optimize=True)
        assert path.stat().st_size < MOST_BYTES, path
        print(path.name, path.stat().st_size)


if __name__ == "__main__":
    main()
