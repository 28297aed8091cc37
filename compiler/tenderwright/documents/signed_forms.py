"""The forms that a bidder signs and returns with the price form: offer, security and declaration."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tenderwright.documents.desk import Desk, capital
from tenderwright.documents.edition import (
    Block,
    Bullets,
    Column,
    Edition,
    Facts,
    Heading,
    Part,
    Row,
    Table,
    inline,
)
from tenderwright.documents.parts.contract import to_sign, when
from tenderwright.documents.price_form import PriceForm
from tenderwright.model.build import TO_BE_WRITTEN
from tenderwright.model.contract import BID_SECURITY, DECLARATION, OFFER, SECURITY
from tenderwright.quantities.customs import day

_NO_ADVICE = (
    "To be filled in, signed and returned with the price form. This form gives no legal advice; what the law of the "
    "place asks for besides is for the parties."
)
_TITLES = {OFFER: "Offer", SECURITY: "Security", DECLARATION: "Declaration"}
_SUBCONTRACTORS = 6
"""Empty rows for subcontractors."""
DECLARED = (
    "No conflict of interest: nobody of the firm has an interest in the owner, in its trustees or in its advisers.",
    "No collusion: the prices were made without any agreement with another bidder, and were told to none.",
    "No sanctions: neither the firm nor those who own or lead it stand on a list of sanctions.",
    "No insolvency: the firm is not insolvent, being wound up or under an administrator, nor about to be.",
    "No conviction in five years for bribery or fraud, or of a breach of the law on safety or waste.",
    "Taxes, wages and social charges that have fallen due are paid.",
)
INSURED = (
    "Ship-repairer's liability, with the ship in the firm's care",
    "The firm's own people",
    "Third parties on the site",
    "Pollution",
)


def signed_forms(desk: Desk, edition: Edition, form: PriceForm) -> dict[str, Edition]:
    """Compose the forms that bidders sign, by file stem."""
    made = {OFFER: _offer(desk, form), SECURITY: _security(desk), DECLARATION: _declaration(desk)}
    return {stem: _paper(desk, edition, name, made[name]) for stem, name in to_sign(desk).items()}


def _paper(desk: Desk, edition: Edition, name: str, blocks: Sequence[Block]) -> Edition:
    """Make a form of its blocks, under what ties it to its tender."""
    tender = desk.tender
    closing = day(tender.dates.closing) if tender.dates.closing else TO_BE_WRITTEN
    tied = Facts(
        (
            ("To", inline(", ".join(filter(None, (tender.owner.name, tender.owner.address or tender.owner.place))))),
            ("Ship", inline(tender.ship)),
            ("Returned by", inline(closing)),
        )
    )
    part = Part(f"form-{name}", "", tender.tender.title, "front", "", (tied, *blocks), audience="yard")
    beside = replace(edition, sheets={}, forms={}, tables={}, files={}, facts=())
    return replace(beside, title=_TITLES[name], subtitle="To sign and return", parts=(part,), caution=_NO_ADVICE)


def _offer(desk: Desk, form: PriceForm) -> list[Block]:
    tender = desk.tender
    stands = desk.quantity(tender.dates.valid).replace(" d", " days") if tender.dates.valid else ""
    addenda = ", ".join(str(one.number) for one in tender.addenda) or "none"
    filled = (
        (f"Price form returned, of edition {form.edition_hash}: name of the file", ""),
        (f"Addenda received (issued so far: {addenda})", ""),
        ("Dock offered", ""),
        (f"This offer stands until{f' (asked: {stands} from the closing day)' if stands else ''}", ""),
    )
    terms = (
        "We have read the whole tender with the addenda named below, and have seen of the ship what we needed to see.",
        "We offer the work at the prices and rates of the price form returned with this offer, on the tender's terms.",
        "What we exclude or assume stands on the price form alone, which governs where this offer differs from it.",
    )
    return [
        Bullets(tuple(inline(one) for one in terms)),
        _to_fill("What is offered", filled),
        *_signatures("The bidder"),
    ]


def _security(desk: Desk) -> list[Block]:
    contract = desk.package.contract
    rows = []
    for one in contract.securities if contract is not None else ():
        of = "the bid" if one.kind == BID_SECURITY else "the contract price"
        sum_ = f"{desk.quantity(one.share)} of {of}, {one.form}"
        until = f"until {when(desk, one.valid_to)}; given back at {when(desk, one.released)}"
        rows.append(_row(capital(one.kind), sum_, until, one.issuer, ""))
    columns = (
        Column("Security", width=1.5),
        Column("Sum and form", width=2),
        Column("Valid", width=2.4),
        Column("Who may give it", width=2),
        Column("Issuer named by the bidder", width=2),
    )
    terms = (
        "We furnish each security before the payment that it secures is asked for; a bid security comes with the bid.",
        "On demand: the issuer pays against the owner's written word that the yard has not performed, and asks for no "
        "proof. Conditional: it pays once the yard's default is shown.",
        "A day that is counted from an event moves with it, and the paper is made longer before it runs out.",
    )
    return [
        Bullets(tuple(inline(one) for one in terms)),
        Table(columns, tuple(rows), ruled=True),
        *_signatures("The bidder", "The issuer, ready to give the securities"),
    ]


def _declaration(desk: Desk) -> list[Block]:
    declared = tuple(_row(str(number), words, "", "") for number, words in enumerate(DECLARED, start=1))
    insured = tuple(_row(cover, "", "", "") for cover in INSURED)
    subcontractors = tuple(_row("", "", "") for _ in range(_SUBCONTRACTORS))
    return [
        Heading("What is declared", 2),
        Table(
            (
                Column("No.", width=0.5),
                Column("The firm declares", width=5),
                Column("Yes or no", width=0.9),
                Column("If no, what", width=2.2),
            ),
            declared,
            ruled=True,
        ),
        Heading("Subcontractors", 2),
        Table(
            (
                Column("Firm and place", width=3),
                Column("Work, with the items", width=4),
                Column("Since when", width=1.5),
            ),
            subcontractors,
            ruled=True,
        ),
        Heading("Insurances in force", 2),
        Table(
            (
                Column("Cover", width=3),
                Column("Insurer and number", width=2.6),
                Column(f"Sum for each event, {desk.tender.currency}", width=1.8),
                Column("Valid until", width=1.4),
            ),
            insured,
            ruled=True,
        ),
        *_signatures("The bidder"),
    ]


def _row(*cells: str) -> Row:
    return Row(tuple(inline(cell) if cell else () for cell in cells))


def _to_fill(title: str, asked: Sequence[tuple[str, str]]) -> Table:
    return Table((Column(title, width=4), Column("", width=4)), tuple(_row(*one) for one in asked), ruled=True)


def _signatures(*who: str) -> list[Block]:
    """Give the lines to sign on: firm, name and office, place and day, signature."""
    asked = ("Firm", "Name and office of who signs", "Place and day", "Signature")
    rows = tuple(_row(one, *("" for _ in who)) for one in asked)
    return [Table((Column("", width=2.4), *(Column(one, width=5.6 / len(who)) for one in who)), rows, ruled=True)]
