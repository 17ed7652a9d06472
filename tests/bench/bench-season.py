#!/usr/bin/env python3
"""100,000 seasons of twelve products, against the same model in NumPy, without a loop.

usage: bench-season.py BENCH-SEASON [--short]

Both draw the same: what is sold of each product (in half of the seasons all with the same
luck), what each batch gives, the price of what is bought, the costs of a day; and both
take the mean.  Each has the machine for itself in turn, and what it can use of it.  At
the least five times as fast is asked for.  With --short once, as a test that both come to
the same mean; no limit of time.
"""
import statistics
import subprocess
import sys
import time

import numpy

bench = sys.argv[1]
short = '--short' in sys.argv
N, P = 100_000, 12


def triangle(u, low, likely, high):
    split = (likely - low) / (high - low)
    return numpy.where(u < split, low + numpy.sqrt(u * (high - low) * (likely - low)),
                       high - numpy.sqrt((1 - u) * (high - low) * (high - likely)))


def theirs(seed):
    rng = numpy.random.default_rng(seed)
    at = numpy.arange(P)[:, None]
    luck = numpy.where(rng.random(N) < .5, rng.random(N), rng.random((P, N)))
    sold = triangle(luck, 10. + at, 20. + at, 30. + at)
    given = rng.triangular(.8, 1, 1.1, (P, N))
    price = rng.triangular(.9, 1, 1.3, N)
    day = rng.triangular(6000, 7000, 9000, N)
    profit = 12 * ((sold * (450 - (160 * price + 80) / given - 30)).sum(axis=0) - day)
    return profit.mean()


times, means = [], []
for seed in range(1 if short else 15):
    began = time.perf_counter()
    means.append(theirs(seed))
    times.append(1000 * (time.perf_counter() - began))
ours, mean = map(float, subprocess.check_output([bench, '1' if short else '15'], text=True).split())
same = abs(mean / statistics.mean(means) - 1) < .01
if short:
    print(f'1..1\n{"ok" if same else "not ok"} 1 /bench/season/same-mean')
    sys.exit(not same)
ratio = statistics.median(times) / ours
print(f'{N:,} seasons of {P} products: {ours:.1f} ms, NumPy {statistics.median(times):.1f} ms: '
      f'{ratio:.1f} times as fast (at the least 5)')
sys.exit(not (same and ratio >= 5))
