#!/usr/bin/env python3
"""What stands in deploy/ is what it says: the unit is one by systemd's own judge and as closed as it can be, each option
that unit and container name is one of the program, and the container copies what is there and runs as nobody.

usage: tests/guards/deploy.py [GAMBREL]     with the program, its options are asked of it; else read from the source
"""

import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
# Where systemd's judge counts from 0 (closed) to 10 (open). What is left is the network, which it is for.
MOST_EXPOSED = 1.5
wrong = []


def options(program):
    if program:
        said = subprocess.run([program, "serve", "--help"], capture_output=True, text=True, check=True).stdout
    else:
        source = (ROOT / "server/src/config.rs").read_text()
        names = re.findall(r"pub (\w+): ", source) + re.findall(r'long = "(\w+)"', source)
        said = " ".join("--" + name.replace("_", "-") for name in names)
    return set(re.findall(r"--[a-z-]+", said))


def held(line, known, where):
    for option in re.findall(r"--[a-z-]+", line):
        if option not in known:
            wrong.append(f"{where}: {option} is no option of `gambrel serve`")


def unit(known):
    path = ROOT / "deploy/gambrel.service"
    text = path.read_text()
    start = re.search(r"^ExecStart=(.*)$", text, re.M).group(1)
    held(start, known, path.name)
    for needed in ["DynamicUser=yes", "StateDirectory=gambrel", "LimitNOFILE=", "TasksMax=", "MemoryMax=", "Restart=on-failure"]:
        if needed not in text:
            wrong.append(f"{path.name}: {needed} is missing")
    if not shutil.which("systemd-analyze"):
        print("systemd-analyze is not here: the unit was only read")
        return
    with tempfile.TemporaryDirectory() as folder:
        # The program is not installed here; everything else is judged as it stands.
        copy = pathlib.Path(folder) / path.name
        copy.write_text(text.replace("/usr/local/bin/gambrel", "/bin/true"))
        said = subprocess.run(["systemd-analyze", "verify", copy], capture_output=True, text=True)
        if said.returncode or said.stderr.strip():
            wrong.append(f"{path.name}: {said.stderr.strip()}")
        command = ["systemd-analyze", "security", "--offline=yes", "--no-pager", copy]
        said = subprocess.run(command, capture_output=True, text=True).stdout
        found = re.search(r"exposure level for \S+: ([\d.]+)", said)
        if not found or float(found.group(1)) > MOST_EXPOSED:
            wrong.append(f"{path.name}: systemd finds it open: {found.group(1) if found else said}")
        else:
            print(f"{path.name}: exposure {found.group(1)}")


def container(known):
    path = ROOT / "deploy/Containerfile"
    lines = [line for line in path.read_text().splitlines() if line and not line.startswith("#")]
    stages, last = {}, {}
    for line in lines:
        word, rest = line.split(" ", 1)
        if word == "FROM":
            image, _, name = rest.partition(" AS ")
            stages[name or "last"] = image
            last = {}
            if ":" not in image or image.endswith(":latest"):
                wrong.append(f"{path.name}: {image} names no version")
        elif word == "COPY" and "--from=" in rest:
            if re.search(r"--from=(\w+)", rest).group(1) not in stages:
                wrong.append(f"{path.name}: {rest} copies from no stage")
        elif word == "RUN" and "cargo build" in rest:
            features = (ROOT / "server/Cargo.toml").read_text()
            for feature in re.findall(r"--features (\S+)", rest):
                if not re.search(rf"^{feature} = ", features, re.M):
                    wrong.append(f"{path.name}: no feature {feature}")
        last[word] = rest
    releases = {re.search(r"bookworm|trixie", image).group(0) for image in stages.values()}
    if len(releases) != 1:
        wrong.append(f"{path.name}: built on another release than it runs on: {releases}")
    if last.get("USER", "root").split(":")[0] in ("root", "0"):
        wrong.append(f"{path.name}: it runs as root")
    if "VOLUME" not in last:
        wrong.append(f"{path.name}: the record lies in no volume")
    held(last.get("ENTRYPOINT", ""), known, path.name)


known = options(sys.argv[1] if len(sys.argv) > 1 else None)
unit(known)
container(known)
print("\n".join(wrong) or "deploy: as it says")
sys.exit(1 if wrong else 0)
