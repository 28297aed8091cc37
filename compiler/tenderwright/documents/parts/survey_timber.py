"""The forms for a hull of wood: planking, seams, borings, moisture and fastenings, by the names of the last survey."""

from __future__ import annotations

from collections.abc import Sequence

from tenderwright.documents.desk import Desk
from tenderwright.documents.edition import Block, Heading
from tenderwright.documents.parts.survey_form import blank, entered, form, padded

_SPARE = 4
"""Empty rows after those of the last survey."""


def timber(desk: Desk) -> list[Block]:
    """Compose the forms; what the last survey named is asked again at the same place, and there is room for more."""
    known = desk.package.timber
    q = desk.quantity
    planks = [
        (one.plank, one.strake, one.side, str(one.from_), str(one.to), one.species, q(one.thickness), one.condition)
        for one in (known.planks if known else ())
    ]
    seams = [(one.seam, one.side, q(one.length), one.material, one.state) for one in (known.seams if known else ())]
    cores = [(one.core, one.where, str(one.at), one.side) for one in (known.borings if known else ())]
    spots = [
        (one.spot, str(one.at), one.side, q(one.height), q(one.reading)) for one in (known.moisture if known else ())
    ]
    zones = [(one.zone, one.name, one.kind, str(one.number)) for one in (known.fastenings if known else ())]
    file = "vessel/timber.yaml"
    return [
        *_form(
            "Planking",
            [
                ("plank", 0.8),
                ("strake", 0.9),
                ("side", 0.9),
                ("from", 0.8),
                ("to", 0.8),
                ("species", 1.0),
                ("thickness", 0.9),
                ("last time", 0.9),
                ("condition", 1.0),
                ("notes: soft, split, sprung", 3.0),
                ("photograph", 1.1),
            ],
            planks,
            entered(f"{file}, planks", "condition is sound, watch or renew"),
        ),
        *_form(
            "Caulking",
            [
                ("seam", 2.0),
                ("side", 0.9),
                ("length", 0.8),
                ("material", 1.6),
                ("last time", 0.9),
                ("state", 1.0),
                ("depth", 0.8),
                ("payed", 1.4),
                ("raked", 1.0),
                ("photograph", 1.1),
            ],
            seams,
            entered(f"{file}, seams", "state is hard, soft, weeping, spewed or open"),
        ),
        *_form(
            "Borings",
            [
                ("core", 0.7),
                ("where", 2.0),
                ("at", 0.8),
                ("side", 0.9),
                ("height", 0.8),
                ("through", 0.9),
                ("sound_from", 1.0),
                ("decay", 0.8),
                ("plugged", 0.8),
                ("photograph", 1.1),
            ],
            cores,
            entered(f"{file}, borings", "each hole is plugged before the surveyor leaves"),
        ),
        *_form(
            "Moisture",
            [
                ("spot", 0.8),
                ("at", 0.9),
                ("side", 0.9),
                ("height", 0.9),
                ("last time", 1.0),
                ("reading", 1.0),
                ("seen there", 3.0),
            ],
            spots,
            entered(
                f"{file}, moisture",
                "above some 25 % the meter ranks wet and wetter and measures no more (US Forest "
                "Products Laboratory, report 2147)",
            ),
        ),
        *_form(
            "Fastenings drawn",
            [
                ("zone", 1.1),
                ("name", 2.0),
                ("kind", 0.9),
                ("number", 0.8),
                ("fastening", 0.9),
                ("side", 0.8),
                ("at", 0.8),
                ("new", 0.7),
                ("now", 0.7),
                ("neck", 0.6),
                ("pull", 0.8),
                ("wood", 0.9),
                ("replaced_by", 1.2),
            ],
            [zone for zone in zones for _ in range(_DRAWN)],
            entered(
                f"{file}, fastenings",
                "chosen at random, eight or more a side in each zone (from memory); pull is hard, "
                "fair, easy or broke; wood is sound, soft, nail sick or stained",
            ),
        ),
    ]


_DRAWN = 8
"""Rows for fastenings of each zone on a form; more go on another copy."""


def _form(title: str, columns: list[tuple[str, float]], rows: Sequence[tuple[str, ...]], note: str) -> list[Block]:
    cells = [padded(row, len(columns)) for row in rows]
    return [Heading(title), *form(columns, [*cells, *blank(_SPARE, len(columns))], note)]
