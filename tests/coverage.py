#!/usr/bin/env python3
"""Lines and branches of each layer, and the files that lack most.

usage: coverage.py SUMMARY.json     (of gcovr --json-summary)
"""
import collections
import json
import sys

GOALS = {layer: (95, 85) for layer in ('core', 'store', 'answer', 'paper')}
MOST = 20

layers = collections.defaultdict(lambda: [0, 0, 0, 0])
lacking = []
for entry in json.load(open(sys.argv[1]))['files']:
    parts = entry['filename'].split('/')
    layer = parts[1] if len(parts) > 2 else 'commands'
    facts = [entry['line_covered'], entry['line_total'], entry['branch_covered'], entry['branch_total']]
    layers[layer] = [a + b for a, b in zip(layers[layer], facts)]
    if layer in GOALS:
        lacking.append((facts[1] - facts[0], facts[3] - facts[2], entry['filename']))

print(f'{"layer":10} {"lines":>7} {"branches":>9}')
for layer, (lines, all_lines, branches, all_branches) in sorted(layers.items()):
    line_share = 100 * lines / max(1, all_lines)
    branch_share = 100 * branches / all_branches if all_branches else 100
    goal = GOALS.get(layer)
    below = goal is not None and (line_share < goal[0] or branch_share < goal[1])
    print(f'{layer:10} {line_share:6.1f}% {branch_share:8.1f}%' + ('   below the goal' if below else ''))
print('\nlines and branches that no test reaches:')
for lines, branches, name in sorted(lacking, reverse=True)[:MOST]:
    print(f'{lines:6} {branches:6}  {name}')
