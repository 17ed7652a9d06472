#!/usr/bin/env python3
"""Add up a run of the suite from Meson's log of it, case by case.

usage: count.py testlog.json

A TAP program counts as many cases as it reported.  A program that crashed, was
stopped, or reported fewer cases than it promised counts one failure on top.
Any other program is one case.  Prints the tail of each failing log, then the
sum alone on the last line.  Succeeds only if something ran and nothing failed.
"""
import json
import re
import sys

TAIL = 60
CASE = re.compile(r'^(not )?ok\b(?P<rest>.*)$')
SKIP = re.compile(r'#\s*(skip|todo)', re.IGNORECASE)
GOOD = ('OK', 'EXPECTEDFAIL')


def count_program(test):
    """Return (passed, failed, skipped) of one program of the log."""
    passed = failed = skipped = 0
    for line in test.get('stdout', '').splitlines():
        case = CASE.match(line)
        if case is None:
            continue
        if SKIP.search(case['rest']):
            skipped += 1
        elif case[1]:
            failed += 1
        else:
            passed += 1

    result = test['result']
    if result == 'SKIP':
        return passed, failed, max(skipped, 1)
    if result not in GOOD:
        return passed, max(failed, 1), skipped
    if passed + failed + skipped == 0:
        return 1, 0, 0
    return passed, failed, skipped


def print_log(test):
    lines = (test.get('stdout', '') + test.get('stderr', '')).splitlines()
    print(f"\n== {test['name']}: {test['result']}, status {test['returncode']}")
    print('\n'.join(lines[-TAIL:]))


def main(path):
    total = [0, 0, 0]
    with open(path, encoding='utf-8') as log:
        for line in log:
            test = json.loads(line)
            counts = count_program(test)
            total = [a + b for a, b in zip(total, counts)]
            if counts[1] > 0:
                print_log(test)

    passed, failed, skipped = total
    print(f'{passed} passed, {failed} failed' + (f', {skipped} skipped' if skipped else ''))
    return 0 if failed == 0 and passed > 0 else 1


if __name__ == '__main__':
    sys.exit(main(sys.argv[1]))
