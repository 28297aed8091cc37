"""Serves the typesetter what the build itself holds, and refuses the rest of the world."""

from __future__ import annotations

import logging
import re
from base64 import b64decode
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from tenderwright.writing.errors import WritingError
from tenderwright.writing.faces import face_bytes

_PICTURE = re.compile(r"data:(image/(?:png|jpeg));base64,")


def build_fetcher() -> Any:
    """Make a URL fetcher for WeasyPrint that stops the build at any address but of typefaces and of held pictures."""
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    class BuildFetcher(URLFetcher):  # type: ignore[misc]
        """Serves typefaces by their own scheme, and pictures whose bytes stand in the address itself."""

        def fetch(self, url: str, headers: object = None) -> Any:
            if picture := _PICTURE.match(url):
                return URLFetcherResponse(url, b64decode(url[picture.end() :]), {"Content-Type": picture[1]})
            content = face_bytes(url)
            if content is None:
                raise WritingError(f"a page asks for {url!r}, which the build does not hold")
            return URLFetcherResponse(url, content, {"Content-Type": "font/otf"})

    return BuildFetcher(fail_on_errors=True)


class _Recorder(logging.Handler):
    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.messages: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.messages.append(record.getMessage())


@contextmanager
def no_complaints(subject: str) -> Iterator[None]:
    """Raise `WritingError` when WeasyPrint warns of anything, or asks for what the build does not hold."""
    from weasyprint.urls import FatalURLFetchingError

    logger = logging.getLogger("weasyprint")
    recorder = _Recorder()
    logger.addHandler(recorder)
    try:
        yield
    except FatalURLFetchingError as error:
        raise WritingError(f"{subject}: {error.__cause__ or error}") from error
    finally:
        logger.removeHandler(recorder)
    if recorder.messages:
        raise WritingError(f"{subject}: {'; '.join(recorder.messages)}")
