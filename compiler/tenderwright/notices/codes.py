"""The registry of notice codes: every code there is, its severity and its title."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct


class Code(Struct, frozen=True):
    """A notice code."""

    name: str
    severity: Literal["error", "warning"]
    title: str
    rests_on: tuple[str, ...] = ()
    """What paths begin with whose mistakes leave open whether this one is true: it is then held back."""


_ERRORS = {
    # reading
    "not-utf8": "a file is not UTF-8 text",
    "too-large": "a file is larger than the limit",
    "too-deep": "a file is nested deeper than the limit",
    "no-such-file": "a file that is named does not exist",
    "not-a-file": "a folder, a pipe or the like has the name of a file",
    "unreadable-file": "the system does not let a file be read",
    "unfinished-files": "a command that puts files into the package was stopped half-way",
    "outside-package": "a link leads out of the package",
    "missing-file": "a file that every package needs is missing",
    "other-format": "the package is written in another format than this version reads",
    "unknown-file": "a file has no place in a package",
    "yaml-syntax": "a file is not well-formed YAML",
    "duplicate-key": "a key is written twice in one place",
    "yaml-feature": "shorthand of YAML is used",
    "row-too-long": "a row of a CSV file has more cells than there are headings",
    "lost-comment": "text after ` #` was lost as a comment",
    # shapes
    "kept-by-owner": "what only the owner may read is where anybody may",
    "unknown-key": "a key is not known here",
    "missing-key": "a needed key is missing",
    "wrong-type": "a value is of the wrong type",
    "wrong-choice": "a value is not one of the choices",
    "wrong-form": "a text is not written in the form needed",
    "out-of-bounds": "a number or list is outside its bounds",
    "bad-quantity": "a quantity cannot be read",
    "wrong-dimension": "a quantity measures something else",
    "ambiguous-unit": "a unit has several meanings",
    "bad-date": "a date does not exist",
    "still-todo": "a value is still `todo` where it must be known",
    "bad-money": "an amount of money cannot be read",
    # model
    "bad-frame": "a frame does not exist on this ship",
    "bad-table": "a table does not fit together",
    "bad-survey": "a row of a survey cannot be read",
    "bad-care-reading": "a row of the readings between dockings cannot be read",
    "photograph-missing": "a photograph is not in its folder",
    "photograph-kind": "a photograph is of a kind that no paper can show",
    "photograph-twice": "two rows are about one photograph",
    "delivered-columns": "what is said of the columns of a delivered file does not fit it",
    "sum-differs": "amounts do not add up to the sum that is written",
    # linking
    "duplicate-name": "an identifier stands for two things",
    "dead-reference": "a reference leads nowhere",
    "cycle": "items depend on each other in a circle",
    "file-number": "a file's name and its item number differ",
    # calculations
    "out-of-range": "a calculation would be used outside its range",
    "unreached": "a value could not be calculated",
    "bad-addition": "a rate is added to lines that it cannot be added to, or for more than they have",
    "bad-choice": "of two lines of which one is ordered, it is not clear which count",
    # pricing
    "bad-percent": "a percentage is of nothing, or of lines that it cannot be of",
    "unpriced-line": "a line has no rate in owner/rates.yaml",
    "price-not-comparable": "an earlier price cannot be brought up to date",
    "range-order": "low, likely and high do not rise in that order",
    "in-dock-price": "the contract does not price what is ordered or reported in dock",
    # planning
    "no-docking": "a programme does not dock and undock once each",
}

_READ = {
    "format-unsaid": ("warning", "the package does not say in which format it is written"),
    "delivered-unread": ("warning", "part of a delivered file is not read"),
    "photograph-unlisted": ("warning", "photographs lie in the folder and no row tells of them"),
    "archive-changed": ("warning", "the archive of a closed tender is not as it was written"),
    "repository-refused": ("warning", "git does not read the repository around the package"),
}
"""Of files as they are read, and of what git says of them."""

_BIDS = {
    "unreadable-workbook": ("error", "a file is not a workbook that can be read"),
    "unsafe-workbook": ("error", "a workbook holds something that could do harm"),
    "no-stored-result": ("error", "a price is a formula whose result is not stored"),
    "bid-edition": ("error", "a returned form is of another edition"),
    "bid-form-changed": ("error", "a returned form changes something that is the owner's to set"),
    "bid-amount": ("error", "a price on a returned form cannot be read"),
    "bid-unread": ("warning", "something was added to a returned form and was not read"),
    "ambiguous-amount": ("warning", "a price on a returned form can be read as two numbers"),
    "dash-for-price": ("warning", "a dash stands for a price"),
    "credit-with-minus": ("warning", "a credit on a returned form is written with a minus"),
    "price-by-formula": ("warning", "a price on a returned form is worked out by a formula"),
    "price-too-small": ("warning", "a price on a returned form is less than the smallest coin"),
    "bid-words-unclear": ("warning", "the words for a price on a returned form are not plain"),
    "amount-without-rate": ("warning", "a line of a returned form has an amount and no rate"),
    "amount-unread": ("warning", "the amount of a line on a returned form cannot be read"),
    "bid-form-reworded": ("warning", "a returned form words something differently"),
    "bid-incomplete": ("warning", "a bid leaves something unanswered"),
    "bid-remark": ("warning", "a remark on a returned form belongs to no line that is priced"),
    "bid-late": ("warning", "a bid was received after the closing day"),
}
"""Of returned bids; no file of the package holds these."""

_COMPARED = {
    "bid-currency": ("error", "a bid is in another currency than the tender"),
    "addition-unclear": ("error", "an addition to a bid does not say for what or how much"),
    "doubt-unsettled": ("error", "a doubt about how a bid was read is not settled"),
    "correction-not-allowed": ("error", "a bid is corrected where the tender allows none"),
    "bid-arithmetic": ("warning", "the figures of a bid do not follow from each other"),
    "exclusion-unpriced": ("warning", "nothing prices what a bid leaves out"),
}
"""Of returned bids, told when they are compared."""

_GRANTS = {
    "grant-unmatched": ("error", "more is asked of a funder than costs, match and source allow"),
    "heading-empty": ("error", "nothing is written under a heading of the funder's form"),
    "heading-too-long": ("error", "the text under a heading is longer than the funder takes"),
}
"""Of applications for grants; told by `grant`, since they rest on the trials."""

_CLOSING = {"account-differs": ("warning", "the final account does not agree with the papers from the dock")}
"""Of the findings of a docking; told by `close`."""

_KEEPING = {"owner-goes-along": ("warning", "a push would take the owner's papers along")}
"""Of where the papers are kept; told with the owner's side."""

