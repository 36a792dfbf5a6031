"""What programs that are not ours make of the mail, the table and the backup.

`outside.py mail FILE`, `outside.py csv FILE`, `outside.py backup SCHEMA FILE`:
prints what was read as JSON, or fails. Python's `email` and `csv` modules; the
PyPI package jsonschema for JSON Schema draft 2020-12.
"""

import csv
import email
import email.policy
import hashlib
import json
import sys


def mail(path):
    with open(path, "rb") as file:
        message = email.message_from_binary_file(file, policy=email.policy.default)
    parts = list(message.walk())
    defects = [str(d) for part in parts for d in part.defects]
    text = message.get_body(("plain",)).get_content()
    return {
        "defects": defects,
        "subject": message["Subject"],
        "date": message["Date"].datetime.isoformat(),
        "text": text.replace("\r\n", "\n"),
        "files": [
            {
                "name": part.get_filename(),
                "type": part.get_content_type(),
                "sha256": hashlib.sha256(part.get_content()).hexdigest()
                if part.get_content_maintype() != "text"
                else None,
            }
            for part in message.iter_attachments()
        ],
    }


def table(path):
    with open(path, newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file, strict=True))
    for row in rows:
        assert None not in row and None not in row.values(), row
        if row["value"]:
            float(row["value"])
            float(row["si"])
    return rows


def backup(schema, path):
    import jsonschema

    with open(schema, encoding="utf-8") as file:
        rules = json.load(file)
    jsonschema.Draft202012Validator.check_schema(rules)
    with open(path, encoding="utf-8") as file:
        found = jsonschema.Draft202012Validator(rules).iter_errors(json.load(file))
        return [error.json_path for error in found]


print(json.dumps({"mail": mail, "csv": table, "backup": backup}[sys.argv[1]](*sys.argv[2:])))
