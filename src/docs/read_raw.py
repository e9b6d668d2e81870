"""Reads a Platenwire raw file: python3 read_raw.py FILE. Needs pandas; tomllib comes with Python 3.11."""
import hashlib
import sys

import pandas as pd

path = sys.argv[1]
data = open(path, "rb").read()
at = 0
head = []
for line in data.splitlines(keepends=True):
    if line.startswith((b"# check ", b"# closed ")):
        seal = line.decode().split("sha256=")[1].strip()
        assert hashlib.sha256(data[:at]).hexdigest() == seal, f"changed before byte {at}"
    elif line.startswith(b"#") and b"\nseq," not in data[:at]:
        head.append(line.decode()[2:] if len(line) > 2 else "\n")
    at += len(line)
rows = pd.read_csv(path, comment="#", keep_default_na=False, na_values={"value": [""]})
good = rows[(rows.quality == "ok") & (rows.channel != "event")]
print(len(rows), "rows, every seal agrees;", len(head), "lines of head")
print(good.groupby("channel").value.agg(["count", "min", "max"]).to_string())