_CHECKS = {
    "file-not-sent": ("error", "a file that is named cannot go along with the tender"),
    "file-named-nowhere": ("error", "a file under references/ is named nowhere"),
    "award-unclear": (
        "warning",
        "the rule of award counts days without their cost, or the other way round",
    ),
    "file-kind": ("error", "a file that is to go along is of a kind that not every yard can open"),
    "file-checksum": ("error", "a file that goes along is not the one that is described"),
    "lump-sum-unseen": ("warning", "a lump sum rests on a document that no bidder can see"),
    "oil-boundary-hot-work": (
        "error",
        "hot work on the boundary of a tank that held oil, before it is cleaned and gas-free",
    ),
    "no-inspection-point": ("warning", "nothing is inspected or tested of priced work that is covered afterwards"),
    "opened-not-tested": ("error", "the hull is opened and no test follows"),
    "coating-without-preparation": ("error", "a coating has no grade of preparation, or no profile of the blast"),
    "coating-without-hold": ("error", "a coating has no hold point at which the surface is accepted"),
    "coated-twice": ("error", "one area is coated by two schemes or two items"),
    "contingent-without-quantity": ("error", "a line priced by a rate has no unit or tendered quantity"),
    "contingent-without-place": ("error", "a contingent line does not say where the work is"),
    "nothing-tendered": ("warning", "a line asks a price for nothing"),
    "unbounded-words": ("error", "words without a limit are used where a quantity should be"),
    "item-ends-early": ("error", "an item ends before it begins, or takes longer than it has"),
    "unit-unlike-price": ("error", "a line is priced in a way that does not go with its unit"),
    "phase-order": ("error", "an item is done before one that it depends on"),
    "needs-dry-dock": ("error", "an item is done afloat that needs the dock dry"),
    "late-report": ("error", "a report is due after undocking"),
    "owner-furnished-late": ("error", "owner-furnished material comes after docking"),
    "untested-coating": ("error", "old coating is disturbed and not tested for lead or PCB"),
    "unsafe-entry": ("error", "a confined space is entered with no entry precautions"),
    "sounding-beyond-tank": ("error", "a sounding is beyond the tank"),
    "advance-unsecured": ("warning", "a payment before any work is not secured"),
    "payments-not-whole": ("warning", "the payments do not add up to the contract price"),
    "paid-by-calendar": ("warning", "a payment waits for a day and for no work"),
    "retention-unreleased": ("warning", "what is held back is not paid at an event"),
    "security-expires-early": ("warning", "a security runs out before it can be drawn"),
    "damages-uncapped": ("warning", "damages for lateness have no end"),
    "forgotten-service": ("error", "a service of the checklist is not answered"),
    "service-answered-twice": ("error", "a service of the checklist is held in two places"),
    "service-half-answered": ("error", "an answer to the checklist of services is not complete"),
    "free-surface-assumed": ("warning", "a free surface is assumed at its greatest"),
    "stated-differs": ("warning", "a stated figure differs from the calculated one"),
    "condition-unsafe": ("warning", "the arrival condition is outside the limits that you set"),
    "soundings-too-old": ("warning", "a tank was sounded long before docking, and no item sounds it again"),
    "ballast-not-moved": ("warning", "the trim wanted for docking needs liquid moved, and no item moves it"),
    "emptied-tank-not-counted": ("warning", "an item empties a tank that the undocking condition counts as full"),
    "weight-not-counted": ("warning", "an item changes weight that the undocking condition does not count"),
    "stability-not-checked": ("warning", "the docking plan does not say when the undocking condition was checked"),
    "weight-after-stability": (
        "warning",
        "an option that changes weight is decided after the last check of stability",
    ),
    "opening-under-block": ("error", "a block stands under an opening, or too near to one"),
    "no-plug-register": ("error", "docking plugs are drawn and no item keeps their register"),
    "plug-not-registered": ("error", "the item that keeps the plug register does not name a plug"),
    "unstable-before-settling": ("error", "stability is lost before she lies on all the blocks"),
    "floats-off-unlevel": ("warning", "she would not float off the blocks level"),
    "stability-below-asked": ("warning", "metacentric height as she lands or floats off is less than is asked"),
    "tow-stability-below-asked": ("warning", "metacentric height as she is towed is less than is asked"),
    "towing-point-weak": ("warning", "a towing point holds less than the tow asks of it"),
    "tug-too-weak": ("warning", "the tug's bollard pull is less than the tow asks"),
    "stability-in-doubt": ("warning", "nobody can say whether metacentric height is what is asked"),
    "block-overloaded": ("warning", "a block carries more than is allowed on its cap"),
    "side-block-slips": ("error", "the shell over a side block is steeper than friction holds"),
    "facility-certificate": ("warning", "a facility has no certificate that is valid until undocking"),
    "kind-not-supported": ("warning", "she is of a kind that the calculations do not fit"),
    "unlike-metals": ("warning", "unlike metals touch in sea water, and nothing looks after them"),
    "weld-before-analysis": ("warning", "old metal is welded, and no analysis of it has passed"),
    "renewal-differs": ("warning", "plate that the surveys call to renew is in no item"),
    "pits-outside-item": ("warning", "pits lie outside the item that is named for them"),
    "anodes-outlived": ("warning", "the next docking is farther off than the anodes last"),
    "interval-not-kept": ("warning", "the next docking is planned sooner than she has ever come back"),
    "question-unanswered": ("error", "a question has no answer though its time has come"),
    "addendum-not-listed": ("error", "a question names an addendum that the tender does not list"),
    "limit-stated-differently": ("warning", "a limit, period or sum is stated differently in two places"),
    "scheme-stated-differently": ("warning", "an item or clause asks for something other than the scheme"),
    "count-stated-differently": ("warning", "an item speaks of another number than it names"),
    "moved-blocks-differ": ("warning", "keel blocks are moved that the docking plan does not take out"),
    "attends-nobody": ("error", "a hold point waits for somebody who does not exist for this ship"),
    "blocks-off-frames": ("warning", "a block stands between frames"),
    "weight-log-differs": ("warning", "the undocking condition counts another weight than the item tenders"),
    "left-to-each-other": ("error", "two items each leave a service to the other"),
    "whole-priced-in-part": ("warning", "a requirement covers a whole surface and its lines price a part"),
    "renewal-elsewhere": ("warning", "plate to be renewed lies outside the item that prices it"),
    "issued-work-gone": ("error", "an item or line of an earlier issue is gone"),
    "item-number-reused": ("error", "a number of an earlier issue is used for other work"),
    "revision-not-raised": ("warning", "an item changed since it was issued, and its revision was not raised"),
    "fastening-sample-small": ("warning", "too few fastenings are drawn to judge a zone"),
    "boring-without-item": ("warning", "a boring finds unsound wood, and no item deals with it"),
    "bare-wood-with-borers": ("warning", "sheathing is torn, and borers are in the wood"),
    "blocks-not-to-hog": ("warning", "she is hogged, and the blocks are built straight"),
    "planking-dries-out": ("warning", "planking stands dry too long, and no item keeps it wet"),
    "no-taking-up-watch": ("warning", "nobody watches her until the planking has taken up"),
    "block-under-keel-bolt": ("warning", "a keel block stands under a keel bolt"),
    "hard-caps-on-wood": ("warning", "a wooden hull stands on hard caps"),
    "wood-over-protected": ("warning", "bonded metals on wood are protected too much"),
    "hot-work-on-wood": ("warning", "hot work is done on a wooden hull, and nobody releases it"),
    "composite-hull": ("warning", "a composite hull is not supported"),
    "potential-without-action": ("warning", "a potential was read beyond its limit, and nothing was done about it"),
    "air-too-damp": ("warning", "the air of a dry space stayed damp for two weeks"),
    "alarm-not-tested": ("warning", "an alarm failed its last test, or was not tested for a quarter of a year"),
    "leak-doubled": ("warning", "a space makes twice the water that it did"),
}

