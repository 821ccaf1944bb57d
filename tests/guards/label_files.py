#!/usr/bin/env python3
"""Every label template and sheet is valid under its published JSON Schema, by a validator that is not ours."""

import json
import pathlib
import sys

from jsonschema import Draft202012Validator

LABELS = pathlib.Path(__file__).resolve().parents[2] / "label-templates"


def main():
    files = 0
    for folder, name in ((LABELS, "template"), (LABELS / "sheets", "sheet")):
        schema = json.loads((LABELS / (name + ".schema.json")).read_text(encoding="utf-8"))
        Draft202012Validator.check_schema(schema)
        for path in sorted(folder.glob("*.json")):
            if path.name.endswith(".schema.json"):
                continue
            found = list(Draft202012Validator(schema).iter_errors(json.loads(path.read_text(encoding="utf-8"))))
            if found:
                sys.exit("%s: %s" % (path, found[0].message))
            files += 1
    print(files)


if __name__ == "__main__":
    main()
