"""Where limits come from, in the words printed beside every check.

'from memory' and 'own estimate' are said out loud: a limit is only as good as its source.
"""

from __future__ import annotations

from typing import Final

ANSUR: Final = "ANSUR II 2012 (Natick/TR-15/007), conditional estimate"
BED_LENGTH: Final = "bed trade rule: stature + 70 least, + 150 good (own reading of several bed-size guides)"
BED_WIDTH: Final = "49 CFR 393.76 berth 610; 700 for one, 1220 for two (bed-size guides)"
DESK_HEIGHT: Final = "surface at elbow height (course notes; ANSI/HFES 100-2007 via NUREG-0700)"
DESK_SIZE: Final = "IS 13896:1994 600 x 800; laptop alone 500 x 600 (own estimate)"
EN527: Final = "EN 527-1 650-850 sitting (secondary table)"
ENTRY: Final = "access width 330-450 difficult, 450-600 reasonable (roymech access page)"
FIXING: Final = "common practice, no source"
FIT: Final = "own rule: common volume over 1 mm3 and penetration over 0.05 mm; contact gap 0..0.3"
FOOT_ROOM: Final = "OSHA eTool: foot depth 600, width 520, height 100"
HEAD_ROOM: Final = "sitting height + clearance (own estimate 50)"
HEEL_ROOM: Final = "room to draw the heels back when rising: 150 x 250 (own estimate)"
KNEE_GAP: Final = "knee height + shoe + 10 (own estimate)"
KNEE_ROOM: Final = "OSHA eTool: knee depth 440"
LEVEL: Final = "own rule: desk tilt at most 0.5 degrees"
LYING_ROOM: Final = "49 CFR 393.76: 610 over the mattress; 300 least for a vent (EN 721 via TUEV leaflet)"
OPENING: Final = "own rule: every rigid part passes an opening as a box"
OVERLAP: Final = "telescopic leg overlap at least 100 and 3 x section (common practice, no source)"
PAYLOAD: Final = "payload left, from the brief"
SEAT_DEPTH: Final = "gap behind the knee 50-90 (ANSI/HFES 100-2007 and textbook rules)"
SEAT_HEIGHT: Final = "loaded seat at popliteal height + shoe, -40..+15 (ANSI/HFES 100-2007, own band)"
SLAT_GAP: Final = "slat gap at most 75, 50-64 good (common practice, no source)"
JOINT_GAP: Final = "gap that stays under 8 (EN 527-2 rule for fingers)"
STORAGE: Final = "300 clear under the platform (common practice, no source)"
SUPPORT: Final = "own rule: every part reaches the van through declared contacts"
THIGH_GAP: Final = "room over the thigh at least 20 (own estimate)"
VENTILATION: Final = "EN 747-1:2012+A1:2015 via SGS: bed base open at least 35 cm2"
WAY_OUT: Final = "VdTUEV 740: two ways out; 457 x 914 each (49 CFR 393.76); caution only"