_COHERENCE = {
    "date-order": ("error", "a day comes before one that it follows"),
    "day-far-off": ("error", "a day is impossibly far from one that it follows"),
    "numbering": ("error", "blocks of item numbers overlap, or an item stands in none of them"),
    "addendum-out-of-order": ("error", "the addenda are not numbered 1, 2, 3 in their order"),
    "days-differ": ("warning", "days that are counted in two places do not agree"),
    "quantity-unlikely": ("warning", "a quantity is far beyond what it can be"),
    "history-unlike": ("warning", "what is said of an earlier docking cannot be of this ship"),
    "price-unlikely": ("warning", "a price or a sum is far from what it is compared with"),
    "share-unlikely": ("warning", "a likelihood or a share contradicts what it is of"),
    "worth-contradicts": ("warning", "the owner's judgement of the items contradicts itself"),
    "bid-contradicts": ("warning", "a bid is not of its yard, its dock or this tender, or far from the others"),
    "progress-falls": ("warning", "less is given as done than before"),
    "service-not-held": ("error", "a service is taken from the hours of an item that does not hold it"),
    "clause-contradicts": ("warning", "a clause does not add up, or does not agree with package.yaml"),
}
"""Of what does not fit together in the package or in the owner's papers."""

_ONE_SHIP = {
    "dimensions-disagree": ("warning", "the ship's particulars contradict each other or her lines"),
    "offset-unfair": ("warning", "an offset is not fair with those around it"),
    "curves-disagree": ("warning", "the curves of form contradict themselves, or are not those of this ship"),
    "off-the-hull": ("warning", "something fitted to the ship does not stand on her hull"),
    "sides-differ": ("warning", "a side is not that of the name, or twins differ"),
    "tank-contradicts": ("warning", "the data of a tank contradict each other"),
    "liquid-unlike": ("warning", "a density, salinity or temperature is not that of the liquid"),
    "weight-out-of-place": ("warning", "a weight lies off the ship, or cannot be what it is said to be"),
    "draft-unlike-hers": ("warning", "drafts, trim or stability are not those of this ship"),
    "block-out-of-place": ("warning", "blocks stand where none can, or are of no size that blocks have"),
    "plating-contradicts": ("warning", "strakes and plates contradict each other"),
    "reading-unlikely": ("warning", "a thickness reading contradicts the strake that it is of"),
    "area-contradicts": ("warning", "an area contradicts the shell, the appendages or its own sum"),
    "facility-contradicts": ("warning", "the figures of a facility contradict each other"),
    "beyond-usual": ("warning", "a figure is beyond the size that such figures have"),
}
"""Of what cannot all be true of one ship."""

