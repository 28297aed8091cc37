"""The contract as a form: payments that follow the work, and every matter of the checklist with what is usual."""

from __future__ import annotations

import textwrap

from tenderwright.model.matters import ADVANCE, AGREEMENT, BY_WORK, DAMAGES, MATTERS, NOT_SETTLED, RETENTION
from tenderwright.writing.yaml_file import one_line

_HEAD = """\
# yaml-language-server: $schema={schema}
# When what is paid, what secures it, and how each matter of the contract is answered. Bidders read of it in the rules
# of the tender; the owner's checklist of the contract puts the gaps first. It gives no legal advice.
agreement: todo
# Each payment waits for an item or an event, and the shares add up to 100 %. What is paid before work is done wants
# a `refund guarantee` under `securities`.
payments:
  - {{ stage: She is on the blocks and washed, share: 30 %, item: todo }}
  - {{ stage: Undocking, share: 50 %, event: undocking }}
  - {{ stage: The docking record is accepted, share: 20 %, item: todo }}
floatable: todo
forms: [offer, declaration]
# Once a matter is settled, write `answer: settled` with the words or the `clause` that holds it; `left out` with why.
# What is usual is common practice, no source, but where another source is named.
matters:
"""
_BY_KEYS = (AGREEMENT, ADVANCE, BY_WORK, RETENTION, DAMAGES)
"""What keys of their own answer, here or in package.yaml."""
_WIDTH = 116


def contract_form(schema: str) -> str:
    """Write the form, each matter not settled yet, with what settling it takes."""
    parts = [_HEAD.format(schema=schema)]
    for one in MATTERS:
        if one.key not in _BY_KEYS:
            usual = f"Usual: {one.usual}{f' ({one.source})' if one.source else ''}."
            parts += [f"  # {line}\n" for line in textwrap.wrap(usual, _WIDTH)]
            words = f"{one.takes[:1].upper()}{one.takes[1:]}"
            parts.append(f"  {one.key}: {{ answer: {NOT_SETTLED}, words: {one_line([words])[1:-1]} }}\n")
    return "".join(parts)
