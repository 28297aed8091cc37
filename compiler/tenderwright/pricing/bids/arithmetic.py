"""Look at the arithmetic of a bid and correct it by the rule that the tender declares.

Under `unit price governs`: quantity times rate goes before the amount in the row, lines go before sub-totals, and
sub-totals before the total (World Bank and regional works tender forms; FAR 14.407-2 for clerical mistakes). Where the
amount looks like the right one and the rate like a slip of the decimal point, nothing is mended: the amount stands as
written until the bidder has confirmed the rate. Under `total absolute` nothing is corrected at all, and a wrong sum is
a remark that disqualifies. What the bidder has confirmed is used and shown.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from decimal import Decimal

from msgspec.structs import replace

from tenderwright.model.bid import Bid, BidLine
from tenderwright.model.evaluation import ConfirmedRate
from tenderwright.model.tender import CONTINGENT, OPTIONS, POOL
from tenderwright.pricing.amount import DISCOUNT, PERCENTS, SHARES
from tenderwright.pricing.bids.corrected import CorrectedBid, CorrectedLine, Correction
from tenderwright.pricing.bids.spread import Spread
from tenderwright.pricing.bids.sums import Sums, sums
from tenderwright.pricing.bids.tendered import TenderLine
from tenderwright.pricing.money import CENT, ZERO, cents, tendered, total

ABSOLUTE = "total absolute"
RATE_GOVERNS = "quantity times rate governs over the amount in the row"
SLIP = "a slip of the decimal point is put to the bidder and not mended"
CONFIRMED = "the bidder has confirmed the rate"
AMOUNT_ALONE = "an amount without a rate stands, and the rate follows from it"
ALLOWANCE = "a mark-up of nothing leaves the allowance for materials itself"
NEAR = Decimal("0.01")
"""How near the rate that the amount implies lies to the rate with its point moved (common practice, no source)."""
_POWERS = tuple(power for power in range(-3, 4) if power)


def correct(
    bid: Bid,
    lines: Sequence[TenderLine],
    rule: str,
    confirmed: Mapping[str, ConfirmedRate] | None = None,
    usual: Mapping[str, Sequence[Decimal]] | None = None,
    *,
    components: Collection[str] = (CONTINGENT, POOL, OPTIONS),
) -> CorrectedBid:
    """Correct a bid; `usual` gives by line the amounts of the estimate and of other bids that tell a slip."""
    made: dict[str, CorrectedLine] = {}

    def take(line: TenderLine) -> None:
        read = bid.lines.get(line.number, BidLine())
        if line.form == "fixed":
            amount = cents(line.fixed or ZERO)
            made[line.number] = CorrectedLine(line, "fixed", None, amount, None, amount)
        elif rule == ABSOLUTE:
            made[line.number] = _as_written(line, read)
        else:
            rate = (confirmed or {}).get(line.number)
            made[line.number] = _corrected(line, read, rate, (usual or {}).get(line.number, ()))

    for line in lines:
        if not line.of:
            take(line)
    for line in lines:
        if line.of:
            take(replace(line, spread=Spread(total([made[number].amount for number in line.of]))))
    found = {line.number: made[line.number] for line in lines}
    summed = sums(bid, found.values(), components)
    if rule == ABSOLUTE:
        return _absolute(bid, found, summed)
    corrections = [one.correction for one in found.values() if one.correction is not None]
    return _bid(bid, found, summed, corrections=(*corrections, *summed.corrections))


def status_of(read: BidLine) -> str:
    """Give how a line is answered; papers written by hand may leave the word out."""
    if read.status:
        return read.status
    if read.rate is not None:
        return "priced" if read.rate else "zero"
    return "priced" if read.extension else "empty"


def makes(line: TenderLine, read: BidLine) -> Decimal | None:
    """Give the amount that the rate of a line as read makes; None without a rate."""
    return line.amount(read.rate) if read.rate is not None else None


def _written(line: TenderLine, read: BidLine) -> Decimal | None:
    """Give the amount in the row, below nothing for a credit."""
    if read.extension is None:
        return None
    return cents(-abs(read.extension) if line.form in ("credit", DISCOUNT) else read.extension)


def _as_written(line: TenderLine, read: BidLine) -> CorrectedLine:
    """Take a line as it stands, whatever its rate makes."""
    status, written = status_of(read), _written(line, read)
    amount = written if written is not None else ZERO if status == "included" else makes(line, read) or ZERO
    if status in ("empty", "no bid"):
        return CorrectedLine(line, status, read.rate, ZERO, None, ZERO)
    rate = read.rate if read.rate is not None else _implied(line, amount)
    return CorrectedLine(line, status, read.rate, amount, rate, amount)


def _corrected(
    line: TenderLine, read: BidLine, confirmed: ConfirmedRate | None, usual: Sequence[Decimal]
) -> CorrectedLine:
    as_written = _as_written(line, read)
    status, before = as_written.status, as_written.amount
    if confirmed is not None:
        note = f"confirmed {confirmed.confirmed}" + (f": {confirmed.note}" if confirmed.note else "")
        after = line.amount(confirmed.rate)
        correction = Correction("confirmed", _name(line), CONFIRMED, before, after, line.number, note)
        status = "priced" if confirmed.rate else "zero"
        return CorrectedLine(line, status, read.rate, before, confirmed.rate, after, correction)
    if not as_written.answered:
        return as_written
    rate = ZERO if status in ("included", "zero") else read.rate
    if rate is None:
        correction = Correction("amount alone", _name(line), AMOUNT_ALONE, before, before, line.number)
        return CorrectedLine(line, status, None, before, as_written.rate, before, correction)
    after = line.amount(rate)
    if abs(after - before) <= CENT:
        return CorrectedLine(line, status, read.rate, before, rate, after)
    if line.form == "markup" and not rate:
        correction = Correction("allowance", _name(line), ALLOWANCE, before, after, line.number)
    elif is_slip(line, rate, before, usual):
        implied = _implied(line, before)
        note = f"rate {rate:f}, where the amount and the quantity would give {implied:f}"
        correction = Correction("decimal slip", _name(line), SLIP, before, after, line.number, note)
        return CorrectedLine(line, status, read.rate, before, implied, before, correction)
    else:
        correction = Correction("rate governs", _name(line), RATE_GOVERNS, before, after, line.number)
    return CorrectedLine(line, status, read.rate, before, rate, after, correction)


def is_slip(line: TenderLine, rate: Decimal, written: Decimal, usual: Sequence[Decimal]) -> bool:
    """Tell whether a rate looks like one whose decimal point slipped.

    The amount over the quantity lies within `NEAR` of the rate times a power of ten, a thousandth to a thousand, and
    the amount as written lies nearer to the estimate or to the median of the other bids than that of the rate does.
    With neither to tell by, it may be one, and a person is asked.
    """
    if not rate or not line.quantity or line.form in SHARES:
        return False
    implied = abs(written) / (line.quantity if line.form != "lump" else Decimal(1))
    if not any(abs(implied - rate.scaleb(power)) <= NEAR * rate.scaleb(power) for power in _POWERS):
        return False
    made = line.amount(rate)
    return not usual or any(abs(written - one) < abs(made - one) for one in usual)


def _implied(line: TenderLine, amount: Decimal) -> Decimal:
    """Give the rate that an amount implies, to four decimals."""
    if line.form == "lump" or not line.quantity:
        return tendered(abs(amount))
    if line.form == "markup":
        return tendered((amount / line.quantity - 1) * 100)
    if line.form in PERCENTS:
        return tendered(abs(amount / line.quantity) * 100)
    return tendered(abs(amount) / line.quantity)


def _name(line: TenderLine) -> str:
    return f"Line {line.number}"


def _absolute(bid: Bid, found: Mapping[str, CorrectedLine], summed: Sums) -> CorrectedBid:
    """Leave everything as written and say what is wrong with it; the total as written is what the bid comes to."""
    wrong: list[Correction] = []
    for number, one in found.items():
        made = makes(one.line, bid.lines.get(number, BidLine())) if one.answered else None
        if made is not None and abs(made - one.amount) > CENT:
            wrong.append(Correction("rate governs", _name(one.line), ABSOLUTE, one.amount, made, number))
    wrong += [one for one in summed.corrections if one.own]
    beyond = bid.total - summed.total if bid.total is not None else ZERO
    return _bid(bid, found, summed, disqualifying=tuple(wrong), beyond_lines=beyond)


def _bid(
    bid: Bid,
    found: Mapping[str, CorrectedLine],
    summed: Sums,
    corrections: tuple[Correction, ...] = (),
    disqualifying: tuple[Correction, ...] = (),
    beyond_lines: Decimal = ZERO,
) -> CorrectedBid:
    return CorrectedBid(
        lines=found,
        sections=summed.sections,
        base=summed.base,
        total=total([summed.total, beyond_lines]),
        base_read=summed.base_read,
        total_read=summed.total_read,
        total_written=bid.total is not None,
        corrections=corrections,
        disqualifying=disqualifying,
        beyond_lines=beyond_lines,
    )
