#!/usr/bin/env python3
"""Checks the counting that decides whether the whole suite has passed."""
import json
import pathlib
import subprocess
import sys
import tempfile

COUNT = pathlib.Path(__file__).with_name("count.py")

# Name, rows of (result, stdout), last line, exit status.
CASES = [
    ("cases-are-summed", [("OK", "1..2\nok 1 /a\nok 2 /b\n"), ("OK", "ok 1 /c\n1..1\n")], "3 passed, 0 failed", 0),
    ("failed-case", [("FAIL", "1..2\nok 1 /a\nnot ok 2 /b\n")], "1 passed, 1 failed", 1),
    ("died-half-way", [("ERROR", "1..3\nok 1 /a\n")], "1 passed, 1 failed", 1),
    ("died-silently", [("FAIL", "")], "0 passed, 1 failed", 1),
    ("timed-out", [("TIMEOUT", "ok 1 /a\n")], "1 passed, 1 failed", 1),
    ("skipped-is-neither", [("OK", "ok 1 /a # SKIP no display\nok 2 /b\n")], "1 passed, 0 failed", 0),
    ("only-skipped-is-not-success", [("SKIP", "1..0 # SKIP no display\n")], "0 passed, 0 failed", 1),
    ("no-tests-is-not-success", [], "0 passed, 0 failed", 1),
    ("plain-program", [("OK", "done\n")], "1 passed, 0 failed", 0),
    ("indented-cases-left-to-their-sum", [("OK", "    ok 1 - inner\nok 1 - outer\n")], "1 passed, 0 failed", 0),
    ("no-log", None, "0 passed, 1 failed", 1),
]

# Name, the program's output, words that must be among what is printed, words that must not.
SAID = [
    ("failed-case-is-told", "ok 1 /a\n# fine\nnot ok 2 /b\n# waited for it\nok 3 /c\n", ["/b", "waited for it"], ["fine", "/c"]),
    ("end-of-a-dead-program-is-told", "ok 1 /a\nSegmentation fault\n", ["Segmentation fault"], []),
    ("second-tries-are-told", "ok 1 /a\nok 2 /b (second try)\nnot ok 3 /c\n", ["/b (second try)", "/c"], ["/a"]),
]


def printed(rows):
    with tempfile.TemporaryDirectory() as folder:
        logs = pathlib.Path(folder) / "meson-logs"
        logs.mkdir()
        if rows is not None:
            lines = [json.dumps({"name": "t", "result": r, "stdout": s}) for r, s in rows]
            (logs / "testlog.json").write_text("\n".join(lines))
        done = subprocess.run([sys.executable, COUNT, folder], capture_output=True, text=True, check=False)
        return done.stdout, done.returncode


def run(rows):
    text, status = printed(rows)
    return text.splitlines()[-1], status


def tells(output, words, others):
    text = printed([("FAIL", output)])[0]
    return all(word in text for word in words) and not any(word in text for word in others)


def main():
    print(f"1..{len(CASES) + len(SAID)}")
    bad = 0
    for number, (name, rows, last, status) in enumerate(CASES, 1):
        got = run(rows)
        good = got == (last, status)
        bad += not good
        print(f"{'ok' if good else 'not ok'} {number} /count/{name}")
        if not good:
            print(f"# expected {(last, status)}, got {got}")
    for number, (name, *rest) in enumerate(SAID, len(CASES) + 1):
        good = tells(*rest)
        bad += not good
        print(f"{'ok' if good else 'not ok'} {number} /count/{name}")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
