"""bench-start.py - the first frame of the program beside that of an empty window

Usage: bench-start.py PRELOAD EMPTY HALFBOND EXAMPLE BUILDING. Prints tab-separated rows: what,
rounds, median ms, slowest ms, median ms of processor; and the ratio of the medians. All take turns,
so that a busy machine is busy for all. The file of 1,000 walls, which BUILDING writes, is waited for
until its first wall is shown. Needs a display.
"""
import os
import statistics
import subprocess
import sys
import tempfile
import time

ROUNDS = 15


def first_frame(preload, command, home, **more):
    """ms, and ms of processor, until it is there."""
    environment = dict(os.environ, LD_PRELOAD=preload, HOME=home, XDG_CONFIG_HOME=home,
                       XDG_DATA_HOME=home, GSETTINGS_BACKEND='memory', **more,
                       BEGAN=str(time.clock_gettime_ns(time.CLOCK_MONOTONIC) // 1000))
    done = subprocess.run(command, env=environment, stdout=subprocess.PIPE, timeout=60, check=True)
    return tuple(float(word) for word in done.stdout.split()[-2:])


def main():
    preload, empty, halfbond, example, building = (os.path.abspath(path) for path in sys.argv[1:])
    with tempfile.TemporaryDirectory() as home:
        house, many = os.path.join(home, 'house.halfbond'), os.path.join(home, 'many.halfbond')
        subprocess.run([building, 'write', house, many], check=True)
        commands = {'first frame of the empty window': ([empty], {}),
                    'first frame of the example project': ([halfbond, example], {}),
                    'first wall of the example project': ([halfbond, example], {'LAID': '1'}),
                    'first wall of 1000 in 250 plans': ([halfbond, many], {'LAID': '1'})}
        times = {what: [] for what in commands}
        for turn in range(ROUNDS + 1):
            for what, (command, more) in commands.items():
                reading = first_frame(preload, command, home, **more)
                if turn > 0:  # the first one fills the caches
                    times[what].append(reading)
    for what, readings in times.items():
        ms, processor = zip(*readings)
        print(f'{what}\t{ROUNDS}\t{statistics.median(ms):.0f}\t{max(ms):.0f}'
              f'\t{statistics.median(processor):.0f}')
    example, empty = (statistics.median([ms for ms, _ in times[f'first frame of the {what}']])
                      for what in ('example project', 'empty window'))
    ratio = example / empty
    print(f'ratio\t{ratio:.2f}')


main()