_OWNER_CHECKS = {
    "facility-does-not-fit": ("warning", "a facility does not take her"),
    "facility-limit-unknown": ("warning", "a facility does not state a limit that it takes to judge it"),
    "facility-in-doubt": ("warning", "what is known of her does not say whether a facility takes her"),
    "cradle-overloaded": ("warning", "a cradle is too short for her, or carries more than it may"),
    "no-contingency": ("warning", "hull work that nobody surveyed has no contingency"),
    "quantity-outside-range": ("warning", "the quantity tendered lies beyond the range given for it"),
    "stale-price": ("warning", "a price is too old for its index"),
    "dock-days-short": ("warning", "the days on blocks tendered are fewer than the critical path takes"),
    "overcoating-outrun": ("warning", "by the programme a coat goes on too early or too late after the one beneath"),
    "water-on-lining": ("warning", "water is put on a coating that has not cured"),
    "damages-too-early": ("warning", "damages for lateness begin before the owner's own programme is likely done"),
    "bought-apart": ("warning", "the funding ladder could buy one part of what belongs together"),
    "restricted-money": ("error", "restricted money is counted on work that it may not pay for"),
    "paid-twice": ("warning", "more is granted for work than it costs, or by a source than it gives"),
    "money-too-late": ("warning", "money has to be spent before the work is done"),
    "must-do-unfunded": ("warning", "what must be done costs more than the money in hand"),
    "beyond-authority": ("error", "a change is signed by somebody who may not sign for so much"),
    "change-without-report": ("warning", "a change for a condition found has no accepted report"),
    "rate-not-used": ("warning", "work is not priced by the unit rate that the contract has for it"),
    "pool-overdrawn": ("warning", "more hours or materials are drawn from the pool than it holds"),
    "answer-overdue": ("warning", "a condition-found report was not answered in time"),
    "change-split": ("warning", "changes are signed one by one by somebody who may not sign for all of them"),
    "measured-outside-range": ("warning", "a measured quantity lies outside the range within which its rate holds"),
    "contingency-spent": ("warning", "the forecast is beyond the contract and its contingency"),
    "paper-of-another-tender": ("error", "a paper under owner/ is of another tender"),
    "approval-late": ("warning", "an approval cannot be there in time"),
    "approval-missed": ("warning", "something was done before the approval for it was given"),
    "approval-runs-out": ("warning", "an approval runs out before what it is for"),
    "approval-condition-unmet": ("warning", "a condition of an approval was not met in time"),
    "floated-on-open-row": ("error", "she was floated while a hold or a row of the register was open"),
    "signed-by-one": ("warning", "what two people sign was signed by one"),
    "register-out-of-step": ("warning", "a row of the register was closed or tested before it was opened or closed"),
    "passed-beyond-figure": ("warning", "an inspection passed though the figure read is not what the item asks"),
    "left-out-needed": ("warning", "work is left out that has begun, must be done, or is needed by other work"),
}

