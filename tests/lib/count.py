#!/usr/bin/env python3
"""Counts what `meson test` ran in some build folders: every case of every test program.

Prints `N passed, N failed` alone on the last line; the exit status is 0 only when something ran and
nothing failed. A program that did not end well counts as one failure, even when all of its cases did.
What the failed ones said stands before it, since of a long run often only the end is kept.
"""
import json
import pathlib
import re
import sys

CASE = re.compile(r"^(not )?ok\b(?P<rest>.*)$")
SKIPPED = re.compile(r"#\s*(SKIP|TODO)", re.IGNORECASE)
AGAIN = re.compile(r"^ok\b.*\(second try\)$")
LINES_SAID = 40


def count_cases(text):
    """Cases of one TAP text: passed, failed, skipped. Nested ones (indented) are left to their sum."""
    passed = failed = skipped = 0
    for line in text.splitlines():
        case = CASE.match(line)
        if not case:
            continue
        if SKIPPED.search(case["rest"]):
            skipped += 1
        elif case[1]:
            failed += 1
        else:
            passed += 1
    return passed, failed, skipped


def said_of_failed(text):
    """The lines of each case that failed, and what was said of it."""
    said, failed = [], False
    for line in text.splitlines():
        case = CASE.match(line)
        if case:
            failed = bool(case[1]) and not SKIPPED.search(case["rest"])
        if failed:
            said.append(line)
    return said


def tell_failed(entry):
    """Prints what a program that failed said, the failed cases' words if there are any."""
    said = said_of_failed(entry.get("stdout", ""))
    if not said:
        said = (entry.get("stdout", "") + entry.get("stderr", "")).splitlines()[-LINES_SAID:]
    for line in said[:3 * LINES_SAID]:
        print("   ", line)


def count_program(entry):
    """The same of one line of meson's testlog.json."""
    good = entry["result"] in ("OK", "EXPECTEDFAIL", "SKIP")
    passed, failed, skipped = count_cases(entry.get("stdout", ""))
    if passed + failed + skipped == 0:
        if entry["result"] == "SKIP":
            return 0, 0, 1
        return (1, 0, 0) if good else (0, 1, 0)
    if not good and failed == 0:
        failed = 1
    return passed, failed, skipped


def main(folders):
    totals = [0, 0, 0]
    for folder in folders:
        log = pathlib.Path(folder) / "meson-logs" / "testlog.json"
        if not log.is_file():
            print(f"{folder}: no tests ran")
            totals[1] += 1
            continue
        here = [0, 0, 0]
        for line in log.read_text(encoding="utf-8", errors="replace").splitlines():
            entry = json.loads(line)
            counted = count_program(entry)
            here = [a + b for a, b in zip(here, counted)]
            if counted[1]:
                print(f"{folder}: {entry['name']}: {counted[1]} failed ({entry['result']})")
                tell_failed(entry)
            for case in filter(AGAIN.match, entry.get("stdout", "").splitlines()):
                print(f"{folder}: {entry['name']}: {case}")
        print(f"{folder}: {here[0]} passed, {here[1]} failed, {here[2]} skipped")
        totals = [a + b for a, b in zip(totals, here)]
    if totals[2]:
        print(f"{totals[2]} skipped")
    print(f"{totals[0]} passed, {totals[1]} failed")
    return 0 if totals[1] == 0 and totals[0] > 0 else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
