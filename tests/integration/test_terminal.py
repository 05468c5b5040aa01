"""The command in a process of its own: every command on every brief, streams, completion, and being stopped."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from concurrent.futures import Future
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from parametric.core.check import Verdict

if TYPE_CHECKING:
    from tests.integration.conftest import Build, Run

    Answers = Mapping[tuple[str, str], Future[subprocess.CompletedProcess[str]]]
    Start = Callable[..., subprocess.Popen[bytes]]

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "configs" / "compact_van.toml"
DOCUMENT = ["schema", "design", "verdict", "checks"]
CHECK: Mapping[str, type | tuple[type, ...]] = {
    "id": str,
    "mode": (str, type(None)),
    "variant": (str, type(None)),
    "parts": list,
    "at": (list, type(None)),
    "step": (int, type(None)),
    "chance": (float, type(None)),
    "proposal": (str, type(None)),
    "verdict": str,
    "value": (int, float, type(None)),
    "unit": (str, type(None)),
    "min": (int, float, type(None)),
    "max": (int, float, type(None)),
    "margin": (int, float, type(None)),
    "says": str,
    "source": str,
}
# what is known not to be ideal in each demo, so that none is tuned to silence
TOLD: Mapping[str, tuple[int, set[str], set[str]]] = {
    "compact_van": (
        0,
        set(),
        {
            "comfort.back_support",
            "comfort.desk_height",
            "comfort.head_room_roof_shut",
            "sleep.ventilation",
            "access.entry_slot",
            "posture.gaze",
            "posture.rula",
        },
    ),
    "high_roof": (0, set(), {"body.estimate", "comfort.back_support", "access.storage_height", "posture.rula"}),
    "clash": (
        1,
        {
            "comfort.head_room",
            "access.entry_slot",
            "access.leave_bed",
            "access.storage_height",
            "clash.head_room",
            "clash.storage_height",
            "clash.way_in_to_the_seat",
            "clash.way_out_of_bed",
            "fit.body",
        },
        {
            "comfort.back_support",
            "comfort.desk_height",
            "sleep.ventilation",
            "fit.fixing_ground",
            "posture.gaze",
            "posture.hold_head",
            "posture.neck",
            "posture.rula",
        },
    ),
}


def test_build_writes_what_it_says_and_ends_with_its_verdict(any_built: Build) -> None:
    fails = [c for c in any_built.checks["checks"] if c["verdict"] == "fail"]
    assert any_built.err == ""
    assert any_built.code == (1 if fails else 0)
    lines = any_built.out.splitlines()
    said = "DO NOT BUILD: " if fails else "No check fails: "
    assert lines[0].startswith(f"{any_built.brief.stem}: {said}")
    assert lines[-1] == f"Wrote {any_built.folder}: checks.json, design.json, summary.txt, step/, stl/"
    assert max(map(len, lines[:-1])) <= 80
    page = (any_built.folder / "summary.txt").read_text(encoding="utf-8").splitlines()
    assert page[0] == lines[0]
    assert max(map(len, page)) <= 80
    assert any_built.design["verdict"] == any_built.checks["verdict"]


def test_nothing_is_left_beside_a_build(any_built: Build) -> None:
    name = any_built.folder.name
    assert [p.name for p in any_built.folder.parent.iterdir() if p.name.startswith(f".{name}.")] == []


def test_known_shortcomings_are_told_and_no_others(any_built: Build) -> None:
    code, fails, cautions = TOLD[any_built.brief.stem]
    checks = any_built.checks["checks"]
    assert any_built.code == code
    assert {c["id"] for c in checks if c["verdict"] == "fail"} == fails
    assert {c["id"] for c in checks if c["verdict"] == "caution"} == cautions


def test_check_prints_the_document_a_build_writes(answers: Answers, any_built: Build) -> None:
    done = answers["check", any_built.brief.stem].result()
    assert (done.returncode, done.stderr) == (any_built.code, "")
    assert done.stdout == (any_built.folder / "checks.json").read_text(encoding="utf-8")


def test_the_document_keeps_its_schema(any_built: Build) -> None:
    document = any_built.checks
    assert list(document) == DOCUMENT
    assert document["schema"] == "parametric.checks/1"
    assert document["design"] == any_built.design["name"]
    verdicts = [c["verdict"] for c in document["checks"]]
    assert document["verdict"] == max(verdicts, key=list(Verdict).index)
    for one in document["checks"]:
        assert list(one) == list(CHECK)
        for key, kind in CHECK.items():
            assert isinstance(one[key], kind), (one["id"], key, one[key])
        _assert_sensible(one, any_built)


def _assert_sensible(one: dict[str, Any], build: Build) -> None:
    says = f"{one['id']} ({one['mode']})"
    assert one["verdict"] in list(Verdict), says
    assert one["mode"] is None or one["mode"] in build.modes, says
    assert one["variant"] == (one["mode"].split("/", 1)[1] if one["mode"] and "/" in one["mode"] else None), says
    assert one["at"] is None or [type(c) for c in one["at"]] == [float] * 3, says
    assert one["chance"] is None or 0.0 <= one["chance"] <= 1.0, says
    assert set(one["parts"]) <= set(build.parts) | _surroundings(one), says
    assert one["says"], says
    assert one["source"], says
    if one["margin"] is not None:
        assert (one["margin"] < 0.0) == (one["verdict"] != "pass"), says


def _surroundings(one: dict[str, Any]) -> set[str]:
    """What a part or a body may meet that is no part."""
    return set(one["parts"]) if one["id"] in ("fit.van", "fit.body") else set()


def test_size_says_the_same_heights_as_the_build(answers: Answers, any_built: Build) -> None:
    done = answers["size", any_built.brief.stem].result()
    document = json.loads(done.stdout)
    assert (done.returncode, done.stderr) == (1 if document["verdict"] == "fail" else 0, "")
    assert document["dimensions"] == any_built.design["dimensions"]
    assert document["clashes"] == any_built.design["clashes"]
    assert document["clashes"] == [] or document["verdict"] == "fail"


def test_the_template_builds_as_it_stands(builds: dict[str, Future[Build]]) -> None:
    built = builds["template"].result()
    assert (built.code, built.err) == (0, "")
    assert built.design["name"] == "template"


def test_a_killed_build_leaves_the_old_one_and_the_next_one_works(
    run: Run, start: Start, built: Build, tmp_path: Path
) -> None:
    outputs = tmp_path / "outputs"
    old, partial = outputs / "compact_van", outputs / ".compact_van.partial"
    (old / "stl").mkdir(parents=True)
    (old / "design.json").write_text("old")
    (old / "stl" / "gone.stl").write_text("old")
    process = start("build", str(DEMO), "--only", "stl", cwd=tmp_path)
    _wait_for(lambda: (partial / "stl").exists() or process.poll() is not None)
    os.kill(process.pid, signal.SIGKILL)
    assert process.wait() == -signal.SIGKILL
    assert sorted(str(p.relative_to(old)) for p in old.rglob("*")) == ["design.json", "stl", "stl/gone.stl"]
    assert (old / "stl" / "gone.stl").read_text() == "old"
    assert partial.exists()
    done = run("build", str(DEMO), "--only", "stl", "--quiet", cwd=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert len(done.stdout.splitlines()) == 2
    assert done.stdout.endswith("Wrote outputs/compact_van: checks.json, design.json, summary.txt, stl/\n")
    assert [p.name for p in tmp_path.iterdir()] == ["outputs"]
    assert [p.name for p in outputs.iterdir()] == ["compact_van"]
    assert sorted(p.name for p in old.iterdir()) == ["checks.json", "design.json", "stl", "summary.txt"]
    assert (old / "design.json").read_bytes() == (built.folder / "design.json").read_bytes()
    assert not (old / "stl" / "gone.stl").exists()


def test_a_build_stopped_by_ctrl_c_clears_up_and_is_no_failed_check(start: Start, tmp_path: Path) -> None:
    process = start("build", str(DEMO), "-o", str(tmp_path / "a" / "van"), cwd=tmp_path)
    _wait_for(lambda: (tmp_path / "a" / ".van.partial").exists() or process.poll() is not None)
    process.send_signal(signal.SIGINT)
    out, err = process.communicate()
    assert (process.returncode, out) == (130, b"")
    assert err == b"stopped; nothing was changed\n"
    assert list(tmp_path.iterdir()) == []


def _wait_for(there: Callable[[], bool]) -> None:
    while not there():
        time.sleep(0.01)


def test_a_reader_that_has_had_enough_is_no_failed_check(start: Start, tmp_path: Path) -> None:
    process = start("check", str(DEMO), cwd=tmp_path)
    assert process.stdout is not None
    process.stdout.close()
    assert process.wait() == 141
    assert process.stderr is not None
    assert process.stderr.read() == b""


def test_names_in_any_script_are_printed_where_only_ascii_can_be(run: Run, tmp_path: Path) -> None:
    text = DEMO.read_text(encoding="utf-8").replace('sex = "male"', 'sex = "male"\nname = "Zoë 山"')
    (tmp_path / "van.toml").write_text(text, encoding="utf-8")
    for arguments in (["size"], ["size", "--json"]):
        done = run(*arguments, "van.toml", cwd=tmp_path, env={"PYTHONIOENCODING": "ascii", "LC_ALL": "C"})
        assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.parametrize(
    ("shell", "words", "offered"),
    [
        ("bash", "parametric ", ["new", "body", "size", "check", "build"]),
        ("bash", "parametric bu", ["build"]),
        ("bash", "parametric body --s", ["--stature", "--sex"]),
        ("bash", "parametric body --sex ", ["male", "female", "unspecified"]),
        ("zsh", "parametric si", ["size"]),
    ],
)
def test_completion_offers_commands_options_and_choices(
    tmp_path: Path, shell: str, words: str, offered: list[str]
) -> None:
    asked = {
        "_PARAMETRIC_COMPLETE": f"complete_{shell}",
        "COMP_WORDS": words,
        "COMP_CWORD": str(len(words.split(" ")) - 1),
        "_TYPER_COMPLETE_ARGS": words,
    }
    done = _installed(tmp_path, asked)
    assert done.returncode == 0, done.stderr
    for word in offered:
        assert word in done.stdout


def test_completion_can_be_shown(tmp_path: Path) -> None:
    done = _installed(tmp_path, {"_PARAMETRIC_COMPLETE": "source_bash"})
    assert done.returncode == 0, done.stderr
    assert "complete -o default -F _parametric_completion parametric" in done.stdout


def _installed(cwd: Path, env: Mapping[str, str]) -> subprocess.CompletedProcess[str]:
    """The installed script `parametric`, whose name is that of its variables for completion."""
    code = "import sys; sys.argv = ['parametric']; from parametric.cli.app import main; main()"
    return subprocess.run(
        [sys.executable, "-c", code],
        cwd=cwd,
        env={**os.environ, "PYTHONPATH": str(ROOT), **env},
        capture_output=True,
        text=True,
        check=False,
    )
