#!/usr/bin/env python3
"""Lines and branches of each layer, the files that lack most, and why some will stay so.

usage: coverage.py REPORT.json REASONS [FILE...]     (of gcovr --json)

With files: the lines of those that no test reaches.

REASONS has a line each: a pattern of files, a pattern of a line's text, the reason;
with tabs between.  A line that fits is not reached, or its branches are not, for that
reason.  The figures of a layer are given as measured, and without what has a reason; the
goals are for these.
A reason that fits nothing, or only what is reached, is told: it may go.
"""
import collections
import fnmatch
import json
import re
import sys

GOALS = {layer: (95, 85) for layer in ('core', 'store', 'answer', 'paper')}
MOST = 25


class Reason:
    def __init__(self, text):
        self.files, pattern, self.why = text.rstrip('\n').split('\t')
        self.pattern = re.compile(pattern)
        self.lines = self.branches = 0

    def fits(self, name, line):
        return fnmatch.fnmatch(name, self.files) and self.pattern.search(line)


def read_reasons(path):
    with open(path, encoding='utf-8') as lines:
        return [Reason(line) for line in lines if line.strip() and not line.startswith('#')]


class Sum:
    """Lines and branches: reached, all; and those of them not reached that have a reason."""

    def __init__(self):
        self.lines = self.all_lines = self.branches = self.all_branches = 0
        self.lines_why = self.branches_why = 0

    def __iadd__(self, other):
        for name in vars(self):
            setattr(self, name, getattr(self, name) + getattr(other, name))
        return self

    def shares(self, with_reasons):
        lines, branches = self.all_lines, self.all_branches
        if with_reasons:
            lines, branches = lines - self.lines_why, branches - self.branches_why
        return 100 * self.lines / max(1, lines), 100 * self.branches / branches if branches else 100


def measure(entry, text, reasons):
    """The sum of a file, and the numbers of its lines that lack something without a reason."""
    facts, lacking = Sum(), []
    for line in entry['lines']:
        number, branches = line['line_number'], line.get('branches', [])
        if line.get('gcovr/noncode') or not text[number - 1].strip():
            continue
        missed = line['count'] == 0
        missed_branches = sum(1 for branch in branches if branch['count'] == 0)
        facts.lines += not missed
        facts.all_lines += 1
        facts.branches += len(branches) - missed_branches
        facts.all_branches += len(branches)
        if not missed and not missed_branches:
            continue
        reason = next((one for one in reasons if one.fits(entry['file'], text[number - 1])), None)
        if reason is None:
            lacking.append((number, missed, missed_branches, len(branches)))
            continue
        reason.lines += missed
        reason.branches += missed_branches
        facts.lines_why += missed
        facts.branches_why += missed_branches
    return facts, lacking


def layer_of(name):
    parts = name.split('/')
    return parts[1] if len(parts) > 2 else 'commands'


def main(report, reasons_path, *wanted):
    reasons = read_reasons(reasons_path)
    layers, files = collections.defaultdict(Sum), []
    for entry in json.load(open(report, encoding='utf-8'))['files']:
        text = open(entry['file'], encoding='utf-8').read().split('\n')
        facts, lacking = measure(entry, text, reasons)
        layers[layer_of(entry['file'])] += facts
        files.append((entry['file'], facts, lacking))
        if any(fnmatch.fnmatch(entry['file'], '*' + one + '*') for one in wanted):
            print(f'\n{entry["file"]}')
            for number, missed, branches, of in lacking:
                mark = '####' if missed else f'{of - branches}/{of}'
                print(f'{mark:>5} {number:5} {text[number - 1]}')
    if wanted:
        return

    print(f'{"layer":10} {"lines":>7} {"branches":>9}   {"aside from what has a reason":>20}')
    for layer, facts in sorted(layers.items()):
        plain, aside = facts.shares(False), facts.shares(True)
        goal = GOALS.get(layer)
        below = goal is not None and (aside[0] < goal[0] or aside[1] < goal[1])
        print(f'{layer:10} {plain[0]:6.1f}% {plain[1]:8.1f}% {aside[0]:10.1f}% {aside[1]:8.1f}%'
              + ('   below the goal' if below else ''))
    print('\nlines and branches that no test reaches, for a reason:')
    for reason in reasons:
        print(f'{reason.lines:6} {reason.branches:6}  {reason.why}'
              + ('' if reason.lines or reason.branches else ' (fits nothing: it may go)'))
    print('\nand without one, by file:')
    lack = [(sum(missed for _, missed, _, _ in lacking), sum(branches for _, _, branches, _ in lacking), name)
            for name, _, lacking in files if layer_of(name) in GOALS]
    for lines, branches, name in sorted(lack, reverse=True)[:MOST]:
        print(f'{lines:6} {branches:6}  {name}')


main(*sys.argv[1:])
