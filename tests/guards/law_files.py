#!/usr/bin/env python3
"""Every file of the law is valid under its published JSON Schema, by a validator that is not ours."""

import json
import pathlib
import sys

from jsonschema import Draft202012Validator

LAW = pathlib.Path(__file__).resolve().parents[2] / "schema" / "law"


def main():
    files = 0
    for path in sorted(LAW.glob("data/**/*.json")):
        if path.stem == "sources":
            continue
        schema = json.loads((LAW / "schema" / (path.stem + ".schema.json")).read_text(encoding="utf-8"))
        Draft202012Validator.check_schema(schema)
        found = list(Draft202012Validator(schema).iter_errors(json.loads(path.read_text(encoding="utf-8"))))
        if found:
            sys.exit("%s: %s" % (path, found[0].message))
        files += 1
    print(files)


if __name__ == "__main__":
    main()
