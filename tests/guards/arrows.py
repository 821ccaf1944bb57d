#!/usr/bin/env python3
"""The arrows between the crates run one way, and each crate leans only on what is listed here.

    server -> store -> domain        server -> labels -> domain        server -> law -> domain

Inside the server the pages do not lean on the wire.

A new dependency is a decision: add it to the list below with the change that needs it.
"""

import json
import os
import re
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))

# All that the domain pulls in when it is built alone: calendar arithmetic and the
# table of time zones, nothing that reads, writes, draws or knows a wire format.
DOMAIN_TREE = {
    "domain",
    "chrono", "num-traits", "autocfg",
    "chrono-tz", "phf", "phf_shared", "siphasher",
    # Exact decimals: a limit that is met exactly is met.
    "rust_decimal", "arrayvec",
}
# Named apart for a plain message; the list above refuses them anyway.
DOMAIN_NEVER = ("serde", "diesel", "actix", "rand", "getrandom")
# Features of chrono that read the clock of the machine.
CHRONO_CLOCK = {"clock", "now", "iana-time-zone", "wasmbind"}

# Direct dependencies (normal and build), where the list is closed.
DIRECT = {
    "store": {
        "chrono", "diesel", "diesel_migrations", "domain", "libsqlite3-sys", "openssl-sys", "serde_json",
        "pq-sys", "rusqlite", "sha2", "thiserror",
    },
    "law": {"chrono", "domain", "rust_decimal", "schemars", "serde", "serde_json"},
    "labels": {
        "allsorts-azul", "barcoders", "domain", "flate2", "png", "printpdf", "qrcode", "schemars",
        "serde", "serde_json", "thiserror", "zeno",
    },
}
# The shell asks the store; it speaks no SQL itself.
SERVER_NEVER = ("diesel", "libsqlite3-sys", "pq-sys", "rusqlite", "postgres", "tokio-postgres", "sqlx")

# Which crates of the workspace may name which (any kind of dependency).
INSIDE = {
    "domain": set(),
    # Its tests read what the core says in English.
    "law": {"domain", "words"},
    "store": {"domain"},
    "labels": {"domain"},
    "words": {"domain"},
    "gambrel": {"domain", "law", "store", "labels", "words"},
    "stories": {"domain", "law", "store", "labels", "gambrel", "words"},
}

# What may not be anywhere below a crate.
BELOW_NEVER = {
    "law": ("actix", "diesel", "store", "labels", "gambrel", "printpdf"),
    "store": ("actix", "labels", "gambrel", "printpdf"),
    "labels": ("actix", "diesel", "store", "gambrel", "libsqlite3-sys", "pq-sys"),
}

# Inside the server: which of its rooms may not name which. Pages read what is told, as the API does;
# they do not read the API's answers.
ROOMS_NEVER = {
    "server/src/pages": ("wire",),
}


def cargo(*arguments):
    run = subprocess.run(
        [os.environ.get("CARGO", "cargo"), *arguments], cwd=ROOT, text=True, stdout=subprocess.PIPE
    )
    if run.returncode:
        sys.exit("arrows: `cargo %s` failed" % " ".join(arguments))
    return run.stdout


def tree(package, kinds="normal"):
    """Name -> features of everything below a package that is built alone."""
    found = {}
    for line in cargo("tree", "-p", package, "-e", kinds, "--prefix", "none", "-f", "{p}|{f}").splitlines():
        if not line.strip():
            continue
        left, _, right = line.replace(" (*)", "").partition("|")
        features = {feature for feature in right.strip().split(",") if feature}
        found.setdefault(left.split()[0], set()).update(features)
    return found


def is_one_of(name, families):
    """`actix` stands for actix, actix-web, actix_rt ...; so does every other name."""
    return any(name == f or name.startswith((f + "-", f + "_")) for f in families)


def main():
    broken = []
    packages = {p["name"]: p for p in json.loads(cargo("metadata", "--no-deps", "--format-version", "1"))["packages"]}
    manifest = {n: os.path.relpath(p["manifest_path"], ROOT) for n, p in packages.items()}

    for name in sorted(set(packages) ^ set(INSIDE)):
        broken.append("the workspace and tests/guards/arrows.py disagree about the crate `%s`" % name)

    for name, package in sorted(packages.items()):
        for dependency in package["dependencies"]:
            other, kind = dependency["name"], dependency["kind"] or "normal"
            where = "%s [%s]" % (manifest[name], kind)
            if other in packages and other not in INSIDE.get(name, set()) | {name}:
                why = "only `stories` may use the server" if other == "gambrel" else "the arrow runs the wrong way"
                broken.append("%s: `%s` may not depend on `%s`: %s" % (where, name, other, why))
                continue
            if kind == "dev":
                continue
            if name in DIRECT and other not in DIRECT[name]:
                broken.append("%s: `%s` is not in the list of what `%s` may use directly" % (where, other, name))
            if name == "gambrel" and is_one_of(other, SERVER_NEVER):
                broken.append("%s: the server uses `%s` directly; only `store` talks to a database" % (where, other))

    broken += rooms()

    # A wrong arrow may close a circle, and cargo draws no tree of that.
    if not broken:
        broken = trees(packages, manifest)

    for line in broken:
        print("arrows: " + line)
    print("arrows: %s" % ("%d broken" % len(broken) if broken else "kept"))
    return 1 if broken else 0


def rooms():
    """The imports and paths of a room of the server that lead where they may not."""
    broken = []
    for room, never in sorted(ROOMS_NEVER.items()):
        # `crate::wire`, `crate::{read, wire}`, and the same by way of `super`.
        way = re.compile(r"\b(?:crate|super)::(?:\{[^;]*?\b)?(%s)\b" % "|".join(never))
        for folder, _, files in sorted(os.walk(os.path.join(ROOT, room))):
            for name in sorted(f for f in files if f.endswith(".rs")):
                path = os.path.join(folder, name)
                with open(path, encoding="utf-8") as file:
                    code = re.sub(r"(?m)(?<!:)//.*$", "", file.read())
                for hit in way.finditer(code):
                    line = code.count("\n", 0, hit.start(1)) + 1
                    why = "`%s` may not name `%s`" % (room, hit.group(1))
                    broken.append("%s:%d: %s" % (os.path.relpath(path, ROOT), line, why))
    return broken


def trees(packages, manifest):
    broken = []
    if "domain" in packages:
        below = tree("domain", "normal,build")
        for name in sorted(set(below) - DOMAIN_TREE):
            why = "the domain is pure" if is_one_of(name, DOMAIN_NEVER) else "not in its list"
            broken.append("%s: `%s` is below `domain` when it is built alone: %s" % (manifest["domain"], name, why))
        for feature in sorted(below.get("chrono", set()) & CHRONO_CLOCK):
            broken.append("%s: chrono's feature `%s` is on in `domain`: the domain has no clock" % (manifest["domain"], feature))
    for package, families in BELOW_NEVER.items():
        if package in packages:
            for name in sorted(n for n in tree(package) if is_one_of(n, families)):
                broken.append("%s: `%s` must not see `%s`" % (manifest[package], package, name))
    return broken


sys.exit(main())
