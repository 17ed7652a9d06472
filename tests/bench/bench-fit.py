#!/usr/bin/env python3
"""A refit of a laying curve, against scipy.optimize.curve_fit on the same weeks.

usage: bench-fit.py BENCH-FIT [--short]

scipy does less: no week is named, no band is drawn, nothing is held back to look
whether the band held.  It makes three passes of curve_fit with the weights of the pass
before and the plan's figures as four more observations.  With --short each once, as a
test that both come to an end; no limit of time.
"""
import statistics
import subprocess
import sys
import time

import numpy
from scipy.optimize import curve_fit

bench = sys.argv[1]
short = '--short' in sys.argv
mark = '# ' if short else ''
PLAN = numpy.array([0.97, 0.004, 1.3, 2.0])
PLAN_SD = numpy.array([0.04, 0.002, 0.4, 1.0])


def run(*words):
    return subprocess.run([bench, *words], capture_output=True, text=True, check=True).stdout


def compartment(t, a, x, c, d):
    return a * numpy.exp(-x * t) / (1 + numpy.exp(-c * (t - d)))


def scipy_fit(t, hen_days, eggs):
    values = PLAN
    for _ in range(3):
        p = numpy.clip(compartment(t, *values), 0.02, 0.98)
        sd = numpy.sqrt(p * (1 - p) / hen_days)
        values, _ = curve_fit(lambda x, *params: numpy.concatenate([compartment(t, *params), params]),
                              None, numpy.concatenate([eggs / hen_days, PLAN]), p0=values,
                              sigma=numpy.concatenate([sd, PLAN_SD]), absolute_sigma=True)
    return values


t, hen_days, eggs = numpy.array([[float(x) for x in line.split()] for line in run('--rows').splitlines()]).T
eggs = numpy.minimum(eggs, hen_days)    # a slip of ten times would bend the plain fit
times = []
for _ in range(1 if short else 30):
    began = time.process_time()
    scipy_fit(t, hen_days, eggs)
    times.append(1e6 * (time.process_time() - began))
theirs = statistics.median(times)

print(f'{mark}a refit of {len(t)} weeks              median    99th percentile')
for line in run('10' if short else '300').splitlines():
    name, median, late = line.split()
    print(f'{mark}  {name:8}               {float(median) / 1000:10.2f} ms {float(late) / 1000:10.2f} ms'
          + ('   (aim: one frame, 16)' if name == 'all' else ''))
    if name == 'fit':
        ours = float(median)
print(f'{mark}  scipy, three passes    {theirs / 1000:10.2f} ms')
print(f'{mark}  fit / scipy            {ours / theirs:10.2f}')
if short:
    print('1..1\nok 1 /bench/fit/beside-scipy')
