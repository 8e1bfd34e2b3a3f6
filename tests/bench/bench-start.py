"""bench-start.py - the first frame of the program beside that of an empty window

Usage: bench-start.py PRELOAD EMPTY HALFBOND EXAMPLE. Prints tab-separated rows: what, rounds,
median ms, slowest ms; and the ratio of the medians. Both take turns, so that a busy machine is
busy for both. Needs a display.
"""
import os
import statistics
import subprocess
import sys
import tempfile
import time

ROUNDS = 15


def first_frame(preload, command, home):
    environment = dict(os.environ, LD_PRELOAD=preload, HOME=home, XDG_CONFIG_HOME=home,
                       XDG_DATA_HOME=home, GSETTINGS_BACKEND='memory',
                       BEGAN=str(time.clock_gettime_ns(time.CLOCK_MONOTONIC) // 1000))
    done = subprocess.run(command, env=environment, stdout=subprocess.PIPE, timeout=60, check=True)
    return float(done.stdout.split()[-1])


def main():
    preload, empty, halfbond, example = (os.path.abspath(path) for path in sys.argv[1:])
    commands = {'empty window': [empty], 'example project': [halfbond, example]}
    times = {what: [] for what in commands}
    with tempfile.TemporaryDirectory() as home:
        for turn in range(ROUNDS + 1):
            for what, command in commands.items():
                ms = first_frame(preload, command, home)
                if turn > 0:  # the first one fills the caches
                    times[what].append(ms)
    for what, readings in times.items():
        print(f'first frame of the {what}\t{ROUNDS}\t{statistics.median(readings):.0f}'
              f'\t{max(readings):.0f}')
    ratio = statistics.median(times['example project']) / statistics.median(times['empty window'])
    print(f'ratio\t{ratio:.2f}')


main()
