from __future__ import annotations

from tenderwright.model.delivered_survey import survey_of
from tenderwright.reading.source import Source


def test_a_survey_is_named_by_its_file_and_keeps_its_text() -> None:
    survey, notices = survey_of(Source("surveys/thickness-2025.csv", "a,b\n1,2\n"))
    assert (survey.name, survey.text, str(survey.here)) == (
        "thickness-2025",
        "a,b\n1,2\n",
        "surveys/thickness-2025.csv:1:1",
    )
    assert "1,2" not in repr(survey)
    assert notices == []
    assert survey.line(7) == 7
