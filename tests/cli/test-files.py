#!/usr/bin/env python3
"""Bad input and places that cannot be written: clear sentences, the right status, nothing lost."""
import os
import resource
import signal
import subprocess
import sys

import tap
from program import BLOCK, GARDEN, NAMESPACE, PROGRAM, STREET, VERBS, Folder, call, project, result
from tap import contains, equal

GOOD = project(STREET, GARDEN)
OPENING = '<opening id="o7" name="W7" kind="window" x="{}" width="1200" sill="900" height="1200"/>'
WALL = '<wall id="w7" name="Long" block="b1" length="6000" height="2500">{}</wall>'

# Name, the file, the line that the message must name (None: none is known), a word of the reason.
BAD = [
    ("empty", "", None, ""),
    ("no-xml", "length 600\n", 1, ""),
    ("truncated", GOOD[: len(GOOD) // 2], None, ""),
    ("binary", bytes(range(256)) * 20, None, ""),
    ("other-root", "<?xml version='1.0'?>\n\n<house/>\n", 3, "house"),
    ("other-namespace", GOOD.replace(NAMESPACE, "urn:example:other"), 2, ""),
    ("unknown-element", project("<roof/>"), 4, "roof"),
    ("unknown-attribute", project(WALL.format("").replace("length=", 'colour="red" length=')), 4, "colour"),
    ("no-number", project(WALL.format("").replace("6000", "six metres")), 4, "six metres"),
    ("exponent", project(WALL.format("").replace("6000", "6e3")), 4, "6e3"),
    ("opening-leaves-wall", project(WALL.format(OPENING.format("5000"))), 4, "W7"),
    ("openings-overlap", project(WALL.format(OPENING.format("500") + OPENING.format("900").replace("o7", "o8"))), 4, ""),
    ("unit-of-no-length", project(blocks=BLOCK.replace("600", "0")), 3, ""),
    ("joint-longer-than-allowed", project(WALL.format('<laying head="700"/>')), 4, ""),
    ("id-used-twice", project(WALL.format(""), WALL.format("")), 5, "w7"),
    ("no-such-block", project(WALL.format("").replace('block="b1"', 'block="b9"')), 4, "b9"),
    ("document-type", '<!DOCTYPE project [<!ENTITY a "x">]>\n' + GOOD.split("\n", 1)[1], None, ""),
    ("expanding-entities",
     '<!DOCTYPE p [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;">]>\n'
     + GOOD.split("\n", 1)[1].replace("Trial", "&c;"), None, ""),
    ("outside-entity",
     '<!DOCTYPE p [<!ENTITY a SYSTEM "file:///etc/hostname">]>\n'
     + GOOD.split("\n", 1)[1].replace("Trial", "&a;"), None, ""),
    ("too-deep", project("<x:a xmlns:x='urn:x'>" + "<x:a>" * 5000 + "</x:a>" * 5000 + "</x:a>"), None, ""),
]


def is_refused(text, line, reason):
    with Folder() as folder:
        path = folder.file(text)
        code, out, err = call("lay", path, "--json")
        equal(code, 3, f"exit status ({err!r})")
        equal(out, "", "standard output")
        contains(err, f"{path}:{line}:" if line else path, "place")
        contains(err, reason, "reason")
        equal(err.count("\n"), 1, "lines of the message")


for name, text, line, reason in BAD:
    tap.case(f"/file/refused/{name}", text, line, reason)(is_refused)


def is_absent(verb, name):
    """Every verb that reads a project says so in the same way."""
    more = {"advise": ["--opening", "o1"], "sheet": ["--kind", "client", "-o", "x.pdf"],
            "export": ["--to", "svg", "-o", "x.svg"]}.get(verb, [])
    with Folder() as folder:
        os.mkdir(folder.path("folder"))
        code, out, err = call(verb, folder.path(name), *more, cwd=folder.name)
        equal((code, out), (3, ""))
        contains(err, folder.path(name), "message")
        equal(os.listdir(folder.name), ["folder"], "files")


for verb in VERBS:
    if verb != "cut":
        tap.case(f"/file/absent/{verb}", verb, "gone.halfbond")(is_absent)
        tap.case(f"/file/is-a-folder/{verb}", verb, "folder")(is_absent)


# Lines of standard input of `cut --stock 600`, the line at fault, a word of the reason.
LISTS = [
    ("one-word", "300 2\n400\n", 2, "LENGTH"),
    ("three-words", "300 2 x\n", 1, "LENGTH"),
    ("no-length", "long 2\n", 1, "long"),
    ("no-quantity", "300 some\n", 1, "some"),
    ("part-of-a-piece", "300 1.5\n", 1, "1.5"),
    ("negative-quantity", "300 -1\n", 1, "-1"),
    ("too-long", "300 1\n\n601 1\n", 3, "600"),
    ("nothing-long", "0 4\n", 1, "0"),
    ("negative-length", "-5 4\n", 1, "-5"),
    ("endless-line", "3" * 1000, 1, "too long"),
]


def list_is_refused(text, line, reason):
    code, out, err = call("cut", "--stock", "600", stdin=text)
    equal((code, out), (3, ""), err)
    contains(err, f":{line}: ", "place")
    contains(err, reason, "reason")


for name, text, line, reason in LISTS:
    tap.case(f"/list/refused/{name}", text, line, reason)(list_is_refused)


@tap.case("/write/full-device-on-standard-output")
def full_device():
    with Folder() as folder, open("/dev/full", "w", encoding="utf-8") as full:
        path = folder.file(GOOD)
        done = subprocess.run([PROGRAM, "lay", path, "--json"], stdout=full, stderr=subprocess.PIPE,
                              encoding="utf-8", check=False)
        equal(done.returncode, 4, "exit status")
        contains(done.stderr, "standard output", "message")


def not_written(where):
    with Folder() as folder:
        path = folder.file(GOOD)
        os.mkdir(folder.path("folder"))
        code, out, err = call("lay", path, "-o", folder.path(where))
        equal((code, out), (4, ""), err)
        contains(err, folder.path(where), "message")
        equal(sorted(os.listdir(folder.name)), ["folder", "trial.halfbond"], "files")


tap.case("/write/folder-gone", "gone/out.txt")(not_written)
tap.case("/write/is-a-folder", "folder")(not_written)


def no_space():
    """As on a full disk: no file may grow beyond a few bytes."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))


@tap.case("/write/disk-full-keeps-the-older-file")
def disk_full():
    with Folder() as folder:
        path, older = folder.file(GOOD), folder.file("older\n", "out.json")
        code, _, err = call("lay", path, "--json", "-o", older, preexec_fn=no_space)
        equal(code, 4, f"exit status ({err!r})")
        contains(err, older, "message")
        with open(older, encoding="utf-8") as file:
            equal(file.read(), "older\n", "the older file")
        equal(sorted(os.listdir(folder.name)), ["out.json", "trial.halfbond"], "files left behind")


@tap.case("/write/never-over-the-project")
def never_over_the_project():
    with Folder() as folder:
        path = folder.file(GOOD)
        os.symlink(path, folder.path("other-name"))
        for target in (path, folder.path("other-name")):
            code, _, err = call("lay", path, "--json", "-o", target)
            equal(code, 2, "exit status")
            contains(err, "project itself", "message")
        with open(path, encoding="utf-8") as file:
            equal(file.read(), GOOD, "the project")


@tap.case("/write/replaces-an-older-file")
def replaces():
    with Folder() as folder:
        path, older = folder.file(GOOD), folder.file("older\n", "out.json")
        code, out, err = call("takeoff", path, "--json", "-o", older)
        equal((code, out, err), (0, "", ""))
        _, expected, _ = call("takeoff", path, "--json")
        with open(older, encoding="utf-8") as file:
            equal(file.read(), expected, "the file")


@tap.case("/file/foreign-content-is-read-past")
def foreign():
    with Folder() as folder:
        text = GOOD.replace('title="Trial"', 'title="Trial" xmlns:x="urn:x" x:colour="red"')
        equal(result("lay", folder.file(text))["walls"], result("lay", folder.file(GOOD, "b.halfbond"))["walls"])


if __name__ == "__main__":
    sys.exit(tap.main())
