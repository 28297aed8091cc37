"use strict";
(function () {
  const query = document.getElementById("query");
  const found = document.getElementById("found");
  const earlier = document.getElementById("earlier");
  const later = document.getElementById("later");
  const sections = Array.from(document.querySelectorAll("[data-words]"));
  const entries = new Map(Array.from(document.querySelectorAll("[data-part]"), (entry) => [entry.dataset.part, entry]));
  let hits = [];
  let at = -1;
  let waiting = 0;

  function fold(text) {
    return text.toLowerCase();
  }

  function words() {
    return fold(query.value).split(/\s+/).filter((word) => word.length > 1 || /\d/.test(word));
  }

  function clear() {
    for (const mark of document.querySelectorAll("mark.hit")) {
      const parent = mark.parentNode;
      mark.replaceWith(document.createTextNode(mark.textContent));
      parent.normalize();
    }
    for (const section of sections) section.classList.remove("quiet");
    for (const entry of entries.values()) {
      entry.hidden = false;
      entry.querySelector(".hits").textContent = "";
    }
    showGroups();
    hits = [];
    at = -1;
  }

  function showGroups() {
    for (const group of document.querySelectorAll("nav .group")) {
      group.hidden = !group.nextElementSibling.querySelector(":scope > li:not([hidden])");
    }
  }

  function textNodes(section) {
    const walker = document.createTreeWalker(section, NodeFilter.SHOW_TEXT, {
      acceptNode: (node) =>
        node.nodeValue.trim() && !node.parentElement.closest("svg, .ways, .here")
          ? NodeFilter.FILTER_ACCEPT
          : NodeFilter.FILTER_REJECT,
    });
    const nodes = [];
    while (walker.nextNode()) nodes.push(walker.currentNode);
    return nodes;
  }

  function markWords(node, wanted) {
    const text = fold(node.nodeValue);
    if (text.length !== node.nodeValue.length) return;
    const spans = [];
    for (const word of wanted) {
      for (let from = text.indexOf(word); from >= 0; from = text.indexOf(word, from + word.length)) {
        spans.push([from, from + word.length]);
      }
    }
    spans.sort((a, b) => b[0] - a[0]);
    let limit = Infinity;
    for (const [from, to] of spans) {
      if (to > limit) continue;
      limit = from;
      const range = document.createRange();
      range.setStart(node, from);
      range.setEnd(node, to);
      const mark = document.createElement("mark");
      mark.className = "hit";
      range.surroundContents(mark);
    }
  }

  function search() {
    clear();
    const wanted = words();
    if (!wanted.length) {
      found.textContent = "";
      earlier.disabled = later.disabled = true;
      return;
    }
    let parts = 0;
    for (const section of sections) {
      const text = fold(section.textContent);
      const holds = wanted.every((word) => text.includes(word));
      section.classList.toggle("quiet", !holds);
      const entry = entries.get(section.id);
      if (entry) entry.hidden = !holds;
      if (!holds) continue;
      parts += 1;
      for (const node of textNodes(section)) markWords(node, wanted);
      const count = section.querySelectorAll("mark.hit").length;
      if (entry) entry.querySelector(".hits").textContent = count ? String(count) : "";
    }
    showGroups();
    hits = Array.from(document.querySelectorAll("mark.hit"));
    earlier.disabled = later.disabled = hits.length === 0;
    found.textContent = parts
      ? hits.length + (hits.length === 1 ? " place in " : " places in ") + parts + (parts === 1 ? " part" : " parts")
      : "No part holds all these words.";
  }

  function go(step) {
    if (!hits.length) return;
    if (at >= 0) hits[at].classList.remove("current");
    at = (at + step + hits.length) % hits.length;
    hits[at].classList.add("current");
    hits[at].scrollIntoView({ block: "center" });
    found.textContent = "Place " + (at + 1) + " of " + hits.length;
  }

  query.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(search, 120);
  });
  query.addEventListener("keydown", (event) => {
    if (event.key === "Enter") {
      event.preventDefault();
      go(event.shiftKey ? -1 : 1);
    } else if (event.key === "Escape") {
      query.value = "";
      search();
    }
  });
  earlier.addEventListener("click", () => go(at < 0 ? 0 : -1));
  later.addEventListener("click", () => go(1));
  document.addEventListener("keydown", (event) => {
    if (event.key === "/" && !/^(INPUT|TEXTAREA)$/.test(document.activeElement.tagName)) {
      event.preventDefault();
      query.focus();
    }
  });
  // The contents follow the reader: the part at the top of the window is marked, and its lines are listed.
  const list = document.querySelector(".parts-list");
  const narrow = window.matchMedia("(max-width: 60rem)");
  const readNow = document.querySelector(".read-now");
  const following = sections.filter((section) => entries.has(section.id));
  let now = null;

  function follow() {
    const line = Math.min(160, window.innerHeight / 4);
    let low = 0;
    let high = following.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (following[middle].getBoundingClientRect().top <= line) low = middle + 1;
      else high = middle;
    }
    const entry = low ? entries.get(following[low - 1].id) : null;
    if (entry === now) return;
    if (now) {
      now.classList.remove("now");
      now.firstElementChild.removeAttribute("aria-current");
    }
    now = entry;
    readNow.textContent = entry ? " · " + Array.from(entry.firstElementChild.children, (one) => one.textContent).join(" ").trim() : "";
    if (!entry) return;
    entry.classList.add("now");
    entry.firstElementChild.setAttribute("aria-current", "true");
    const nav = list.parentElement;
    const from = entry.getBoundingClientRect().top - nav.getBoundingClientRect().top;
    if (from < 60 || from > nav.clientHeight - 120) nav.scrollTop += from - nav.clientHeight / 3;
  }

  let due = false;
  function followSoon() {
    if (due) return;
    due = true;
    requestAnimationFrame(() => {
      due = false;
      follow();
    });
  }
  window.addEventListener("scroll", followSoon, { passive: true });
  window.addEventListener("resize", followSoon);
  list.addEventListener("toggle", followSoon);
  list.addEventListener("click", (event) => {
    if (narrow.matches && event.target.closest("a")) list.open = false;
  });
  document.querySelector(".search").hidden = false;
  if (narrow.matches) list.open = false;
  follow();
  const asked = new URLSearchParams(location.search).get("find");
  if (asked) {
    query.value = asked;
    search();
  }
})();
