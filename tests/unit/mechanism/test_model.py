from __future__ import annotations

import pytest

from parametric.mechanism.model import (
    Contact,
    ContactKind,
    Joint,
    JointKind,
    Mode,
    Use,
    VanState,
    frozen_map,
)


def joint(kind: JointKind) -> Joint:
    """About or along y through (900, 0, 431)."""
    return Joint(
        name="j",
        kind=kind,
        moving="lid",
        base="bearer",
        origin=(900.0, 0.0, 431.0),
        axis=(0.0, 1.0, 0.0),
        low=0.0,
        high=90.0,
    )


def test_a_swing_turns_about_its_axis() -> None:
    pose = joint(JointKind.SWING).pose(90.0)
    assert pose.point((900.0, 7.0, 431.0)) == (900.0, 7.0, 431.0)
    assert pose.point((100.0, 0.0, 431.0)) == (900.0, 0.0, 1231.0)


def test_a_slide_moves_along_its_axis() -> None:
    assert joint(JointKind.SLIDE).pose(250.0).point((1.0, 2.0, 3.0)) == (1.0, 252.0, 3.0)
    assert joint(JointKind.SLIDE).pose(0.0).point((1.0, 2.0, 3.0)) == (1.0, 2.0, 3.0)


@pytest.mark.parametrize(
    ("modes", "night", "desk"), [(None, True, True), (frozenset({"desk"}), False, True), (frozenset(), False, False)]
)
def test_a_contact_holds_in_its_modes(modes: frozenset[str] | None, night: bool, desk: bool) -> None:
    contact = Contact(kind=ContactKind.RESTS, a="a", b="b", modes=modes)
    assert (contact.holds_in("night"), contact.holds_in("desk")) == (night, desk)


def test_a_variant_makes_a_file_name_not_a_folder() -> None:
    mode = Mode(
        id="desk/low",
        van=VanState(roof_up=True, length=2600.0),
        use=Use.SITTING,
        placements=frozen_map({}),
        settings=frozen_map({}),
    )
    assert mode.file_name == "desk-low"


def test_a_frozen_map_is_a_copy_nobody_writes_to() -> None:
    source = {"a": 1}
    frozen = frozen_map(source)
    source["a"] = 2
    assert frozen["a"] == 1
    with pytest.raises(TypeError, match="does not support item assignment"):
        frozen["a"] = 3  # type: ignore[index]
