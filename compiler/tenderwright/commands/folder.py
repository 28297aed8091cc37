"""Find the folder of a package."""

from __future__ import annotations

from pathlib import Path


class WrongUse(Exception):
    """The command line asks for something that cannot be done; the message says why."""


def package_folder(given: Path | None) -> Path:
    """Give the folder of the package: as given, or here, or package_src below here; raises WrongUse."""
    if given is not None:
        if not given.is_dir():
            raise WrongUse(f"`{given}` is not a folder")
        if not (given / "package.yaml").is_file():
            raise WrongUse(
                f"`{given}` is not a package, since there is no package.yaml in it; name the folder that holds one, or "
                "`tenderwright start DIR` to begin one"
            )
        return given
    here = Path()
    for folder in (here, here / "package_src"):
        if (folder / "package.yaml").is_file():
            return folder
    raise WrongUse(
        "there is no package.yaml here; name the folder of a package, or `tenderwright start DIR` to begin one"
    )
