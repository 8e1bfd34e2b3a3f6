#!/usr/bin/env python3
"""compare-rows.py BEFORE AFTER - compares two files of rows that bench-rows printed, wall by wall.

Tells what got better and worse, and by how much, and how many walls are laid otherwise; ends with 1
where any wall has more breaches, more cuts (with least waste: more units) at as many breaches, or a
lower bound.
"""
import sys

COLUMNS = ('breaches', 'breaches at least', 'cuts', 'cuts at least', 'to order', 'too small',
           'laps')


def read(path):
    rows = {}
    with open(path, encoding='utf-8') as file:
        for line in file:
            name, *numbers, digest, ms = line.rstrip('\n').split('\t')
            rows[name] = (tuple(map(int, numbers)), digest, float(ms))
    return rows


def is_worse(before, after):
    """More breaches, more cuts or units, or a lower bound."""
    if after[0] != before[0]:
        return after[0] > before[0]
    if after[4] > 0 and after[4] != before[4]:
        return after[4] > before[4]
    return after[2] > before[2] or after[1] < before[1] or after[3] < before[3]


def is_proven(row):
    return row[2] == row[3]


def main():
    before, after = read(sys.argv[1]), read(sys.argv[2])
    names = [name for name in before if name in after]
    worse = [name for name in names if is_worse(before[name][0], after[name][0])]
    for name in names:
        if before[name][0][:5] != after[name][0][:5]:
            print('%s%s: %s -> %s' % (name, ' WORSE' if name in worse else '',
                                      before[name][0], after[name][0]))
    for i, column in enumerate(COLUMNS):
        print('%s\t%d\t%d' % (column, sum(before[name][0][i] for name in names),
                              sum(after[name][0][i] for name in names)))
    for word, rows in (('before', before), ('after', after)):
        ms = sorted(rows[name][2] for name in names)
        print('%s\t%d walls\t%d proven\tmedian ms %.2f\tmean ms %.2f\tslowest ms %.2f' % (
            word, len(names), sum(is_proven(rows[name][0]) for name in names), ms[len(ms) // 2],
            sum(ms) / len(ms), ms[-1]))
    print('laid otherwise\t%d' % sum(before[name][1] != after[name][1] for name in names))
    return 1 if worse or len(names) < max(len(before), len(after)) else 0


if __name__ == '__main__':
    sys.exit(main())
