from __future__ import annotations

from collections.abc import Callable

import pytest

from parametric.brief.model import Brief

Refused = Callable[..., list[str]]
Read = Callable[..., Brief]


def van(extra: str) -> tuple[str, str]:
    return "[[sleeper]]", f"{extra}\n[[sleeper]]"


def bed(extra: str) -> tuple[str, str]:
    return "width = 1150", f"width = 1150\n{extra}"


def box(name: str, x: str, y: str, z: str) -> str:
    return f'[[van.fixed]]\nname = "{name}"\nx = {x}\ny = {y}\nz = {z}'


@pytest.mark.parametrize(
    ("edit", "message"),
    [
        (("1150", "1600"), "small.toml:10: bed.width: 1600 is more than the clear width of the van, 1500"),
        (bed("length = 2601"), "bed.length: read 2601; allowed are 1200 to 2600 mm"),
        (
            bed("length = 2000\nplatform_length = 2000.5"),
            "bed.platform_length: 2000.5 is more than the length of the whole bed, 2000",
        ),
        (bed('direction = "across"\nlength = 1900'), "bed.length: 1900 is more than the clear width of the van, 1500"),
        (bed('direction = "across"\nplatform_length = 1900'), "bed.platform_length: 1900 is more than the clear width"),
        (
            bed("platform_height = 1250"),
            "bed.platform_height: 1250 reaches 1350 with the mattress; the finished ceiling is at 1320",
        ),
        (
            bed("platform_height = 300\nstorage_height = 300"),
            "12: bed.storage_height: 300 is not below the platform_height, 300",
        ),
        (bed("storage_height = 1400"), "bed.storage_height: 1400 reaches 1400; the finished ceiling is at 1320"),
        (
            bed("[bed.mattress]\nthickness = 30"),
            "bed.mattress.sink_seated: 30 is not less than the mattress thickness, 30",
        ),
        (
            bed("[sitting]\nseat_height = 700\ndesk_height = 700"),
            "12: sitting.seat_height: 700 is not below the desk_height, 700",
        ),
        (
            van(box("a", "[2600, 2700]", "[0, 100]", "[0, 100]")),
            "van.fixed[0].x: begins at 2600, in front of the van's length of 2600",
        ),
        (
            van(box("a", "[0, 100]", "[750, 900]", "[0, 100]")),
            "van.fixed[0].y: read [750, 900]; the box lies outside the walls altogether",
        ),
        (
            van(box("a", "[0, 100]", "[-900, -750]", "[0, 100]")),
            "van.fixed[0].y: read [-900, -750]; the box lies outside",
        ),
        (
            van(box("a", "[0, 100]", "[0, 100]", "[1320, 1400]")),
            "van.fixed[0].z: begins at 1320, above the roof at 1320",
        ),
        (
            van("[van.roof]\nx = [0, 100]\ny = [-100, 100]\nfront = 1320\nrear = 1500"),
            "van.roof.front: 1320 is not above the ceiling, 1320",
        ),
        (van("[van.roof]\nx = [2700, 2800]\ny = [-100, 100]\nfront = 1500\nrear = 1500"), "van.roof.x: begins at 2700"),
        (
            van('[[van.fixing]]\nsurface = "left"\nx = [3000, 3100]\nz = [0, 9]\nload = 5'),
            "van.fixing[0].x: begins at 3000",
        ),
        (van('[[van.no_drill]]\nsurface = "left"\nx = [3000, 3100]\nz = [0, 9]'), "van.no_drill[0].x: begins at 3000"),
        (("stature = 1960", "stature = 1960\nworks = false"), "9: sleeper[0].works: nobody uses the desk"),
    ],
)
def test_certain_contradictions(edit: tuple[str, str], message: str, refused: Refused) -> None:
    assert [line for line in refused(edit) if message in line]


def test_a_bed_just_as_wide_as_the_van_is_read(read: Read) -> None:
    assert read(("1150", "1500")).bed.width == 1500


def test_lining_takes_bed_width(refused: Refused) -> None:
    lines = refused(("1150", "1500"), van("[van.lining]\nwall = 10"))
    assert lines == ["small.toml:12: bed.width: 1500 is more than the clear width of the van, 1480"]


def test_a_raised_roof_makes_room(read: Read) -> None:
    roof = "[van.roof]\nx = [0, 2000]\ny = [-500, 500]\nfront = 1900\nrear = 1900"
    assert read(van(roof), bed("platform_height = 1250")).bed.platform_height == 1250


