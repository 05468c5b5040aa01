"""Body dimensions by ISO 7250-1 names, estimated from whatever is known of a person."""

from __future__ import annotations

from parametric.body.body import Body, Sex
from parametric.body.links import Links
from parametric.body.measuring import Narrowing, narrowing
from parametric.body.survey_estimate import estimate

__all__ = ["Body", "Links", "Narrowing", "Sex", "estimate", "narrowing"]
