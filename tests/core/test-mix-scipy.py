#!/usr/bin/env python3
"""The best use of what is scarce against HiGHS, as scipy brings it, on made-up farms.

usage: test-mix-scipy.py MIX-PROBE

TAP.  It must be Debian's Python, for its scipy.
"""
import itertools
import subprocess
import sys

import numpy
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

PROBE = sys.argv[1]
count = failures = 0


def report(good, name, *notes):
    global count, failures
    count += 1
    failures += not good
    print(f"{'ok' if good else 'not ok'} {count} /core/mix-scipy/{name}")
    for note in notes if not good else ():
        print(f'# {note}')


class Farm:
    """Margins, what one of each product takes of what is scarce, and promises."""

    def __init__(self, random, products, scarce, promised):
        self.margins = random.uniform(0.5, 20, products)
        use = random.uniform(0, 10, (scarce, products)) * (random.random((scarce, products)) < 0.6)
        use[0] = random.uniform(0.5, 10, products)         # one thing goes into all: the sum has an end
        amount = random.uniform(20, 200, scarce)
        eye = numpy.eye(products)
        least = random.uniform(0, promised, products)
        self.uses = numpy.vstack([use, eye, eye])
        self.at_least = numpy.array([0] * scarce + [0] * products + [1] * products)
        self.amounts = numpy.concatenate([amount, random.uniform(1, 30, products), least])

    def rows(self, some=None):
        """Of these limits, or of all, as A x <= b."""
        sign = numpy.where(self.at_least == 1, -1, 1)
        a, b = self.uses * sign[:, None], self.amounts * sign
        return (a, b) if some is None else (a[list(some)], b[list(some)])

    def solve(self, some=None, margins=None):
        a, b = self.rows(some)
        return linprog(-(self.margins if margins is None else margins), A_ub=a, b_ub=b, method='highs')

    def whole(self):
        a, b = self.rows()
        return milp(-self.margins, constraints=LinearConstraint(a, -numpy.inf, b), integrality=numpy.ones(len(self.margins)),
                    bounds=Bounds(0, numpy.inf))

    def clashes(self, some):
        """Whether no plan keeps these limits."""
        return self.solve(some, 0 * self.margins).status == 2

    def probe(self):
        lines = [f'{len(self.margins)} {len(self.amounts)}', ' '.join(map(repr, map(float, self.margins)))]
        for use, least, amount in zip(self.uses, self.at_least, self.amounts):
            lines.append(' '.join(map(repr, map(float, use))) + f' {least} {float(amount)!r}')
        out = subprocess.run([PROBE], input='\n'.join(lines), capture_output=True, text=True, check=True).stdout
        return {line.split()[0]: numpy.array([float(x) for x in line.split()[1:]]) for line in out.splitlines()}


def test_best_worth_and_range():
    random = numpy.random.default_rng(41)
    plans = 0
    for _ in range(60):
        farm = Farm(random, int(random.integers(2, 13)), int(random.integers(1, 7)), 1)
        theirs, ours = farm.solve(), farm.probe()
        if theirs.status == 2:
            assert 'best' not in ours and len(ours['clash']) > 0
            continue
        plans += 1
        assert abs(ours['best'][0] + theirs.fun) < 1e-6 * max(1, -theirs.fun), (ours['best'], theirs.fun)
        assert len(ours['clash']) == 0
        worth = -theirs.ineqlin.marginals * numpy.where(farm.at_least == 1, -1, 1)
        assert numpy.allclose(ours['worth'], worth, atol=1e-6), (ours['worth'], worth)
        # Within its range one more brings what it is worth; solved anew, by HiGHS.
        for k in range(len(farm.amounts)):
            kept = farm.amounts[k]
            for end in (ours['low'][k], ours['high'][k]):
                farm.amounts[k] = kept + 0.9 * (end - kept) if numpy.isfinite(end) else kept
                moved = -farm.solve().fun
                assert abs(moved - ours['best'][0] - ours['worth'][k] * (farm.amounts[k] - kept)) < 1e-5
            farm.amounts[k] = kept
    assert plans > 20, plans


def test_whole():
    random = numpy.random.default_rng(42)
    plans = 0
    for _ in range(40):
        farm = Farm(random, int(random.integers(2, 9)), int(random.integers(1, 5)), 1)
        farm.amounts = numpy.round(farm.amounts)           # a promise is of whole units
        theirs, ours = farm.whole(), farm.probe()
        assert ('whole' in ours) == (theirs.status == 0), theirs.status
        if theirs.status == 0:
            plans += 1
            assert abs(ours['whole'][0] + theirs.fun) < 1e-6 * max(1, -theirs.fun), (ours['whole'], theirs.fun)
    assert plans > 10, plans


def test_smallest_clash():
    """No set of fewer limits clashes: each is tried."""
    random = numpy.random.default_rng(43)
    sizes = {}
    for _ in range(40):
        farm = Farm(random, 4, 3, 14)
        found = farm.probe()['clash'].astype(int)
        sizes[len(found)] = sizes.get(len(found), 0) + 1
        if len(found) == 0:
            assert not farm.clashes(range(len(farm.amounts)))
            continue
        assert farm.clashes(found), found
        for fewer in itertools.combinations(range(len(farm.amounts)), len(found) - 1):
            assert len(fewer) == 0 or not farm.clashes(fewer), (found, fewer)
    assert sum(n for size, n in sizes.items() if size >= 3) >= 5, sizes
    assert sum(n for size, n in sizes.items() if size == 2) >= 5, sizes


for name, case in list(globals().items()):
    if name.startswith('test_'):
        try:
            case()
            report(True, name[5:])
        except AssertionError as error:
            report(False, name[5:], repr(error)[:200])
print(f'1..{count}')
sys.exit(failures > 0)
