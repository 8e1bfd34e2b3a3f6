"""bench-drag.py - frames while an opening of a wall of 250 pieces is dragged

Usage: bench-drag.py PRELOAD HALFBOND BUILDING. The window in the middle is pulled to and fro by a
real pointer, with the strip that tells what each place costs being worked out meanwhile, and without
that; then one in the front of the house of 24 walls and one of the 1,000 walls that BUILDING writes.
They take turns. Prints tab-separated rows: what, frames, then of the intervals from frame to
frame and of the work of a frame: median ms, 95 of 100, slowest ms. Needs Xvfb, openbox, xdotool.
"""
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / 'lib'))
sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1] / 'app'))
import desk  # noqa: E402

desk.inside_bus()

from desk import Program, Screen  # noqa: E402

ROUNDS = 3
STEPS = 500         # of the pointer in a round, two pixels each
PAUSE = 0.008       # s between them: more often than frames are shown
REACH = 50          # px to either side

# The wall of bench-lay.c.
WALL = """<?xml version="1.0" encoding="UTF-8"?>
<project xmlns="urn:halfbond:project:1" title="Drag">
  <block id="k1" name="Large block" length="600" height="200" thickness="250" density="500"/>
  <wall id="w1" name="Long" block="k1" length="12130" height="2849">
    <end side="left" return="250" through="even"/>
    <opening id="a1" name="W1" kind="window" x="1810" width="1180" sill="903" height="1240"/>
    <opening id="b1" name="W2" kind="window" x="4935" width="1570" sill="1031" height="1110"/>
    <opening id="c1" name="D1" kind="door" x="8340" width="990" sill="0" height="2115"/>
  </wall>
</project>
"""


def path_of(x, y):
    """Words for xdotool: to the right, to the left, and back, again and again."""
    words, at, by = [], 0, 2
    for _ in range(STEPS):
        if abs(at + by) > REACH:
            by = -by
        at += by
        words += ['mousemove', x + at, y, 'sleep', PAUSE]
    return words


def dragged(program, frames, opening):
    """(interval, work) in ms of each frame while it was dragged."""
    x, y = program.middle(program.opening(opening))
    desk.run('xdotool', 'mousemove', x, y)
    program.settle()
    desk.run('xdotool', 'mousedown', 1, 'mousemove', x + 6, y)
    # The first frames show what is taken hold of.
    program.settle()
    began = time.clock_gettime_ns(time.CLOCK_MONOTONIC) // 1000
    desk.run('xdotool', *path_of(x, y))
    ended = time.clock_gettime_ns(time.CLOCK_MONOTONIC) // 1000
    desk.run('xdotool', 'mouseup', 1)
    rows = [[int(word) for word in line.split()] for line in frames.read_text().splitlines()]
    rows = [row for row in rows if began <= row[0] and row[1] <= ended]
    return ([(b[1] - a[1]) / 1000 for a, b in zip(rows, rows[1:])],
            [(row[1] - row[0]) / 1000 for row in rows])


def measure(preload, halfbond, folder, file, opening, without):
    frames = folder / 'frames'
    frames.unlink(missing_ok=True)
    os.environ.update(LD_PRELOAD=preload, FRAMES=str(frames), WITHOUT_THREAD=without)
    program = Program(halfbond, folder / file)
    with program:
        del os.environ['LD_PRELOAD']
        program.wait_cuts(lambda n: n >= 0)
        program.settle(2)
        return dragged(program, frames, opening)


def row(values):
    values = sorted(values)
    return (f'{statistics.median(values):.1f}\t{values[len(values) * 95 // 100]:.1f}'
            f'\t{values[-1]:.1f}')


def main():
    preload, halfbond, building = (os.path.abspath(path) for path in sys.argv[1:])
    cases = {'drag an opening with its strip': ('drag.halfbond', 'Window W2', ''),
             'drag an opening without': ('drag.halfbond', 'Window W2', 'places'),
             'drag one in a house of 24 walls': ('house.halfbond', 'Window W4', ''),
             'drag one in 1000 walls': ('many.halfbond', 'Door D1', '')}
    found = {what: ([], []) for what in cases}
    screen = Screen()
    try:
        with tempfile.TemporaryDirectory() as name:
            folder = pathlib.Path(name)
            (folder / 'drag.halfbond').write_text(WALL, encoding='utf-8')
            subprocess.run([building, 'write', folder / 'house.halfbond',
                            folder / 'many.halfbond'], check=True)
            for _ in range(ROUNDS):
                for what, case in cases.items():
                    intervals, work = measure(preload, halfbond, folder, *case)
                    found[what][0].extend(intervals)
                    found[what][1].extend(work)
    finally:
        screen.close()
    for what, (intervals, work) in found.items():
        print(f'{what}\t{len(work)}\t{row(intervals)}\t{row(work)}')


main()
