"""Every facility has a certificate that is valid until she is undocked.

Ground: a dock, platform or cradle is used within what its certificate allows, and while it lasts; without one nobody
answers for its capacity (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from tenderwright.checks.context import Context
from tenderwright.notices import Notice

CODE = "facility-certificate"


def check(context: Context) -> Iterator[Notice]:
    """Warn of a facility without a certificate, or with one whose last day comes before undocking."""
    tender = context.package.tender
    undocking = tender.events.get("undocking") if tender is not None else None
    for facility in context.package.facilities:
        certificate = facility.certificate
        if certificate is None and facility.kind == "tidal grid":
            continue  # she is not lifted, and nobody certifies it
        if certificate is None:
            message = f"facility `{facility.facility}` has no certificate"
            hint = "ask the yard for it, and write `certificate` with `by` and `valid_until`"
            yield Notice(CODE, facility.here, message, hints=(hint,))
        elif undocking is not None and certificate.valid_until is not None and certificate.valid_until < undocking:
            message = (
                f"the certificate of facility `{facility.facility}` ends on {certificate.valid_until}, before "
                f"undocking on {undocking}"
            )
            yield Notice(
                CODE,
                certificate.here,
                message,
                hints=("ask the yard for the renewed certificate, and write its day when you have seen it",),
            )
