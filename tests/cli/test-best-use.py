#!/usr/bin/env python3
"""The best use of what is scarce on the demo farm, against HiGHS, as scipy brings it.

usage: test-best-use.py STEADING

TAP.  It must be Debian's Python, for its scipy.
"""
import json
import sqlite3
import subprocess
import sys
import tempfile

import numpy
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

PROGRAM = sys.argv[1]
count = failures = 0


def report(good, name, *notes):
    global count, failures
    count += 1
    failures += not good
    print(f"{'ok' if good else 'not ok'} {count} /cli/best-use/{name}")
    for note in notes if not good else ():
        print(f'# {note}')


with tempfile.TemporaryDirectory() as folder:
    farm = f'{folder}/farm.steading'
    subprocess.run([PROGRAM, '--demo', farm], check=True, stdout=subprocess.DEVNULL)
    text = subprocess.check_output([PROGRAM, '--ask', 'best-use', farm], text=True)
    with sqlite3.connect(farm) as db:
        eggs, = db.execute("SELECT -sum (quantity_base) FROM movement JOIN lot ON lot.id = lot_id JOIN item ON item.id = item_id"
                           " WHERE item.name = 'Eggs' AND movement.kind = 'used'").fetchone()
        bowls, = db.execute("SELECT sum (quantity_base) FROM movement JOIN lot ON lot.id = lot_id JOIN item ON item.id = item_id"
                            " WHERE item.name = 'Breakfast bowl' AND movement.kind = 'made'").fetchone()
figures = json.loads(text[text.index('{'):])
products, scarce = figures['products'], figures['scarce']
takes = {p['product']: p['takes'] for p in products}

# All eggs that were cooked over all good bowls; and by the recipe, 50 and 25 minutes on the stove
# make 6 pints of sauce.
report(abs(takes['Hot breakfast bowl']['Brown hens'] - eggs / bowls) < 1e-9, 'bowls-take-eggs', takes['Hot breakfast bowl'])
report(abs(takes['Roasted tomato sauce, pint']['Oven and stove'] - 12.5) < 1e-6, 'sauce-takes-the-stove',
       takes['Roasted tomato sauce, pint'])
report('Tomatoes, bay 1' in takes['Roasted tomato sauce, pint'] and 'Tomatoes, bay 1' in takes['Fresh tomatoes'],
       'fruit-goes-two-ways', takes)

use = numpy.array([[p['takes'].get(s['name'], 0) for p in products] for s in scarce])
there = numpy.array([s['amount'] for s in scarce])
margin = numpy.array([p['left_cents'] for p in products])
least, most = ([p[key] for p in products] for key in ('least_units', 'most_units'))
whole = milp(-margin, constraints=LinearConstraint(use, -numpy.inf, there), integrality=numpy.ones(len(margin)),
             bounds=Bounds(least, most))
report(abs(-whole.fun - figures['best_cents']) < 0.01, 'whole-units', -whole.fun, figures['best_cents'])
parts = linprog(-margin, A_ub=use, b_ub=there, bounds=list(zip(least, most)), method='highs')
worth = [-w * s['told_by'] for w, s in zip(parts.ineqlin.marginals, scarce)]
report(numpy.allclose(worth, [s['one_more_cents'] for s in scarce], atol=1e-4), 'worth-of-one-more', worth, scarce)
report(sum(w > 1 for w in worth) >= 2, 'something-is-scarce', worth)
print(f'1..{count}')
sys.exit(failures > 0)
