from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tenderwright.quantities.position import FrameTable, check_position, parse_position
from tenderwright.quantities.quantity import QuantityError

# Frames -2 to 6: 500 mm abaft frame 0, then 600 mm, with one space of 750 mm.
FRAMES = FrameTable([-2, -1, 0, 1, 2, 3, 4, 5, 6], [-1.0, -0.5, 0.0, 0.6, 1.2, 1.8, 2.55, 3.15, 3.75])
AFT = FrameTable([4, 3, 2, 1, 0], [-2.4, -1.8, -1.2, -0.6, 0.0])
"""Numbers that grow aft."""


@pytest.mark.parametrize(
    ("text", "x"),
    [
        ("Fr 3", 1.8),
        ("Fr3", 1.8),
        ("Fr -2", -1.0),
        ("Fr 3 + 200 mm", 2.0),
        ("Fr 3+200 mm", 2.0),
        ("Fr 3 - 0.1 m", 1.7),
        ("Fr 3 + 1 ft 2 in", 1.8 + 14 * 0.0254),
        ("18.4 m", 18.4),
        ("-250 mm", -0.25),
        ("40 ft 8 in", 40 * 0.3048 + 8 * 0.0254),
    ],
)
def test_positions(text: str, x: float) -> None:
    position = parse_position(text, FRAMES)
    assert position.x == pytest.approx(x, abs=1e-12)
    assert str(position) == text


def test_forward_is_forward_whichever_way_the_numbers_run() -> None:
    assert parse_position("Fr 3 + 200 mm", AFT).x == pytest.approx(-1.6)
    assert AFT.label(-1.6) == "Fr 3 + 200 mm"


@pytest.mark.parametrize(
    "text", ["Fr", "Fr 3 +", "Fr 3.5", "fr 3", "Frame 3", "frame 3 m", "3", "Fr ٣", "Fr 3 200 mm", ""]
)
def test_what_is_no_position_is_refused_with_a_way_to_write_one(text: str) -> None:
    with pytest.raises(QuantityError) as caught:
        check_position(text)
    assert "position along the ship" in caught.value.message
    assert "`Fr 31 + 200 mm`" in caught.value.hints[0]


def test_the_offset_must_be_a_length() -> None:
    with pytest.raises(QuantityError) as caught:
        check_position("Fr 3 + 2 kg")
    assert caught.value.code == "wrong-dimension"


def test_a_frame_that_is_not_there_is_told_with_those_that_are() -> None:
    with pytest.raises(QuantityError) as caught:
        parse_position("Fr 7 - 100 mm", FRAMES)
    assert caught.value.code == "bad-frame"
    assert caught.value.hints == ("her frames run from -2 to 6",)


@given(st.floats(-5.0, 9.0), st.sampled_from([FRAMES, AFT]))
def test_a_position_reads_back_from_its_name_to_the_half_of_ten_millimetres(x: float, frames: FrameTable) -> None:
    assert parse_position(frames.label(x), frames).x == pytest.approx(x, abs=0.005 + 1e-9)


@given(st.sampled_from(FRAMES.numbers))
def test_a_frame_is_named_by_its_number_alone(number: int) -> None:
    for x in (FRAMES.x(number), FRAMES.x(number) + 0.004, FRAMES.x(number) - 0.004):
        assert FRAMES.label(x) == f"Fr {number}"


@given(st.text(max_size=20) | st.text(alphabet="Fr 0123+-m", max_size=12))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        read = check_position(text)
    except QuantityError:
        return
    assert isinstance(read[0], int) or read[0] in ("AP", "FP")


LONG = FrameTable([0, 1, 2], [0.0, 1.0, 2.0], length=48.0)


@pytest.mark.parametrize(
    ("text", "x"),
    [
        ("12 m abaft FP", 36.0),
        ("40 ft aft of FP", 48 - 40 * 0.3048),
        ("40 ft 6 in aft of the forward perpendicular", 48 - 40.5 * 0.3048),
        ("12 m from FP", 36.0),
        ("2 ft forward of FP", 48 + 0.6096),
        ("18.4 m forward of AP", 18.4),
        ("18.4 m fwd of A.P.", 18.4),
        ("18.4 m from AP", 18.4),
        ("0.5 m abaft AP", -0.5),
        ("200 mm abaft Fr 2", 1.8),
        ("2 ft aft of Fr 2", 2 - 0.6096),
        ("0.2 m ahead of Fr 1", 1.2),
    ],
)
def test_distances_from_a_perpendicular_or_a_frame(text: str, x: float) -> None:
    position = parse_position(text, LONG)
    assert position.x == pytest.approx(x, abs=1e-12)
    assert str(position) == text


@pytest.mark.parametrize("text", ["12 m abaft", "12 m of FP", "abaft FP", "12 kg abaft FP", "12 m abaft CL"])
def test_half_a_distance_is_refused(text: str) -> None:
    with pytest.raises(QuantityError):
        parse_position(text, LONG)


def test_a_ship_without_frames_is_measured_along() -> None:
    bare = FrameTable([], [], length=48.0)
    assert parse_position("12 m abaft FP", bare).x == 36.0
    assert bare.label(12.404) == "12.40 m"
    with pytest.raises(QuantityError, match="frame 3 does not exist") as caught:
        parse_position("Fr 3", bare)
    assert "vessel/frames.yaml" in caught.value.hints[0]
    with pytest.raises(QuantityError, match="cannot be told") as caught:
        parse_position("12 m abaft FP", FrameTable([], []))
    assert "length between perpendiculars" in caught.value.hints[0]
