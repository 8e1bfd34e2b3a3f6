"""The program under test, and small projects to give it."""
import json
import os
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])
VERBS = ["lay", "takeoff", "work", "check", "level", "cut", "advise", "plan", "rod", "built", "sheet", "export"]
NAMESPACE = "urn:halfbond:project:1"

BLOCK = '<block id="b1" name="Large block" length="600" height="200" thickness="250" density="500"/>'
# The project of docs/file-format.md: openings off the grid, a return, steel.
STREET = """<wall id="w1" name="Street side" block="b1" length="8400" height="2649">
    <laying first-bed="25" bed="2" head="2" min-piece="150" min-lap="100" kerf="3" aim="fewest-cuts" start="left"/>
    <end side="left" return="250" through="even"/>
    <steel bars="2" diameter="6" every="4" under-sills="true" past="600" lap="300"/>
    <steel-row course="12"/>
    <opening id="o1" name="W1" kind="window" x="1800" width="1200" sill="1033" height="1200"/>
    <opening id="o2" name="D1" kind="door" x="5000" width="900" sill="0" height="2100"/>
  </wall>"""
GARDEN = '<wall id="w2" name="Garden “side” &lt;north&gt;" block="b1" length="6018" height="2040"/>'
# A pier of 100 mm, where no piece may be shorter than 150 mm: it cannot be laid within its rules.
NARROW = """<wall id="w3" name="Narrow" block="b1" length="3000" height="1200">
    <laying min-piece="150"/>
    <opening id="o3" name="V1" kind="void" x="100" width="800" sill="0" height="1000"/>
  </wall>"""

# Half bond that begins with a piece of 300 pinned on course 2, with two pins that cannot be met.
PINNED = """<wall id="w4" name="Pinned" block="b1" length="6018" height="1232">
    <pin course="2" x="0" length="300"/>
    <pin course="3" x="1204"/>
    <pin course="7" x="600"/>
    <pin course="3" x="1000" length="500"/>
  </wall>"""


def project(*walls, blocks=BLOCK):
    inside = "\n  ".join((blocks, *walls))
    return f'<?xml version="1.0" encoding="UTF-8"?>\n<project xmlns="{NAMESPACE}" title="Trial">\n  {inside}\n</project>\n'


class Folder(tempfile.TemporaryDirectory):
    """A folder of its own for one case, and a way to put files there."""

    def file(self, text, name="trial.halfbond"):
        path = os.path.join(self.name, name)
        with open(path, "wb") as out:
            out.write(text if isinstance(text, bytes) else text.encode())
        return path

    def path(self, name):
        return os.path.join(self.name, name)

    def __enter__(self):
        return self


def call(*words, stdin="", **more):
    """Runs the program: its exit status, standard output and standard error, as text."""
    done = subprocess.run([PROGRAM, *words], input=stdin, capture_output=True, encoding="utf-8",
                          timeout=100, check=False, **more)
    return done.returncode, done.stdout, done.stderr


def result(*words, status=0, **more):
    """The JSON that the program gives, when it ends with `status` and is silent beside."""
    code, out, err = call(*words, "--json", **more)
    if code != status or err:
        raise AssertionError(f"{words}: exit status {code}, standard error {err!r}")
    return json.loads(out)
