#!/usr/bin/env python3
"""Degree days of real daily temperatures, summed a second time in exact fractions.

usage: test-weather.py CHECK-REFERENCE

The readings are in tests/reference/weather, each file with its source.  The sums
here are written from the definitions of the methods, in another language and in
exact arithmetic; the program must come to the same, month by month, in °C and °F.
"""
import csv
import os
import subprocess
import sys
import tempfile
from collections import defaultdict
from fractions import Fraction

HERE = os.path.dirname(os.path.abspath(__file__))
HEADER = ['id', 'topic', 'inputs', 'expected', 'unit', 'tolerance']
TOLERANCE = '0.000001'


def read_days(name):
    """Return (month, maximum, minimum) of each day, as exact fractions of °C."""
    with open(os.path.join(HERE, 'weather', name), encoding='utf-8') as lines:
        rows = csv.DictReader(line for line in lines if not line.startswith('#'))
        return [(row['date'][:7], Fraction(row['max_c']), Fraction(row['min_c'])) for row in rows]


def average(high, low, base, upper):
    return max(Fraction(0), (high + low) / 2 - base)


def substitute(high, low, base, upper):
    return (min(max(high, base), upper) + min(max(low, base), upper)) / 2 - base


def reduced_ceiling(high, low, base, upper):
    return max(Fraction(0), (min(high, 2 * upper - high) + low) / 2 - base)


def heating(high, low, base, upper):
    return max(Fraction(0), base - (high + low) / 2)


METHODS = {'average': average, 'substitute': substitute, 'reduced_ceiling': reduced_ceiling}


def text(number):
    return f'{float(number):.12g}'


def to_f(celsius):
    return celsius * 9 / 5 + 32


def rows_of(name, days):
    """Return the rows to be checked: each month, each method, both units."""
    months = defaultdict(list)
    for month, high, low in days:
        months[month].append((high, low))
    for month, temps in months.items():
        for topic, ask, method, func, base, upper in (
                *(('degree days', 'gdd', method, func, Fraction(10), Fraction(30))
                  for method, func in METHODS.items()),
                ('heating degree days', 'hdd', None, heating, Fraction(55, 3), None)):
            total = sum(func(high, low, base, upper) for high, low in temps)
            for unit, move, scale in (('C', lambda c: c, 1), ('F', to_f, Fraction(9, 5))):
                inputs = [f'tmax_{unit}=' + '|'.join(text(move(high)) for high, _ in temps),
                          f'tmin_{unit}=' + '|'.join(text(move(low)) for _, low in temps),
                          f'base_{unit}={text(move(base))}']
                if method:
                    inputs += [f'method={method}', f'upper_{unit}={text(move(upper))}']
                yield [f'{name} {month} {method or "heating"} {unit}', topic,
                       ';'.join(inputs + [f'ask={ask}_{unit}']), f'{float(total * scale):.9f}',
                       f'{unit}-days', TOLERANCE]


def run(check, rows):
    """Return the checker's status and its last line."""
    with tempfile.NamedTemporaryFile('w', suffix='.csv', newline='', encoding='utf-8') as file:
        writer = csv.writer(file)
        writer.writerow(HEADER)
        writer.writerows(rows)
        file.flush()
        done = subprocess.run([check, file.name], capture_output=True, text=True, check=False)
    lines = done.stdout.splitlines()
    for line in lines[:-1]:
        if not line.endswith(' ok'):
            print('#', line[:200])
    return done.returncode, lines[-1] if lines else done.stderr


def main(check):
    files = {'new-york.csv': 1461, 'seattle.csv': 365}
    cases = []
    for name, n_days in files.items():
        days = read_days(name)
        rows = list(rows_of(name, days))
        cases.append((f'{name} is whole', len(days) == n_days and all(h >= l for _, h, l in days)))
        cases.append((f'{name} agrees',
                      run(check, rows) == (0, f'{len(rows)} rows: {len(rows)} ok, 0 differ, 0 unknown')))
        # Three methods on one summer must not all be the same: else nothing was told apart.
        july = {method: next(row[3] for row in rows if f'-07 {method} C' in row[0])
                for method in METHODS}
        cases.append((f'{name} tells the methods apart', len(set(july.values())) >= 2))
        off = [row[:3] + [text(Fraction(row[3]) + Fraction(1, 1000))] + row[4:] for row in rows[:8]]
        cases.append((f'{name} a thousandth off is found',
                      run(check, off) == (1, '8 rows: 0 ok, 8 differ, 0 unknown')))
    print(f'1..{len(cases)}')
    for number, (name, good) in enumerate(cases, 1):
        print('ok' if good else 'not ok', number, f'/reference/weather/{name.replace(" ", "-")}')
    return any(not good for _, good in cases)


if __name__ == '__main__':
    sys.exit(main(sys.argv[1]))
