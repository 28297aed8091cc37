"""Pictures of the places of an item, keyed by frame and strake."""

from __future__ import annotations

from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import Block, Picture, Pictures
from tenderwright.model.item import Item
from tenderwright.model.item_parts import PlacePicture
from tenderwright.quantities.customs import day


def item_pictures(desk: Desk, item: Item) -> list[Block]:
    """Compose the pictures of an item that go along with the tender."""
    found = [(one, desk.package.travelling.get(one.file)) for one in item.pictures]
    pictures = tuple(
        Picture(one.file, file.content, _caption(one), f"{one.shows}. {_key(one)}".strip())
        for one, file in found
        if file is not None
    )
    return [Pictures(pictures)] if pictures else []


def _key(picture: PlacePicture) -> str:
    """Say where a picture was taken, such as `Fr 40, strake C, port`."""
    words = (str(picture.frame or ""), f"strake {picture.strake}" if picture.strake else "", picture.side)
    return ", ".join(word for word in words if word)


def _caption(picture: PlacePicture) -> str:
    taken = day(picture.taken) if picture.taken is not None else ""
    about = capital(", ".join(word for word in (picture.looking, taken) if word))
    return ". ".join(word for word in (_key(picture), picture.shows, about) if word) + "."
