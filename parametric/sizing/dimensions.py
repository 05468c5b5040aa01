"""Every resolved height, length and width of a design. One frozen value, van frame, mm."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.sizing.sections import Sections


@dataclass(frozen=True, slots=True, kw_only=True)
class Heights:
    """Heights above the finished floor.

    Attributes:
        seat: Seat under load at the seat front.
        platform: Slat top.
        mattress: Mattress with the air mat.
        desk: Desk surface at the middle step.
        desk_low: Lowest step offered.
        desk_high: Highest step offered.
        panel: Panel thickness used (measured or mean).
        storage: Floor to the lowest member under the slats.
        knee: Top of the knee, shod.
        thigh: Top of the thigh.
        head: Crown of the head, sitting erect at the desk.
    """

    seat: float
    platform: float
    mattress: float
    desk: float
    desk_low: float
    desk_high: float
    panel: float
    storage: float
    knee: float
    thigh: float
    head: float

    @property
    def desk_under(self) -> float:
        """Underside of the panel at the middle step."""
        return self.desk - self.panel


@dataclass(frozen=True, slots=True, kw_only=True)
class Lengths:
    """Places along the vehicle.

    Attributes:
        rear: Rear face of the platform.
        platform: Platform length, slat end to slat end.
        bed: Sleeping length.
        panel_depth: Panel size along x, the depth of the desk.
        middle: Centre of the middle bearer.
        lid: Length of the longer lid, between the bearers.
        seat_front: Foremost of ledger, mattress and bearer.
        back: Back of the seated body.
        belly: Front of the seated body's belly.
        knee: Front of the knee.
        near: Panel edge nearest the person at the desk.
        foot_end: First obstacle for the feet in front of the seat.
        parked: The same edge with the panel slid forward to let the person in.
    """

    rear: float
    platform: float
    bed: float
    panel_depth: float
    middle: float
    lid: float
    seat_front: float
    back: float
    belly: float
    knee: float
    near: float
    foot_end: float
    parked: float

    @property
    def front(self) -> float:
        """Front face of the platform."""
        return self.rear + self.platform

    @property
    def extension(self) -> float:
        """Bed length less platform length."""
        return self.bed - self.platform


@dataclass(frozen=True, slots=True, kw_only=True)
class Widths:
    """Places across the vehicle; y grows to the left, the bed stands on the right wall.

    Attributes:
        right: Right face of the platform.
        left: Left face of the platform, along the aisle.
        wall_night: Back of the night cleat: the wall where it is narrowest.
        wall_desk: Back of the desk uprights: the wall where it is narrowest.
        panel_length: Panel size along y.
        panel_night: Right edge of the panel at night.
        panel_desk: Right edge of the panel at the desk.
        panel_stowed: Right edge of the panel stowed on the rear lid.
        stacked: Right face of mattress pieces stacked on each other: clear of a wall that leans in.
        place: Middle of the sitting place.
        aisle: Least clear width beside the platform, 0-1000 above the floor.
    """

    right: float
    left: float
    wall_night: float
    wall_desk: float
    panel_length: float
    panel_night: float
    panel_desk: float
    panel_stowed: float
    stacked: float
    place: float
    aisle: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stages:
    """Stages of the legs that carry the panel at night and at the desk.

    Attributes:
        kind: ``telescopic`` (one lower stage) or ``exchange`` (one for each height).
        upper: Length of the upper stage.
        lower_desk: Length of the lower stage used at the desk (and at night if telescopic).
        lower_night: Length of the night stage; 0 if telescopic.
        overlap: Overlap of the stages at the highest desk step.
    """

    kind: str
    upper: float
    lower_desk: float
    lower_night: float
    overlap: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Legs(Stages):
    """The legs with their fittings and where they stand.

    Attributes:
        head: Height of the fitting over the upper stage.
        foot: Height of the foot under the lower stage.
        near: Distance of the nearer leg from the panel's near edge.
        far: Distance of the farther leg.
        inset: Distance of both from the panel's aisle edge.
    """

    head: float
    foot: float
    near: float
    far: float
    inset: float

    @property
    def fittings(self) -> float:
        """Height of head and foot together."""
        return self.head + self.foot


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimensions:
    """Everything the furniture is built from.

    Attributes:
        heights: Above the floor.
        lengths: Along the vehicle.
        widths: Across it.
        legs: Leg stages.
        sections: Timber and tubes.
        pitch: Step of the desk height.
        steps: Desk surface at every step, lowest first.
    """

    heights: Heights
    lengths: Lengths
    widths: Widths
    legs: Legs
    sections: Sections
    pitch: float
    steps: tuple[float, ...]

    def desk_at(self, mode: str) -> float:
        """Desk surface in a mode: its own step in ``desk/low`` and ``desk/high``, else the middle one."""
        return {"desk/low": self.heights.desk_low, "desk/high": self.heights.desk_high}.get(mode, self.heights.desk)
