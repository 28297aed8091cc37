"""The format: which noun each kind of file holds. `python -m tenderwright.model.format` writes its schemas."""

from __future__ import annotations

import json

from tenderwright.model import (
    approvals,
    award,
    bid,
    care,
    closing,
    coating,
    contract,
    curves,
    docking_plan,
    evaluation,
    facility,
    facility_kept,
    findings,
    funding,
    grant,
    history,
    in_dock,
    item,
    lightship,
    owner,
    particulars,
    photograph,
    profile,
    programme,
    question,
    rates,
    reserve,
    sections,
    ship_condition,
    survey_columns,
    survey_row,
    tank,
    tender,
    timber,
    tow,
    vessel,
)
from tenderwright.model.json_schema import Schema, file_schema
from tenderwright.model.noun import Noun
from tenderwright.reading.layout import TABLES, YAML_FILES
from tenderwright.shapes.schemas import schema_folder

NOUNS: dict[str, type[Noun]] = {
    "package": tender.Tender,
    "particulars": particulars.Particulars,
    "frames": vessel.Frames,
    "offsets": vessel.Offsets,
    "curves": curves.CurvesOfForm,
    "sections": sections.Sections,
    "tanks": tank.Tanks,
    "openings": vessel.Openings,
    "appendages": vessel.Appendages,
    "strakes": vessel.Strakes,
    "zones": coating.Zones,
    "anodes": vessel.Anodes,
    "lightship": lightship.Lightship,
    "docking-plan": docking_plan.DockingPlan,
    "condition": ship_condition.ShipCondition,
    "timber": timber.Timber,
    "contract": contract.Contract,
    "tow": tow.Tow,
    "care-plan": care.CarePlan,
    "care-row": care.CareRow,
    "drawings": tender.Drawings,
    "history": history.EarlierDocking,
    "item": item.Item,
    "facility": facility.Facility,
    "question": question.Question,
    "rates": rates.Rates,
    "funding": funding.Funding,
    "risks": owner.Risks,
    "indices": rates.PriceIndices,
    "reserve": reserve.Reserve,
    "programme": programme.Programme,
    "scope": funding.Scope,
    "approvals": approvals.Approvals,
    "taken-away": contract.TakenAway,
    "owner-questions": question.AskedBy,
    "evaluation": evaluation.Evaluation,
    "bid": bid.Bid,
    "award": award.Award,
    "in-dock": in_dock.InDock,
    "grant": grant.Grant,
    "profile": profile.Profile,
    "findings": findings.Findings,
    "closing": closing.Closing,
    "facility-kept": facility_kept.FacilityKept,
    "survey-columns": survey_columns.SurveyColumns,
    "survey-row": survey_row.SurveyRow,
    "photographs": photograph.Photographs,
}
"""Name of the schema to the noun."""


def schemas() -> dict[str, Schema]:
    """Make the schema of every kind of file, by name."""
    return {name: file_schema(NOUNS[name], pattern) for pattern, name in (YAML_FILES | TABLES).items()}


def written(schema: Schema) -> str:
    """Write a schema as it stands in its file."""
    return json.dumps(schema, indent=2, ensure_ascii=False) + "\n"


def main() -> None:
    """Write every schema beside the others."""
    for name, schema in schemas().items():
        (schema_folder() / f"{name}.schema.json").write_text(written(schema), "utf-8")


if __name__ == "__main__":
    main()
