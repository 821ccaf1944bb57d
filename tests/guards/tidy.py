#!/usr/bin/env python3
"""House rules that a compiler does not check. Each finding says the rule, the file and the line."""

import os
import re
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
LONG_LIST = "tests/guards/long-files.txt"
MOST_LINES = 400

# The one file that owns the clock and the random numbers.
WORLD = "server/src/world.rs"
# A build script runs on the builder's machine: it tells the binary when it was built.
BUILDER = "server/build.rs"

CODE = (".rs", ".sql", ".py", ".sh", ".js", ".css", ".html", ".toml", ".yml", ".yaml", ".service")
UNFINISHED = [
    (re.compile(r"\b(?:TODO|FIXME)\b"), "no notes to oneself: do it, or open an issue"),
    (re.compile(r"\b(?:todo|unimplemented)!"), "nothing unfinished is checked in"),
    (re.compile(r"#!?\[(?:ignore\b|cfg_attr\([^\]]*\bignore\b)"), "no test is switched off"),
]
CLOCK = re.compile(
    r"\b(?:SystemTime|Instant|Utc|Local)::now\b|\bnew_v4\b|\bnow_v7\b|\bdsl::now\b|\bCURRENT_TIMESTAMP\b"
    r"|\brand::|\bgetrandom\b|\bOsRng\b|\bthread_rng\b|/dev/u?random\b"
)
# The lint that says the same may be switched off in that file and in tests.
LINT_OFF = re.compile(r"\bdisallowed_methods\b")
SQL_CLOCK = re.compile(r"\bCURRENT_(?:TIMESTAMP|DATE|TIME)\b|\bnow\s*\(\s*\)|'now'|\brandom\s*\(|\bgen_random_uuid\b", re.I)
# A folder of somebody's own machine. Not the tail of a longer path or address.
MACHINE = re.compile(r"(?<![\w.~})-])/(?:home|work|root)/")


def tracked():
    """All files that are, or would be, checked in."""
    if os.path.exists(os.path.join(ROOT, ".git")):
        run = subprocess.run(
            ["git", "-c", "safe.directory=*", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
            cwd=ROOT, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True,
        )
        if run.returncode == 0:
            return sorted(p for p in set(run.stdout.split("\0")) if p and os.path.isfile(os.path.join(ROOT, p)))
    found = []
    for folder, folders, files in os.walk(ROOT):
        folders[:] = [f for f in folders if f not in ("target", ".git", ".venv", ".work")]
        found += [os.path.relpath(os.path.join(folder, f), ROOT) for f in files]
    return sorted(found)


def is_test_file(path):
    parts = path.split("/")
    return bool({"tests", "benches"} & set(parts[:-1])) or parts[-1] in ("tests.rs", "benches.rs")


def without_tests_and_comments(text):
    """The same number of lines, with `#[cfg(test)] mod x { … }` and comments emptied."""
    def blank(match):
        return "\n" * match.group(0).count("\n")
    text = re.sub(r"(?ms)^([ \t]*)#\[cfg\(test\)\]\s*(?:#\[[^\]]*\]\s*)*(?:pub )?mod \w+ \{\n.*?^\1\}$", blank, text)
    return re.sub(r"(?m)(?<!:)//.*$", "", text)


def long_list():
    listed, broken = {}, []
    with open(os.path.join(ROOT, LONG_LIST), encoding="utf-8") as file:
        for number, line in enumerate(file, 1):
            if line.strip() and not line.startswith("#"):
                path, _, reason = line.partition(":")
                if not reason.strip():
                    broken.append("%s:%d: `%s` has no reason" % (LONG_LIST, number, path.strip()))
                listed[path.strip()] = number
    return listed, broken


def main():
    listed, broken = long_list()
    lengths = {}
    for path in tracked():
        with open(os.path.join(ROOT, path), "rb") as file:
            data = file.read()
        try:
            text = data.decode("utf-8")
        except UnicodeDecodeError:
            continue
        if "\0" in text:
            continue

        def find(pattern, rule, body):
            for number, line in enumerate(body.split("\n"), 1):
                for hit in pattern.finditer(line):
                    broken.append("%s:%d: `%s`: %s" % (path, number, hit.group(0), rule))

        if path != "Cargo.lock":
            find(MACHINE, "no folder of one machine in the repository", text)
        if path.endswith(CODE) and not path.startswith("tests/guards/"):
            for pattern, rule in UNFINISHED:
                find(pattern, rule, text)
        if path.endswith(".sql"):
            find(SQL_CLOCK, "time and random numbers come from %s, not from the database" % WORLD, re.sub(r"--.*", "", text))
        if not path.endswith(".rs"):
            continue

        first = text.split("\n", 1)[0]
        if not re.match(r"//!\s*\S", first):
            broken.append("%s:1: the first line must be `//! …` and say what the file is for" % path)
        lengths[path] = text.count("\n")
        if lengths[path] > MOST_LINES and path not in listed:
            broken.append("%s: %d lines; above %d only with a reason in %s" % (path, lengths[path], MOST_LINES, LONG_LIST))
        if path not in (WORLD, BUILDER) and not is_test_file(path):
            rule = "clock and random numbers are read in %s only" % WORLD
            code = without_tests_and_comments(text)
            find(CLOCK, rule, code)
            find(LINT_OFF, rule, code)

    for path, number in sorted(listed.items()):
        if lengths.get(path, 0) <= MOST_LINES:
            broken.append("%s:%d: `%s` has no more than %d lines: strike it off" % (LONG_LIST, number, path, MOST_LINES))

    for line in broken:
        print("tidy: " + line)
    print("tidy: %s" % ("%d broken" % len(broken) if broken else "clean (%d Rust files)" % len(lengths)))
    return 1 if broken else 0


sys.exit(main())
