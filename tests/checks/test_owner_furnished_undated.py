"""Material of the owner's without a day of delivery is reported where the model holds none."""

from __future__ import annotations

from pathlib import Path

from tenderwright.checks.context import Context
from tenderwright.checks.owner_furnished_undated import check
from tenderwright.pipeline import compile_package, read
from tenderwright.starter.write import write_starter
from tests.replacing import replace


def test_no_day_of_delivery(tmp_path: Path) -> None:
    write_starter(tmp_path)
    compiled = compile_package(read(tmp_path))
    item = compiled.package.item_by_name["420"]
    paint = replace(item.owner_furnished[0], delivered=None)
    package = replace(compiled.package, items=(replace(item, owner_furnished=(paint,)),))
    (notice,) = check(Context(package, compiled.links, compiled.calculated))
    assert notice.code == "owner-furnished-undated"
    assert notice.place == paint.here
    assert "no day of delivery" in notice.message
