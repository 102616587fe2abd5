"""Checks lib/data/mission.schema.json against JSON Schema draft-07, the samples and the docs.

Usage: mission_schema.py CHECK, one of the functions named check_... below.
Source: JSON Schema draft-07 and its meta schema, through python3-jsonschema.
"""
import csv
import json
import pathlib
import re
import sys

import jsonschema

REPOSITORY = pathlib.Path(__file__).resolve().parents[3]
SAMPLES = REPOSITORY / "tests/checks/formats/mission"
PAGE = REPOSITORY / "docs/reference/mission-file.md"
SCHEMA = json.loads((REPOSITORY / "lib/data/mission.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft7Validator(SCHEMA)


class NotJson(Exception):
    pass


def refuse_constant(name):
    raise NotJson(name)


def without_doubles(pairs):
    fields = dict(pairs)
    if len(fields) != len(pairs):
        raise NotJson("a field stands twice")
    return fields


def read(path):
    """The document, or NotJson where RFC 8259 (or a doubled field) forbids it."""
    try:
        text = path.read_bytes().decode("utf-8")
        return json.loads(text, parse_constant=refuse_constant, object_pairs_hook=without_doubles)
    except ValueError as error:  # covers UnicodeDecodeError and JSONDecodeError
        raise NotJson(str(error)) from error


def resolved(schema):
    while True:
        if "$ref" in schema:
            schema = SCHEMA["definitions"][schema["$ref"].rsplit("/", 1)[1]]
        elif "allOf" in schema:
            schema = schema["allOf"][0]
        else:
            return schema


def fields_of(schema, path=""):
    """Every field of the schema as (object's path, name): ("search_units[]", "callsign")."""
    schema = resolved(schema)
    found = set()
    for name, part in schema.get("properties", {}).items():
        found.add((path, name))
        below = f"{path}.{name}" if path else name
        part = resolved(part)
        if part.get("type") == "array":
            part, below = part["items"], below + "[]"
        found |= fields_of(part, below)
    return found


def fields_used(value, path=""):
    found = set()
    for name, part in value.items() if isinstance(value, dict) else []:
        found.add((path, name))
        below = f"{path}.{name}" if path else name
        for item in part if isinstance(part, list) else [part]:
            found |= fields_used(item, below + "[]" if isinstance(part, list) else below)
    return found


def check_meta_schema():
    jsonschema.Draft7Validator.check_schema(SCHEMA)
    if SCHEMA["$schema"] != "http://json-schema.org/draft-07/schema#":
        return ["the schema does not say that it is draft-07"]
    return []


def check_good_samples():
    faults = []
    used = set()
    demos = sorted((REPOSITORY / "demo-scenarios").glob("*/mission.json"))
    for path in sorted((SAMPLES / "good").glob("*.json")) + demos:
        document = read(path)
        used |= fields_used(document)
        for error in VALIDATOR.iter_errors(document):
            faults.append(f"{path.name}: /{'/'.join(map(str, error.path))}: {error.message}")
    for path, name in sorted(fields_of(SCHEMA) - used):
        faults.append(f"no good sample has the field {name} of '{path}'")
    return faults


def check_bad_samples():
    """The schema refuses every bad sample but those that are listed as beyond a schema."""
    lines = (SAMPLES / "bad/beyond_schema.txt").read_text("utf-8").splitlines()
    beyond = {line for line in lines if line and not line.startswith("#")}
    accepted = set()
    for path in (SAMPLES / "bad").glob("*.json"):
        try:
            if VALIDATOR.is_valid(read(path)):
                accepted.add(path.stem)
        except NotJson:
            pass
    return [f"{name}: the schema accepts it" for name in sorted(accepted - beyond)] + [
        f"{name}: listed as beyond the schema, but it refuses it" for name in sorted(beyond - accepted)
    ]


def check_search_objects():
    """The examples of search_object.kind are the objects of the built-in sweep width tables."""
    with open(REPOSITORY / "lib/data/sweep_objects.csv", encoding="utf-8") as table:
        rows = csv.DictReader(line for line in table if not line.startswith("#"))
        known = [row["search_object"] for row in rows]
    shown = SCHEMA["properties"]["search_object"]["properties"]["kind"]["examples"]
    return [] if shown == known else [f"the schema shows {shown}, the tables have {known}"]


def check_reference_page():
    """The page has a table row for each field of the schema, no other, and the full sample."""
    page = PAGE.read_text("utf-8")
    described = set()
    path = ""
    for line in page.splitlines():
        heading = re.match(r"#+ .*?(?:`([a-z_.\[\]]+)`)?$", line)
        row = re.match(r"\| `([$a-z_]+)` \|", line)
        if heading:
            path = heading.group(1) or ""
        elif row:
            described.add((path, row.group(1)))
    named = fields_of(SCHEMA)
    faults = [f"not in the page: {name} of '{path}'" for path, name in sorted(named - described)]
    faults += [f"not in the schema: {name} of '{path}'" for path, name in sorted(described - named)]
    full = (SAMPLES / "good/full.json").read_text("utf-8")
    if f"```json\n{full}```\n" not in page:
        faults.append("the example of the page is not good/full.json")
    return faults


def main():
    faults = globals()["check_" + sys.argv[1]]()
    for fault in faults:
        print(fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
