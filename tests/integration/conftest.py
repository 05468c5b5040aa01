"""Builds of the demo briefs, made once by the command itself, and what other programs read in their files."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Iterator, Mapping
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any, Protocol

import cadquery as cq
import pytest

from parametric.brief.loader import load
from parametric.pipeline.check import Checked, check

ROOT = Path(__file__).parents[2]
CONFIGS = sorted((ROOT / "configs").glob("*.toml"))
DEMO = "compact_van"
OTHERWISE = {"PYTHONHASHSEED": "4711", "TZ": "Asia/Tokyo", "LC_ALL": "C", "COLUMNS": "60"}


class Run(Protocol):
    """Runs `python -m parametric`: ``run("size", "x.toml", cwd=folder)``."""

    def __call__(
        self, *arguments: str, cwd: Path, env: Mapping[str, str] = ..., stdin: str = ...
    ) -> subprocess.CompletedProcess[str]: ...


@dataclass(frozen=True)
class Build:
    """One finished run of `build`."""

    brief: Path
    folder: Path
    code: int
    out: str
    err: str

    @cached_property
    def design(self) -> dict[str, Any]:
        """Content of design.json."""
        return self._document("design.json")

    @cached_property
    def checks(self) -> dict[str, Any]:
        """Content of checks.json."""
        return self._document("checks.json")

    @property
    def modes(self) -> list[str]:
        """Ids of the modes."""
        return list(self.design["modes"])

    @property
    def parts(self) -> dict[str, dict[str, Any]]:
        """Line of the parts list by the name of each piece."""
        return {name: line for line in self.design["parts"] for name in line["instances"]}

    def mode(self, id: str, ending: str) -> Path:
        """File of a mode."""
        return self.folder / ending / f"{id.replace('/', '-')}.{ending}"

    def part(self, line: Mapping[str, Any], ending: str) -> Path:
        """File of a part."""
        return self.folder / ending / "parts" / f"{line['number']}_{line['name']}.{ending}"

    def _document(self, name: str) -> dict[str, Any]:
        read: dict[str, Any] = json.loads((self.folder / name).read_text(encoding="utf-8"))
        return read


@dataclass(frozen=True)
class Read:
    """One piece as the CAD kernel reads it from the file of a mode."""

    solid: cq.Shape
    place: cq.Location

    @property
    def placed(self) -> cq.Shape:
        """The solid where it is in the van."""
        return self.solid.moved(self.place)


class Reader(Protocol):
    """The pieces in the file of a mode by name: ``read(build, "desk/low")``."""

    def __call__(self, build: Build, mode: str) -> Mapping[str, Read]: ...


def _command(*arguments: str) -> list[str]:
    return [sys.executable, "-m", "parametric", *arguments]


def _environment(more: Mapping[str, str]) -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(ROOT), **more}


@pytest.fixture(scope="session")
def run() -> Run:
    """The command as a process of its own."""

    def run(
        *arguments: str, cwd: Path, env: Mapping[str, str] = {}, stdin: str = ""
    ) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            _command(*arguments),
            cwd=cwd,
            env=_environment(env),
            input=stdin,
            capture_output=True,
            text=True,
            encoding="utf-8",
            check=False,
        )

    return run


@pytest.fixture(scope="session")
def start() -> Iterator[Any]:
    """Starts the command and goes on; whatever still runs is killed in the end."""
    running: list[subprocess.Popen[bytes]] = []

    def start(*arguments: str, cwd: Path) -> subprocess.Popen[bytes]:
        process = subprocess.Popen(
            _command(*arguments), cwd=cwd, env=_environment({}), stdout=subprocess.PIPE, stderr=subprocess.PIPE
        )
        running.append(process)
        return process

    yield start
    for process in running:
        process.kill()
        process.communicate()


@dataclass(frozen=True)
class Jobs:
    """Commands that run, two at a time, while the tests go on."""

    builds: Mapping[str, Future[Build]]
    answers: Mapping[tuple[str, str], Future[subprocess.CompletedProcess[str]]]


@pytest.fixture(scope="session")
def jobs(run: Run, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Jobs]:
    """Builds of every demo, of the demo again in other surroundings, and of the template; then what is printed."""
    folder = tmp_path_factory.mktemp("builds")
    template = folder / "template.toml"
    assert run("new", str(template), cwd=folder).returncode == 0

    def build(name: str, brief: Path, env: Mapping[str, str]) -> Build:
        target = folder / name
        done = run("build", str(brief), "-o", str(target), cwd=folder, env=env)
        return Build(brief=brief, folder=target, code=done.returncode, out=done.stdout, err=done.stderr)

    demo = ROOT / "configs" / f"{DEMO}.toml"
    first = {"PYTHONHASHSEED": "1"}
    asked = {DEMO: (demo, first), "again": (demo, OTHERWISE), **{b.stem: (b, first) for b in CONFIGS}}
    asked["template"] = (template, {})
    with ThreadPoolExecutor(max_workers=2) as pool:
        yield Jobs(
            builds={name: pool.submit(build, name, *what) for name, what in asked.items()},
            answers={
                (command, brief.stem): pool.submit(run, command, "--json", str(brief), cwd=folder)
                for command in ("check", "size")
                for brief in CONFIGS
            },
        )


@pytest.fixture(scope="session")
def builds(jobs: Jobs) -> Mapping[str, Future[Build]]:
    """Builds by the name of the brief, and ``again`` and ``template``."""
    return jobs.builds


@pytest.fixture(scope="session")
def answers(jobs: Jobs) -> Mapping[tuple[str, str], Future[subprocess.CompletedProcess[str]]]:
    """What `check --json` and `size --json` print, by command and name of the brief."""
    return jobs.answers


@pytest.fixture(scope="session")
def built(builds: Mapping[str, Future[Build]]) -> Build:
    """The build of the demo."""
    return builds[DEMO].result()


@pytest.fixture(scope="session", params=CONFIGS, ids=lambda path: path.stem)
def any_built(request: pytest.FixtureRequest, builds: Mapping[str, Future[Build]]) -> Build:
    """The build of each brief in configs."""
    return builds[request.param.stem].result()


class Judged(Protocol):
    """A brief checked in this process, once: ``judged(path)``."""

    def __call__(self, brief: Path) -> Checked: ...


@pytest.fixture(scope="session")
def judged() -> Judged:
    """Checks a brief."""
    return cache(lambda brief: check(load(brief)))


@pytest.fixture(scope="session")
def read() -> Reader:
    """Reads the STEP file of a mode with the CAD kernel."""

    @cache
    def parse(path: Path) -> Mapping[str, Read]:
        children = cq.Assembly.importStep(str(path)).children
        found = {}
        for child in children:
            assert isinstance(child.obj, cq.Shape)
            found[child.name] = Read(solid=child.obj, place=child.loc)
        assert len(found) == len(children)
        return found

    return lambda build, mode: parse(build.mode(mode, "step"))
