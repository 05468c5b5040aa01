from __future__ import annotations

from dataclasses import fields

import pytest

from parametric.brief.stock import Sections as Wanted
from parametric.sizing.sections import DEFAULTS, Sections, resolve


def test_what_is_left_out_is_chosen() -> None:
    sections = resolve({"rail": (34.0, 120.0)})
    assert sections.rail == (34.0, 120.0)
    assert sections.slat == DEFAULTS["slat"]


@pytest.mark.parametrize("role", sorted(DEFAULTS))
def test_every_role_of_the_brief_is_used(role: str) -> None:
    assert getattr(resolve({role: (41.0, 42.0)}), role) == (41.0, 42.0)


def test_the_brief_knows_the_same_roles() -> None:
    assert set(Wanted.model_fields) == set(DEFAULTS)
    assert set(DEFAULTS) < {f.name for f in fields(Sections)}


def test_the_stages_slide_in_each_other() -> None:
    sections = resolve({})
    play = sections.leg - 2.0 * sections.leg_wall - sections.leg_lower
    assert 0.5 <= play <= 2.0
