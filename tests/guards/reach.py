#!/usr/bin/env python3
"""What the core knows, a user must reach: public functions of the core that nothing outside it calls.

Names only, which is enough: a function is reached if its name stands outside the core (tests left out), or in
a function of the core that is reached. Those that are not are listed in unreached.txt; the list may only shrink.
"""

import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CORE = ROOT / "schema/domain/src"
OUTSIDE = ["schema/store/src", "schema/law/src", "server/src", "server/labels/src", "server/words/src"]
LIST = Path(__file__).with_name("unreached.txt")

COMMENT = re.compile(r"//[^\n]*|/\*.*?\*/", re.S)
STRING = re.compile(r'r#*".*?"#*|"(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])\'', re.S)
TESTS = re.compile(r"#\[cfg\(test\)\]\s*(?:pub\s*)?mod\s+\w+\s*\{")
FUNCTION = re.compile(r"(pub(?:\([^)]*\))?\s+)?(?:const\s+|async\s+|unsafe\s+)*fn\s+(\w+)")
NAME = re.compile(r"\b[a-z_][a-z0-9_]*\b")


def closing(text, at):
    """The place behind the bracket that closes the one at `at`."""
    depth = 0
    for place in range(at, len(text)):
        depth += {"{": 1, "}": -1}.get(text[place], 0)
        if depth == 0:
            return place + 1
    return len(text)


def bare(path):
    """A file's code without comments, strings and tests."""
    text = STRING.sub('""', COMMENT.sub("", path.read_text(encoding="utf-8")))
    while found := TESTS.search(text):
        text = text[: found.start()] + text[closing(text, found.end() - 1) :]
    return text


def is_test(path):
    return path.stem == "tests" or "tests" in path.parts[len(ROOT.parts) :]


def functions(path):
    """Every function of a file: where it stands, whether it is public, the names in its body."""
    text = bare(path)
    for found in FUNCTION.finditer(text):
        opens = re.compile(r"[{;]").search(text, found.end())
        if opens is None or opens.group() == ";":
            continue
        names = set(NAME.findall(text[opens.start() : closing(text, opens.start())]))
        yield found.group(2), (found.group(1) or "").strip() == "pub", names


def main():
    files = [path for path in sorted(CORE.rglob("*.rs")) if not is_test(path)]
    public, calls = {}, {}
    for path in files:
        for name, is_public, names in functions(path):
            calls.setdefault(name, set()).update(names - {name})
            if is_public:
                public.setdefault(name, path.relative_to(ROOT))
    reached = set()
    # What code outside names, and what the language calls by itself.
    open_ends = {"from", "into", "fmt", "eq", "cmp", "partial_cmp", "hash", "default", "deref", "next", "from_str", "drop"}
    for folder in OUTSIDE:
        for path in (ROOT / folder).rglob("*.rs"):
            if not is_test(path):
                open_ends |= set(NAME.findall(bare(path)))
    while open_ends:
        name = open_ends.pop()
        if name in calls and name not in reached:
            reached.add(name)
            open_ends |= calls[name] - reached
    unreached = {f"{path}: {name}" for name, path in public.items() if name not in reached}
    lines = LIST.read_text(encoding="utf-8").splitlines() if LIST.exists() else []
    known = {line for line in lines if line and not line.startswith("#")}
    for line in sorted(unreached - known):
        print(f"nothing outside the core reaches it: {line}")
    for line in sorted(known - unreached):
        print(f"reached or gone, take it off {LIST.name}: {line}")
    return 1 if unreached != known else 0


if __name__ == "__main__":
    sys.exit(main())
