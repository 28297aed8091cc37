"""Makes the elements of WordprocessingML (ECMA-376 part 1, section 17)."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from docx.oxml.xmlchemy import BaseOxmlElement

    Node = BaseOxmlElement


def node(tag: str, *children: Node, **attributes: str | int) -> Node:
    """Make an element of the main namespace; an attribute of another is written as `r_id` for `r:id`."""
    from docx.oxml.ns import qn
    from docx.oxml.parser import OxmlElement

    made = OxmlElement(f"w:{tag}")
    for name, value in attributes.items():
        space, _, local = name.rpartition("_")
        made.set(qn(f"{space or 'w'}:{local}"), str(value))
    made.extend(children)
    return made


def paragraph(style: str, *children: Node, before: tuple[Node, ...] = (), after: tuple[Node, ...] = ()) -> Node:
    """Make a paragraph of a style, with what else its properties hold before and after the place of spacing."""
    return node("p", node("pPr", node("pStyle", val=style), *before, *after), *children)


def text_run(text: str, style: str = "") -> Node:
    """Make a run of text, of a character style where one is named; tabs and line ends are kept."""
    run = node("r", *((node("rPr", node("rStyle", val=style)),) if style else ()))
    for line, words in enumerate(text.split("\n")):
        if line:
            run.append(node("br"))
        for column, piece in enumerate(words.split("\t")):
            if column:
                run.append(node("tab"))
            if piece:
                run.append(_text(piece))
    return run


def field(instruction: str, shown: str) -> Node:
    """Make a field with what it shows until it is reckoned."""
    return node("fldSimple", text_run(shown), instr=instruction)


def complex_field(instruction: str) -> tuple[tuple[Node, ...], Node]:
    """Make the runs that open a field about several paragraphs, and the one that closes it."""
    words = node("instrText", xml_space="preserve")
    words.text = instruction
    opening = tuple(
        node("r", inside)
        for inside in (node("fldChar", fldCharType="begin"), words, node("fldChar", fldCharType="separate"))
    )
    return opening, node("r", node("fldChar", fldCharType="end"))


def _text(words: str) -> Node:
    made = node("t", xml_space="preserve")
    made.text = words
    return made
