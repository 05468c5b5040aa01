"""What the report says; that faults are found is shown in `test_planted_faults`."""

from __future__ import annotations

from dataclasses import replace

import pytest

from parametric.checks.fit import fit_checks
from parametric.core.check import Verdict
from parametric.mechanism.model import Mechanism
from parametric.pipeline.check import Checked

FAMILY = ("fit.interference", "fit.clearance", "fit.contact", "fit.support", "fit.van")


def test_every_mode_is_asked_every_question(sound: Checked) -> None:
    asked = {(c.id, c.mode) for c in sound.checks if c.id in FAMILY}
    assert asked == {(id, mode) for id in FAMILY for mode in sound.assembly.mechanism.modes}


def test_bodies_are_judged_where_there_are_people(sound: Checked) -> None:
    modes = {c.mode for c in sound.checks if c.id == "fit.body"}
    assert modes == {"night", "lounge", "desk", "desk/low", "desk/high"}


def test_variants_are_told(sound: Checked) -> None:
    variants = {c.mode: c.variant for c in sound.checks if c.id == "fit.van"}
    assert variants["desk"] is None
    assert variants["desk/parked"] == "parked"
    assert variants["access/rear"] == "rear"


def test_a_pass_says_how_much_was_looked_at(sound: Checked) -> None:
    (night,) = (c for c in sound.checks if (c.id, c.mode) == ("fit.interference", "night"))
    pairs = int(night.says.split()[0])
    assert pairs > 150
    (contact,) = (c for c in sound.checks if (c.id, c.mode) == ("fit.contact", "night"))
    assert int(contact.says.split()[0]) > 150


def test_a_wider_clearance_between_moving_parts_is_asked_for_and_missed(sound: Checked) -> None:
    """Lids keep 3 to the frame: 2 is kept, 4 is not, and only by parts that move."""
    tight = [c for c in fit_checks(sound.scenes, 4.0) if c.verdict is Verdict.FAIL]
    assert {c.id for c in tight} == {"fit.clearance"}
    named = {frozenset(c.parts) for c in tight}
    assert frozenset({"rear_lid_slat_2", "left_rail"}) in named
    assert frozenset({"left_rail", "left_bearer"}) not in named
    assert all(c.value is not None and 0.3 <= c.value < 4.0 for c in tight)
    assert not [c for c in fit_checks(sound.scenes, 2.0) if c.verdict is Verdict.FAIL]


def test_a_fail_says_where(sound: Checked, mechanism: Mechanism) -> None:
    tight = [c for c in fit_checks(sound.scenes, 4.0) if c.verdict is Verdict.FAIL]
    slat = next(c for c in tight if set(c.parts) == {"rear_lid_slat_2", "left_rail"} and c.mode == "night")
    assert slat.at is not None
    x, y, z = slat.at
    lo, hi = sound.scenes[0].parts["rear_lid_slat_2"].box
    assert lo[0] - 5.0 <= x <= hi[0] + 5.0
    assert y == pytest.approx(hi[1] + 1.5, abs=2.0)
    assert lo[2] - 5.0 <= z <= hi[2] + 5.0
    assert slat.says == f"{slat.parts[0]} and {slat.parts[1]} are 3.0 apart and may not touch"


def test_scenes_may_be_judged_alone(sound: Checked) -> None:
    """One mode's verdict does not hang on the others but for what counts as moving."""
    night = fit_checks(sound.scenes[:1], 2.0)
    assert {c.mode for c in night} == {"night"}
    assert all(c.verdict is Verdict.PASS for c in night)
    assert replace(night[0], mode=None) != night[0]
