"""The matters that an agreement for ship repair settles: what is usual, by whose word, and what settling takes."""

from __future__ import annotations

from msgspec import Struct

SETTLED, LEFT_OUT, NOT_SETTLED = "settled", "left out", "not settled"
STATES = (SETTLED, LEFT_OUT, NOT_SETTLED)


class Matter(Struct, frozen=True):
    """A matter of the contract."""

    key: str
    title: str
    usual: str
    takes: str
    """What it takes to settle it."""
    source: str = ""
    """Whose word it is, where it is not common practice alone, which has no source."""


AGREEMENT, ADVANCE, BY_WORK, RETENTION, DAMAGES, TERMINATION = (
    "agreement",
    "advance",
    "payment-by-work",
    "retention",
    "damages",
    "termination",
)
BID, PERFORMANCE, PAYMENT, REFUND = "bid-security", "performance-security", "payment-bond", "refund-guarantee"

MATTERS = (
    Matter(
        AGREEMENT,
        "Form of agreement",
        "A form that both sides know, sent with the tender, and which paper goes before which",
        "choose a form, and have a lawyer of the yard's place read it once",
    ),
    Matter(BID, "Bid security", "1 to 10 % of the bid, often 5 %", "decide whether bids are secured at all"),
    Matter(
        PERFORMANCE,
        "Performance security",
        "10 % of the price; 100 % for public works in the United States. It costs 0.5 to 3 % of its sum, and a small yard may not get one",
        "ask the yards whether a bank or surety gives them one, and what it costs",
        "100 %: from memory, 40 USC 3131",
    ),
    Matter(
        PAYMENT,
        "Payment bond for subcontractors",
        "A payment bond of 100 % for public works in the United States; elsewhere seldom",
        "decide between a bond and their waivers with each payment",
        "from memory, 40 USC 3131",
    ),
    Matter(
        REFUND,
        "Refund guarantee",
        "For each advance and of its sum, by a bank, on demand, until 30 days after she is on the blocks or until it is worked off",
        "a bank's guarantee for each payment that comes before work",
    ),
    Matter(ADVANCE, "Advance", "0 to 30 % of the price, better 10 to 20 %", "list the payments under `payments`"),
    Matter(
        RETENTION,
        "Retention",
        "5 to 10 %: half paid at redelivery, half at the end of the guarantee; at most 10 % in United States federal contracts",
        "decide what is held back, and which event releases it",
        "10 %: from memory, FAR 52.232-5(e)",
    ),
    Matter(
        BY_WORK,
        "Payment by measured work",
        "Quantities measured and signed at each stage, never the calendar alone; paid within 14 to 30 days; the last after the records",
        "list the payments under `payments`, each with the event or item that it waits for",
    ),
    Matter(
        "title",
        "Title to what is paid for",
        "What is paid for and marked is the owner's, kept apart and insured; historic parts taken out always are",
        "a sentence on who owns material and parts, and from when",
    ),
    Matter(
        "liens",
        "Liens",
        "With each payment a waiver by the yard and its subcontractors, without condition at the last. A repairer may have a maritime lien, or a right to keep the ship, by law",
        "a waiver form, and what happens to a sum in dispute",
        "the maritime lien: from memory, 46 USC 31342",
    ),
    Matter(
        "liability",
        "Liability and its cap",
        "A sum for each side, often the contract price or a fixed sum, without loss of use; no cap for harm to people",
        "a sum for each side that its insurer has read",
    ),
    Matter(
        "yard-insurance",
        "The yard's insurance",
        "Ship-repairer's liability of her agreed value or more; its people, its site and pollution as well",
        "certificates from each bidder, read by the owner's broker",
    ),
    Matter(
        "owner-insurance",
        "The owner's insurance",
        "Hull with the tow and the dry-docking; visitors kept out; objects ashore covered where they lie",
        "the insurer's word in writing that tow, dock and hot work are covered",
    ),
    Matter(
        "agreed-value",
        "Agreed value",
        "Stated in the policy: a museum ship is worth scrap on the market, and her fabric is dear to replace",
        "a valuation of what it costs to put back what may be lost",
    ),
    Matter(
        DAMAGES,
        "Damages for lateness, and their basis",
        "A forecast of the owner's own loss for a day, 0.1 to 0.5 % of the price; 5 to 10 % at most; 0 to 3 days free",
        "`damages` in package.yaml, with `most`, and the reckoning of a day kept on file",
        "the forecast: FAR 11.501",
    ),
    Matter(
        "early-bonus",
        "Bonus for early redelivery",
        "None, or the rate of the damages up to half their cap",
        "decide whether a day gained is worth anything to the owner",
    ),
    Matter(
        "guarantee",
        "Guarantee",
        "6 to 12 months; coatings by their maker's terms; what is under water by a diver's visit, since no dock is near",
        "months, and who pays for the look under water",
    ),
    Matter(
        "governing-law",
        "Governing law",
        "The law and language of one place, named; the yard's own for safety, health and waste in any case",
        "one sentence, agreed before the award",
    ),
    Matter(
        "disputes",
        "Disputes",
        "A named expert answers a technical question within 48 to 72 hours; then mediation, then arbitration at a named place; work and undocking go on",
        "name the expert and a second, with what they cost, before she arrives",
    ),
    Matter(
        "custody",
        "Custody of the ship",
        "The yard's from her first line fast until she leaves, at all hours",
        "a sentence that says from when until when",
    ),
    Matter(
        "owners-people",
        "The owner's people in the yard",
        "Named contractors and volunteers are let in; induction, mark-up and who directs them are said",
        "a list of who comes, and the yard's rules for them",
        "who directs others' people: 29 CFR 1915.501(d)",
    ),
    Matter(
        TERMINATION,
        "Early end of the contract",
        "At insolvency, abandonment or arrest the owner may take her away; hours within which she is made fit to float; who pays the dock meanwhile",
        "the hours under `floatable`, and a sentence on when the owner may end it",
    ),
)
"""In the order in which they are read: the paper, the security, the money, the ship, the end."""
