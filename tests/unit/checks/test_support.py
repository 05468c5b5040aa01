from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import atan2, degrees

import pytest

from parametric.assembly.placed import Assembly, assemble
from parametric.brief.model import Brief
from parametric.checks.support import support_checks
from parametric.core.check import Check, Verdict
from parametric.core.pose import Pose
from parametric.mechanism.model import Mechanism, Placement, frozen_map
from parametric.mechanism.modes import DESKS
from parametric.pipeline.size import Sized


def told(sized: Sized, assembly: Assembly, id: str) -> list[Check]:
    """What the support checks say under a code."""
    return [c for c in support_checks(sized.brief, sized.dimensions, assembly) if c.id == id]


def raised(mechanism: Mechanism, name: str, mode: str, dz: float) -> Mechanism:
    """One piece higher in one mode."""
    here = mechanism.modes[mode]
    old = here.placements[name]
    placements = {**here.placements, name: Placement(name, old.on, old.pose.moved(dz=dz))}
    modes = {**mechanism.modes, mode: replace(here, placements=frozen_map(placements))}
    return replace(mechanism, modes=frozen_map(modes))


def test_the_desk_is_level_at_every_step(sized: Sized, mechanism: Mechanism) -> None:
    checks = told(sized, assemble(mechanism), "support.level")
    assert [c.mode for c in checks] == list(DESKS)
    assert all(c.value == pytest.approx(0.0, abs=1e-9) for c in checks)


def test_a_leg_one_step_off_tilts_it(sized: Sized, mechanism: Mechanism) -> None:
    faulty = assemble(raised(mechanism, "leg_far_upper", "desk/low", 20.0))
    tilted = [c for c in told(sized, faulty, "support.level") if c.verdict is Verdict.FAIL]
    assert [c.mode for c in tilted] == ["desk/low"]
    assert tilted[0].value == pytest.approx(degrees(atan2(20.0, sized.dimensions.widths.panel_length)))


def test_9_mm_in_the_width_of_the_panel_is_still_level(sized: Sized, mechanism: Mechanism) -> None:
    # tan 0.5 degrees of 1083: 9.45
    for rise, verdict in ((9.0, Verdict.PASS), (10.0, Verdict.FAIL)):
        checks = told(sized, assemble(raised(mechanism, "leg_near_upper", "desk", rise)), "support.level")
        assert checks[0].verdict is verdict


def test_leg_stages_overlap_by_100(sized: Sized, mechanism: Mechanism) -> None:
    (check,) = told(sized, assemble(mechanism), "support.leg_overlap")
    assert (check.value, check.min, check.verdict) == (100.0, 100.0, Verdict.PASS)
    short = replace(sized, dimensions=replace(sized.dimensions, legs=replace(sized.dimensions.legs, overlap=99.0)))
    assert told(short, assemble(mechanism), "support.leg_overlap")[0].verdict is Verdict.FAIL


def test_what_is_screwed_to_the_wall_is_asked_about_once_each(sized: Sized, mechanism: Mechanism) -> None:
    checks = told(sized, assemble(mechanism), "fit.fixing_ground")
    assert [c.parts[0] for c in checks] == ["night_cleat", "upright_1", "upright_2", "upright_3"]
    assert all(c.verdict is Verdict.PASS and c.at is not None for c in checks)


def test_the_ground_must_reach_under_the_whole_part(
    sized: Sized, mechanism: Mechanism, demo: Callable[..., Brief]
) -> None:
    def verdict(z_top: float) -> Verdict:
        ground = [{"surface": "right", "x": [0, 2600], "z": [0, z_top], "load": 600}]
        checks = told(replace(sized, brief=demo(van={"fixing": ground})), assemble(mechanism), "fit.fixing_ground")
        return next(c.verdict for c in checks if c.parts == ("upright_1",))

    pose: Pose = assemble(mechanism).poses["desk"]["upright_1"]
    top = pose.translation[2] + max(e.end[1] for e in mechanism.parts["upright_1"].outline.edges)  # type: ignore[union-attr]
    assert verdict(top) is Verdict.PASS
    assert verdict(top - 1.0) is Verdict.FAIL


def test_payload_left_unsaid_is_not_judged(sized: Sized, mechanism: Mechanism, demo: Callable[..., Brief]) -> None:
    (check,) = told(replace(sized, brief=demo(van={"payload": None})), assemble(mechanism), "ride.payload")
    assert check.verdict is Verdict.PASS
    assert check.max is None
    assert check.value == pytest.approx(assemble(mechanism).mass)
