"""The HTML edition in a browser: it opens, its search finds, its links lead there and back, and it loads nothing."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Locator, expect

from tests.documents.composed import words

from .conftest import CEILING, DOCUMENTS, Opened, listen

expect.set_options(timeout=CEILING)

of_the_starter = pytest.mark.parametrize("opened", DOCUMENTS[:2], indirect=True, ids="-".join)
"""For what is the same however much there is to read."""

LINKS = """() => Array.from(document.querySelectorAll('a[href^="#"]'), (link) => {
  const target = document.getElementById(link.hash.slice(1));
  const part = (node) => node?.closest("section.part")?.id ?? "";
  const paging = Boolean(link.closest(".ways, .here"));
  return [link.hash, Boolean(target?.checkVisibility()), part(link), part(target), paging];
})"""
"""Every link within the page: where to, whether that is there to be seen, from which part to which, if only paging."""

OVERFLOWING = """() => Array.from(document.querySelectorAll("body *"))
  .filter((one) => !one.closest("svg, .table, .skip, .read-now, .prose table, summary") && one.checkVisibility())
  .filter((one) => one.getBoundingClientRect().right > window.innerWidth + 1)
  .map((one) => one.outerHTML.slice(0, 100))"""
"""What reaches past the right edge of the window; a wide table scrolls within its own box."""

OUTSIDE_THEIR_DRAWING = """() => Array.from(document.querySelectorAll("figure svg text")).filter((text) => {
  const box = text.getBoundingClientRect();
  const frame = text.ownerSVGElement.getBoundingClientRect();
  const over = Math.max(frame.left - box.left, box.right - frame.right, frame.top - box.top, box.bottom - frame.bottom);
  return box.width && over > 2;
}).map((text) => text.closest("figure").textContent.slice(0, 40) + ": " + text.textContent)"""
"""Texts that reach past the edge of their drawing by more than 2 pixels."""


def shown_parts(opened: Opened) -> list[str]:
    return [part.anchor for part in opened.edition.parts if part.kind not in ("cover", "contents")]


def search(opened: Opened) -> Locator:
    return opened.page.get_by_role("searchbox", name="Search this document")


def listed(opened: Opened) -> list[str]:
    """Name the parts whose entries in the contents are to be seen."""
    entries = opened.page.locator("nav li[data-part]:visible")
    found: list[str] = entries.evaluate_all("(entries) => entries.map((entry) => entry.dataset.part)")
    return found


def asked_for(opened: Opened) -> str:
    return "rivets hole" if opened.composed.compiled.files.root.name == "sandling" else "gasket bolts"


def holding(opened: Opened, query: str) -> list[str]:
    """Name the parts that hold all the words, as the edition was composed."""
    parts = [part for part in opened.edition.parts if part.anchor in shown_parts(opened)]
    return [part.anchor for part in parts if all(word in words(part).lower() for word in query.split())]


def test_it_opens_whole(opened: Opened) -> None:
    page, edition = opened.page, opened.edition
    expect(page).to_have_title(f"{edition.title} · {edition.tender}")
    expect(page.get_by_role("heading", level=1).first).to_have_text(edition.title)
    sections = page.locator("section.part:visible")
    assert sections.evaluate_all("(sections) => sections.map((one) => one.id)") == shown_parts(opened)
    assert listed(opened) == shown_parts(opened)
    for title, part in zip(sections.locator("header h1").all_inner_texts(), shown_parts(opened), strict=True):
        assert next(one.title for one in edition.parts if one.anchor == part) in title


@pytest.mark.parametrize("width", [1400, 390])
def test_nothing_runs_off_the_side(width: int, opened: Opened) -> None:
    opened.page.set_viewport_size({"width": width, "height": 900})
    opened.page.locator(".parts-list").evaluate("(list) => { list.open = true; }")
    assert opened.page.evaluate("document.documentElement.scrollWidth") <= width
    assert opened.page.evaluate(OVERFLOWING) == []


def test_the_texts_of_a_drawing_stay_inside_its_frame(opened: Opened) -> None:
    assert opened.page.evaluate(OUTSIDE_THEIR_DRAWING) == []


def test_the_contents_follow_the_reader(opened: Opened) -> None:
    opened.page.set_viewport_size({"width": 1400, "height": 900})
    for part in (shown_parts(opened)[1], shown_parts(opened)[-1], shown_parts(opened)[0]):
        opened.page.locator(f"#{part}").evaluate("(section) => section.scrollIntoView()")
        current = opened.page.locator("nav a[aria-current]")
        expect(current).to_have_attribute("href", f"#{part}")
        expect(current).to_be_in_viewport()


def test_an_item_lists_its_lines_beside_it(opened: Opened) -> None:
    opened.page.set_viewport_size({"width": 1400, "height": 900})
    item = next(one for one in opened.composed.compiled.package.items if one.lines and not one.withdrawn)
    opened.page.locator(f"#item-{item.number}").evaluate("(section) => section.scrollIntoView()")
    lines = opened.page.locator("nav .lines a:visible")
    expect(lines.locator(".number")).to_have_text([f"{item.number}.{line.line}" for line in item.lines])
    lines.last.click()
    expect(opened.page.locator(":target")).to_be_in_viewport()


@of_the_starter
def test_on_a_telephone_the_contents_stay_at_the_top_and_close_when_followed(opened: Opened) -> None:
    opened.page.set_viewport_size({"width": 390, "height": 844})
    opened.load()
    last = shown_parts(opened)[-1]
    opened.page.locator(f"#{last}").evaluate("(section) => section.scrollIntoView()")
    summary = opened.page.locator(".parts-list summary")
    expect(summary).to_be_in_viewport()
    title = next(part.title for part in opened.edition.parts if part.anchor == last)
    expect(summary).to_contain_text(title)
    summary.click()
    opened.page.locator(f'nav a[href="#{shown_parts(opened)[0]}"]').click()
    expect(opened.page.locator("nav ul").first).to_be_hidden()
    expect(opened.page.locator(f"#{shown_parts(opened)[0]} header")).to_be_in_viewport()


def test_every_link_within_it_leads_to_something_that_is_seen(opened: Opened) -> None:
    links = opened.page.evaluate(LINKS)
    assert len(links) > 3 * len(shown_parts(opened))
    assert [where for where, seen, *_ in links if not seen] == []


def test_items_lead_to_each_other_and_back(opened: Opened) -> None:
    links = opened.page.evaluate(LINKS)
    pairs = {(one, other) for _, _, one, other, paging in links if not paging and one != other}
    # A withdrawn item still says what it came after; nothing refers to it any more.
    withdrawn = {f"item-{item.number}" for item in opened.composed.compiled.package.items if item.withdrawn}
    between = {pair for pair in pairs if all(part.startswith("item-") for part in pair) and pair[0] not in withdrawn}
    assert len(between) >= 12
    assert [(one, other) for one, other in between if (other, one) not in between] == []

    one, other = min(between)
    _follow(opened, one, other)
    _follow(opened, other, one)
    opened.page.go_back()
    expect(opened.page).to_have_url(re.compile(f"#{other}(-\\d+)?$"))


def _follow(opened: Opened, one: str, other: str) -> None:
    """Click the first link from one part to another, and see that it is come to."""
    link = opened.page.locator(f'#{one} a[href="#{other}"], #{one} a[href^="#{other}-"]')
    link.and_(opened.page.locator(":not(.ways a)")).first.click()
    expect(opened.page).to_have_url(re.compile(f"#{other}(-\\d+)?$"))
    expect(opened.page.locator(":target")).to_be_in_viewport()


@of_the_starter
def test_the_contents_lead_to_the_last_part_and_top_back(opened: Opened) -> None:
    last = shown_parts(opened)[-1]
    opened.page.locator(f'nav a[href="#{last}"]').click()
    expect(opened.page.locator(f"#{last} header")).to_be_in_viewport()
    opened.page.locator(f"#{last}").get_by_role("link", name="Top").click()
    expect(opened.page.locator("#top")).to_be_in_viewport()


def test_search_finds_the_parts_that_hold_all_the_words(opened: Opened) -> None:
    query = asked_for(opened)
    wanted = holding(opened, query)
    assert 0 < len(wanted) < len(shown_parts(opened)) / 2
    found, marks = opened.page.locator("#found"), opened.page.locator("mark.hit")
    before = opened.page.locator("main").text_content()

    opened.page.keyboard.press("/")
    expect(search(opened)).to_be_focused()
    search(opened).fill(query)
    expect(found).to_have_text(re.compile(f" in {len(wanted)} parts?$"))
    assert listed(opened) == wanted
    count = marks.count()
    expect(found).to_have_text(re.compile(f"^{count} places? in "))
    assert {text.lower() for text in marks.all_inner_texts()} == set(query.split())

    for key, place in (("Enter", 1), ("Enter", 2), ("Shift+Enter", 1)):
        search(opened).press(key)
        expect(found).to_have_text(f"Place {place} of {count}")
        expect(marks.nth(place - 1)).to_be_in_viewport()
        expect(marks.nth(place - 1)).to_have_class("hit current")

    search(opened).press("Escape")
    expect(marks).to_have_count(0)
    assert listed(opened) == shown_parts(opened)
    assert opened.page.locator("main").text_content() == before


@of_the_starter
def test_search_for_what_is_nowhere_says_so(opened: Opened) -> None:
    search(opened).fill("zanzikarree")
    expect(opened.page.locator("#found")).to_have_text("No part holds all these words.")
    assert listed(opened) == []
    expect(opened.page.get_by_role("button", name="Next")).to_be_disabled()


@of_the_starter
def test_an_address_can_carry_what_to_search_for(opened: Opened) -> None:
    query = asked_for(opened)
    opened.load(f"?find={query.replace(' ', '+')}")
    expect(search(opened)).to_have_value(query)
    assert listed(opened) == holding(opened, query)


@of_the_starter
def test_without_scripts_it_is_read_all_the_same(opened: Opened) -> None:
    browser = opened.page.context.browser
    assert browser is not None
    page = browser.new_page(java_script_enabled=False)
    page.set_default_timeout(CEILING)
    page.goto(opened.file.as_uri())
    expect(page.get_by_role("search")).to_be_hidden()
    last = shown_parts(opened)[-1]
    page.locator(f'nav a[href="#{last}"]').click()
    expect(page.locator(f"#{last} header")).to_be_in_viewport()
    page.context.close()


def test_what_listens_hears_errors_and_requests(context: BrowserContext, tmp_path: Path) -> None:
    spoilt = tmp_path / "spoilt.html"
    spoilt.write_text('<img src="other.png"><script>console.warn("so"); nothing.there()</script>', "utf-8")
    said: list[str] = []
    asked: list[str] = []
    page = context.new_page()
    listen(page, said, asked)
    page.goto(spoilt.as_uri())
    assert asked == [spoilt.as_uri(), (tmp_path / "other.png").as_uri()]
    assert "warning: so" in said
    assert any("nothing is not defined" in one for one in said)
