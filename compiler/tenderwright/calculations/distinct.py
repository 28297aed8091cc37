"""Values in order, each once."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray


def distinct(values: NDArray[Any]) -> NDArray[Any]:
    """Give the values in order, each once: as `np.unique`, which loads all of `numpy.ma` when it is first used."""
    ordered = np.sort(values)
    return ordered[np.append(True, ordered[1:] != ordered[:-1])] if ordered.size else ordered
