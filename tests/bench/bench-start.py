"""From the start of the process to the first frame, against a bare GTK window.

usage: bench-start.py SHIM BARE STEADING MAKE-BIG-FARM [--short]

Runs the three in turn, so that a machine that slows down slows all of them, and
prints the median of each and the ratios.  With --short once each on a small
farm, as a test: that each one paints, no limit of time.
"""
import os
import re
import statistics
import subprocess
import sys
import tempfile
import time

shim, bare, program, make_big_farm = sys.argv[1:5]
short = '--short' in sys.argv
runs, entries = (1, 5000) if short else (15, 1000000)


def first_frame(*command):
    """The wall clock from before the start to after the first frame, in ms."""
    began = time.monotonic()
    said = subprocess.run(command, env=dict(os.environ, LD_PRELOAD=shim), text=True,
                          stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, timeout=120).stdout
    took = (time.monotonic() - began) * 1000
    assert re.search(r'^first frame \d+$', said, re.M), f'no frame: {said!r}'
    return took


with tempfile.TemporaryDirectory() as folder:
    demo = os.path.join(folder, 'demo.steading')
    big = os.path.join(folder, 'big.steading')
    subprocess.check_call([program, '--demo', demo], stdout=subprocess.DEVNULL)
    subprocess.check_call([make_big_farm, big, str(entries)], stdout=subprocess.DEVNULL)
    kinds = {'bare window': [bare], 'demo farm': [program, demo], f'{entries:,} entries': [program, big]}
    for command in kinds.values():                  # once to warm the disk's cache
        first_frame(*command)
    times = {name: [] for name in kinds}
    for _ in range(runs):
        for name, command in kinds.items():
            times[name].append(first_frame(*command))

medians = [statistics.median(t) for t in times.values()]
mark = '# ' if short else ''
for name, median in zip(times, medians):
    print(f'{mark}{name:20} {median:7.0f} ms')
print(f'{mark}demo farm / bare window: {medians[1] / medians[0]:.2f} (aim 1.3)')
print(f'{mark}{entries:,} entries / demo farm: {medians[2] / medians[1]:.2f} (aim 1.5)')
if short:
    print('1..1\nok 1 /bench/start/paints')
