#!/usr/bin/env python3
"""The JSON Schemas of trees/schema agree with the loader about structure.

Sound files (trees/, tests/golden/good) must pass. A file of tests/golden/bad says on its first lines what the loader finds in
it (tests/core/load_golden_test.cpp holds the loader to that): where that is a fault of structure the schema must refuse
the file, where it is one that no schema can see (a name that does not exist, a number out of order) it must pass.
"""
import json
import pathlib
import sys

import jsonschema
import yaml

SORTS = {"kind": "kind", "condition": "kind", "appliance": "appliance", "tree": "tree"}
# what the loader says of a file, and what the schema must make of it
REFUSED = {"unknown-format", "wrong-shape", "unknown-key", "unknown-word", "bad-id", "repeated", "no-otherwise", "missing-key",
           "not-a-quantity"}
PASSES = {
    "no-basis", "nothing-to-compare", "reversed", "unknown-kind", "unknown-terminal", "unknown-path", "unknown-mode",
    "unknown-test", "unknown-component", "unknown-place", "unknown-ask", "unknown-answer", "unknown-position", "unknown-rung",
    "unknown-rail", "unknown-suspect", "unknown-step", "unknown-reading", "unknown-appliance", "not-a-contact", "loose-point",
    "loose-end", "no-rating", "circular-place", "reading-without-branch", "wrong-cure", "behind-cover", "words-against-power",
    "never-used", "duplicate-id",
}
# no schema sees that these need what stands elsewhere in the file
BLIND = {
    "anchor.yaml", "bad_id_path.yaml", "bad_id_point.yaml", "missing_key_cases.yaml", "missing_rails.yaml", "repeated.yaml",
    "unknown_answer_rails.yaml", "unknown_word_with.yaml",
}


def text_of(key):
    return str(key).lower() if isinstance(key, bool) else str(key)  # `false:` is one of our keys


def with_text_keys(value):
    if isinstance(value, dict):
        return {text_of(key): with_text_keys(item) for key, item in value.items()}
    if isinstance(value, list):
        return [with_text_keys(item) for item in value]
    return value


def first_fault(file, schemas):
    """None: passes, or is no file that a schema is for. Else the message."""
    try:
        content = with_text_keys(yaml.safe_load(file.read_text(encoding="utf-8")))
    except (yaml.YAMLError, UnicodeDecodeError, ValueError) as fault:
        return f"no YAML: {str(fault).splitlines()[0]}"
    sort = next((SORTS[key] for key in SORTS if isinstance(content, dict) and key in content), None)
    if sort is None:
        return None
    fault = jsonschema.exceptions.best_match(schemas[sort].iter_errors(content))
    return None if fault is None else f"{'/'.join(map(str, fault.path))}: {fault.message}"[:200]


def slugs_of(file):
    lines = file.read_bytes().decode("utf-8", "replace").splitlines()
    return {line.split()[2] for line in lines if line.startswith("#! ")}


def check_sound(folder, schemas):
    for file in sorted(folder.rglob("*.yaml")):
        fault = first_fault(file, schemas)
        if fault is not None:
            yield f"{file}:1: sound for the loader, refused by the schema: {fault}"


def check_bad(folder, schemas):
    refused = passed = 0
    for file in sorted(folder.glob("*.yaml")):
        slugs = slugs_of(file)
        fault = first_fault(file, schemas)
        if slugs & REFUSED and file.name not in BLIND:
            refused += 1
            if fault is None:
                yield f"{file}:1: {', '.join(sorted(slugs & REFUSED))} for the loader, sound for the schema"
        elif slugs and slugs <= PASSES:
            passed += 1
            if fault is not None:
                yield f"{file}:1: only {', '.join(sorted(slugs))} for the loader, refused by the schema: {fault}"
    if refused < 25 or passed < 40:
        yield f"{folder}:1: too few files compared ({refused} refused, {passed} passed)"


def main():
    source = pathlib.Path(sys.argv[1])
    schemas = {}
    for name in sorted(set(SORTS.values())):
        schema = json.loads((source / "trees/schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft7Validator.check_schema(schema)
        schemas[name] = jsonschema.Draft7Validator(schema)
    faults = [
        *check_sound(source / "trees", schemas),
        *check_sound(source / "tests/golden/good", schemas),
        *check_bad(source / "tests/golden/bad", schemas),
    ]
    print("\n".join(faults), end="\n" if faults else "")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
