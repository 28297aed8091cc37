"""Each figure that texts may state twice is found in a sentence of the trade, by its word and with its number."""

from __future__ import annotations

import pytest

from tenderwright.checks.stated_once import SUBJECTS, Subject

SENTENCES = {
    "the fire watch after hot work": ("A watch stands on each face until 60 min after the work.", "60"),
    "relative humidity for coating": ("Paint at a relative humidity of 85 % or less.", "85"),
    "steel above the dew point for coating": ("Steel is 3 K or more above the dew point.", "3"),
    "the hose test": ("Hose test at 2 bar from 1.5 m.", "2"),
    "the age of a certificate for hot work": ("Renew hot-work certificates each 24 h.", "24"),
    "vapour for hot work": ("Hot work at vapour below 1 % of the lower explosive limit.", "1"),
    "vapour for entry": ("Entry at vapour below 10 % of the lower explosive limit.", "10"),
    "silica in the abrasive": ("Abrasive with less than 1 % of free crystalline silica.", "1"),
    "lead in old coating": ("Coating with 5000 mg/kg of lead or more.", "5000"),
    "PCB in old coating": ("A written method, PCB limit 50 mg/kg.", "50"),
    "adhesion of the patch": ("The adhesion patch is of class 2 or better.", "2"),
    "wind for blasting": ("Blasting stops when the wind is above 10 m/s.", "10"),
    "diminution": ("Plates with diminution of 25 % or more.", "25"),
    "the certificate of steel": ("Plate with EN 10204 3.1.", "3.1"),
    "the grade of hull steel": ("Hull steel plate grade A.", "A"),
    "the quality of welds": ("Welds to ISO 5817 level C.", "C"),
    "the liability insurance": ("Liability insurance of EUR 5,000,000 for each event.", "5,000,000"),
    "the sum beyond which the trustees decide": ("The trustees above EUR 15,000 for one item.", "15,000"),
    "damages for a day": ("For late redelivery the Yard pays EUR 850 for each day.", "850"),
    "the days before damages begin": ("From 10 d after the contract day of redelivery.", "10"),
    "how long bids stay open": ("The bids stay open for 120 d.", "120"),
    "the days on blocks in the price": ("Dock and undock, with 14 dock days.", "14"),
    "metacentric height at the critical instant": (
        "Metacentric height 0.45 m or more at the critical instant.",
        "0.45",
    ),
    "trim by the stern for docking": ("Bring her to a trim of 0.3 m by the stern.", "0.3"),
    "list": ("Keel on the centre, list under 0.5 degrees.", "0.5"),
    "the height of the blocks": ("Build keel blocks 1.2 m high.", "1.2"),
    "air in a tank": ("Test the tank with air at 0.07 bar.", "0.07"),
    "the head of a tank test": ("Fill to 1.0 m above the tank top.", "1.0"),
    "the depth of the bar keel": ("The bar keel is 180 mm deep.", "180"),
    "her length over all": ("She is 51.8 m long over all.", "51.8"),
}


def test_every_subject_has_a_sentence() -> None:
    assert [subject.name for subject in SUBJECTS] == list(SENTENCES)


@pytest.mark.parametrize("subject", SUBJECTS, ids=lambda subject: subject.name)
def test_a_subject_is_found_across_a_line_end_and_in_its_sentence_alone(subject: Subject) -> None:
    sentence, figure = SENTENCES[subject.name]
    assert subject.may_stand_in(sentence)
    for text in (sentence, sentence.replace(figure + " ", figure + "\n    ", 1)):
        match = subject.found.search(text)
        assert match is not None
        assert figure in match.groupdict().values()
    assert subject.told is None or subject.told.search(sentence)
    others = [words for name, (words, _) in SENTENCES.items() if name != subject.name]
    taken = [
        words
        for words in others
        if subject.may_stand_in(words)
        and subject.found.search(words)
        and (not subject.told or subject.told.search(words))
    ]
    assert taken == []
