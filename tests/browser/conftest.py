from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from tenderwright.documents.edition import Edition
from tenderwright.writing.html import screen_page
from tests.documents.composed import Composed, Name, composed
from tests.programs import lacking

PROGRAMS = ("chromium", "chromium-browser", "google-chrome")
ALONE = ("--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync")  # fmt: skip
"""A container gives the browser neither a sandbox nor a screen, and it asks nothing of the net on its own account."""
CEILING = 300_000
"""When to give up waiting for what never comes, ms."""

DOCUMENTS: tuple[tuple[Name, str], ...] = (
    ("starter", "yard"),
    ("starter", "priced"),
    ("marram", "yard"),
    ("marram", "priced"),
)


@dataclass
class Opened:
    """A document in a page of the browser, with what the page said and what it asked for."""

    page: Page
    file: Path
    composed: Composed
    edition: Edition
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)

    def load(self, more: str = "") -> None:
        """Open the file anew, with what stands after its name in the address."""
        self.page.goto(self.file.as_uri() + more)


def listen(page: Page, said: list[str], asked: list[str]) -> None:
    """Write down every error and word of the console, and every request."""
    page.set_default_timeout(CEILING)
    page.on("console", lambda message: said.append(f"{message.type}: {message.text}"))
    page.on("pageerror", lambda error: said.append(f"error: {error}"))
    page.on("request", lambda request: asked.append(request.url.partition("#")[0].partition("?")[0]))


@pytest.fixture(scope="package")
def browser() -> Iterator[Browser]:
    program = next(filter(None, map(shutil.which, PROGRAMS)), None)
    if program is None:
        lacking("Chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=ALONE, timeout=0)
        yield browser
        browser.close()


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport={"width": 1280, "height": 900}, offline=True)
    yield context
    context.close()


@pytest.fixture(scope="package")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("documents")


@pytest.fixture(params=DOCUMENTS, ids="-".join)
def opened(request: pytest.FixtureRequest, context: BrowserContext, folder: Path) -> Iterator[Opened]:
    """Open a document; whatever a test does with it, nothing goes wrong in it and nothing else is loaded."""
    package, name = request.param
    made = composed(package)
    file = folder / f"{package}-{name}.html"
    if not file.exists():
        file.write_text(screen_page(made.edition(name)), "utf-8")
    opened = Opened(context.new_page(), file, made, made.edition(name))
    listen(opened.page, opened.said, opened.asked)
    opened.load()
    yield opened
    assert opened.said == []
    assert set(opened.asked) == {opened.file.as_uri()}