def test_a_wheel_arch_that_reaches_into_the_wall_is_read(read: Read) -> None:
    assert len(read(van(box("arch", "[700, 1500]", "[550, 800]", "[0, 300]"))).van.fixed) == 1


def test_names_are_told_apart(refused: Refused) -> None:
    two = "\n".join(box("arch", "[0, 100]", "[0, 100]", "[0, 100]") for _ in range(2))
    doors = "\n".join(
        f'[[van.opening]]\nname = "door"\nkind = "{k}"\nwidth = 900\nheight = 900' for k in ("rear", "side")
    )
    lines = refused(van(f"{two}\n{doors}"))
    assert len(lines) == 2
    assert 'van.fixed[1].name: "arch" is the name of an earlier fixed' in lines[0]
    assert 'van.opening[1].name: "door" is the name of an earlier opening' in lines[1]


STATION = "[[van.station]]\nx = {x}\nleft = {left}\nright = {right}"


def station(x: int = 0, left: str = "[[0, 750], [1320, 700]]", right: str = "[[0, -750], [1320, -700]]") -> str:
    return STATION.format(x=x, left=left, right=right)


WALL = "wall = [[0, 1500], [500, 1500], [1320, 1420]]\n"


def test_stations_replace_the_wall(read: Read) -> None:
    brief = read((WALL, ""), van(f"{station(0)}\n{station(900)}"))
    assert brief.van.wall is None
    assert [s.x for s in brief.van.station] == [0, 900]


@pytest.mark.parametrize(
    ("edits", "message"),
    [
        ([(WALL, "")], "small.toml:2: van.wall: is missing: give wall = [[z, clear width], ...] or [[van.station]]"),
        ([van(station())], "van.station: the walls are given twice"),
        (
            [(WALL, ""), van(f"{station(900)}\n{station(900)}")],
            "van.station[1].x: read 900 after 900; stations go forward",
        ),
        (
            [(WALL, ""), van(station(left="[[0, 750], [1300, 700]]"))],
            "van.station[0].left: ends at z 1300; go on up to",
        ),
        ([(WALL, ""), van(station(right="[[0, 750], [1320, 700]]"))], "van.station[0].right[0][1]: read 750; allowed"),
        (
            [(WALL, ""), van(station(left="[[0, 750], [1320, 2]]", right="[[0, -750], [1320, -3]]"))],
            "van.station[0].right: leaves 5",
        ),
        ([(WALL, ""), van(station(left="[[0, 750]]"))], "van.station[0].left: read a list of 1; write at least 2"),
        ([("[1320, 1420]", "[1319, 1420]")], "5: van.wall: ends at z 1319; go on up to the ceiling at 1320 or above"),
        ([("[0, 1500]", "[1, 1500]")], "5: van.wall[0][0]: read 1; the first z is the floor, 0"),
        ([("[500, 1500]", "[0, 1500]")], "5: van.wall[1][0]: read 0 after 0; each z is above the one before"),
        ([("[500, 1500]", "[500, 1500, 3]")], "5: van.wall[1]: read a list longer than 2"),
        ([("[500, 1500]", "[500]")], "5: van.wall[1][1]: is missing: the list read is a list of 1"),
    ],
)
def test_walls(edits: list[tuple[str, str]], message: str, refused: Refused) -> None:
    assert [line for line in refused(*edits) if message in line]


@pytest.mark.parametrize(
    ("ranges", "messages"),
    [
        ('surface = "floor"\nx = [0, 9]\nz = [0, 9]', ["fixing[0].y: is missing", "fixing[0].z: does not belong"]),
        ('surface = "right"\nx = [0, 9]\ny = [0, 9]', ["fixing[0].z: is missing", "fixing[0].y: does not belong"]),
    ],
)
def test_ground_has_the_ranges_of_its_surface(ranges: str, messages: list[str], refused: Refused) -> None:
    lines = refused(van(f"[[van.fixing]]\n{ranges}\nload = 100"))
    assert all(any(message in line for line in lines) for message in messages)


def test_contradictions_are_found_beside_other_problems(refused: Refused) -> None:
    lines = refused(("1150", "1600"), ("1960", "19600"), ("[bed]", "[shop]\nkerf = -1\n[bed]"))
    assert [line.split(": ")[1] for line in lines] == ["sleeper[0].stature", "shop.kerf", "bed.width"]