SHIP = ("package.yaml", "vessel/", "surveys/", "history/", "facilities/")
"""What calculated values may rest on."""

_WORK = (*SHIP, "items/")
"""What quantities and sums may rest on."""

_FORM = ("vessel/particulars.yaml", "vessel/frames.yaml", "vessel/offsets.yaml", "vessel/sections.yaml")
"""What every place in the ship rests on."""

_OF_WOOD = (
    "fastening-sample-small",
    "boring-without-item",
    "bare-wood-with-borers",
    "blocks-not-to-hog",
    "planking-dries-out",
    "no-taking-up-watch",
    "block-under-keel-bolt",
    "hard-caps-on-wood",
    "wood-over-protected",
    "hot-work-on-wood",
    "composite-hull",
)

_RESTS_ON: dict[str, tuple[str, ...]] = {
    **dict.fromkeys(_ONE_SHIP, _FORM),
    **dict.fromkeys(("out-of-range", "unreached", "stated-differs", "condition-unsafe", "ballast-not-moved"), SHIP),
    **dict.fromkeys(("opening-under-block", "sounding-beyond-tank", "unstable-before-settling"), SHIP),
    **dict.fromkeys(("free-surface-assumed", "soundings-too-old", "emptied-tank-not-counted"), SHIP),
    **dict.fromkeys(("anodes-outlived", "interval-not-kept", "facility-certificate", "oil-boundary-hot-work"), SHIP),
    **dict.fromkeys(
        ("facility-does-not-fit", "facility-limit-unknown", "facility-in-doubt", "cradle-overloaded"), SHIP
    ),
    **dict.fromkeys(("block-overloaded", "side-block-slips"), SHIP),
    **dict.fromkeys(("floats-off-unlevel", "stability-below-asked", "stability-in-doubt"), _WORK),
    **dict.fromkeys(("tow-stability-below-asked", "towing-point-weak", "tug-too-weak"), _WORK),
    **dict.fromkeys(("weight-not-counted", "stability-not-checked", "weight-after-stability"), _WORK),
    **dict.fromkeys(("unlike-metals", "untested-coating", "coated-twice"), _WORK),
    **dict.fromkeys(_OF_WOOD, _WORK),
    **dict.fromkeys(("renewal-differs", "pits-outside-item"), _WORK),
    **dict.fromkeys(("coating-without-preparation", "coating-without-hold"), _WORK),
    "weld-before-analysis": _WORK,
    **dict.fromkeys(
        ("opened-not-tested", "forgotten-service", "service-answered-twice", "service-half-answered"), _WORK
    ),
    **dict.fromkeys(("no-plug-register", "plug-not-registered", "no-docking"), _WORK),
    **dict.fromkeys(
        ("limit-stated-differently", "scheme-stated-differently", "weight-log-differs"), (*_WORK, "clauses/")
    ),
    **dict.fromkeys(("renewal-elsewhere", "whole-priced-in-part", "left-to-each-other", "attends-nobody"), _WORK),
    **dict.fromkeys(("count-stated-differently", "moved-blocks-differ"), _WORK),
    **dict.fromkeys(("blocks-off-frames", "kind-not-supported"), SHIP),
    **dict.fromkeys(("quantity-outside-range", "no-contingency", "wrong-dimension"), _WORK),
    **dict.fromkeys(("sum-differs", "in-dock-price", "rate-not-used", "pool-overdrawn"), (*_WORK, "owner/")),
    **dict.fromkeys(("contingency-spent", "dock-days-short", "restricted-money"), (*_WORK, "owner/")),
    "measured-outside-range": (*_WORK, "owner/"),
    **dict.fromkeys(("overcoating-outrun", "water-on-lining", "damages-too-early", "bought-apart"), (*_WORK, "owner/")),
    **dict.fromkeys(("money-too-late", "must-do-unfunded", "left-out-needed"), (*_WORK, "owner/")),
    **dict.fromkeys(("beyond-authority", "change-split", "change-without-report", "answer-overdue"), ("owner/",)),
}
"""For what is told of the package as a whole, or of what is calculated from it."""

_RATED = _READ | _BIDS | _COMPARED | _GRANTS | _CLOSING | _KEEPING | _CHECKS | _COHERENCE | _ONE_SHIP | _OWNER_CHECKS

CODES: dict[str, Code] = {
    name: Code(name, "error", title, _RESTS_ON.get(name, ())) for name, title in _ERRORS.items()
} | {
    name: Code(name, "warning" if severity == "warning" else "error", title, _RESTS_ON.get(name, ()))
    for name, (severity, title) in _RATED.items()
}

CHECK_CODES = tuple(_CHECKS)
OWNER_CHECK_CODES = tuple(_OWNER_CHECKS)
