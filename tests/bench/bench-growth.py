"""How the program grows with the farm: from one farm-year to a hundred.

usage: bench-growth.py STEADING MAKE-BIG-FARM [--short]

Makes farms of the same daily log, a year long to a hundred, asks each what the window
asks, and checks the file.  What a start costs on an empty farm is taken off.  Prints the
processor's seconds and the largest memory, and for each step how the time grew against
n log n.  Over FACTOR times n log n fails: what is left is the noise of a small time.
"""
import math
import os
import subprocess
import sys
import tempfile

program, make_big_farm = sys.argv[1:3]
short = '--short' in sys.argv
YEARS = (1, 3) if short else (1, 3, 10, 30, 100)
A_YEAR = 8 * 365            # entries: a line a day of each of eight flocks
QUESTIONS = {name: ('--ask', name) for name in ('due', 'stock', 'store-room', 'statement')}
QUESTIONS['flock'] = ('--ask', 'flock', '--of', 'House 1')
QUESTIONS['--verify'] = ('--verify',)
FACTOR = 1.5
FLOOR = 0.25                # seconds: what is below it is as much noise as growth
ROUNDS = 1 if short else 3


def run(*command):
    """The processor's seconds and the largest resident memory in MB of a command."""
    child = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = status
    assert os.WIFEXITED(status) and os.WEXITSTATUS(status) == 0, command
    return used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def best(*command):
    return tuple(min(values) for values in zip(*(run(*command) for _ in range(ROUNDS))))


def measure(farm, names=tuple(QUESTIONS)):
    """What each question costs of one farm."""
    return {name: best(program, *QUESTIONS[name], farm) for name in names}


mark = '# ' if short else ''
failed = []
with tempfile.TemporaryDirectory() as folder:
    empty = os.path.join(folder, 'empty.steading')
    subprocess.check_call([program, '--new', empty], stdout=subprocess.DEVNULL)
    start = measure(empty, [name for name in QUESTIONS if name != 'flock'])
    start['flock'] = start['due']       # an empty farm has none
    table = {}
    for years in YEARS:
        farm = os.path.join(folder, f'{years}.steading')
        subprocess.check_call([make_big_farm, farm, str(A_YEAR * years), str(years)], stdout=subprocess.DEVNULL)
        table[years] = measure(farm)
        print(f'{mark}{years:4} years {os.path.getsize(farm) / 1e6:7.1f} MB  '
              + '  '.join(f'{name} {seconds:.2f} s {mb:.0f} MB' for name, (seconds, mb) in table[years].items()))
    for name in start:
        for one, many in zip(YEARS, YEARS[1:]):
            cheap = max(table[one][name][0] - start[name][0], FLOOR)
            dear = table[many][name][0] - start[name][0]
            n = A_YEAR * one, A_YEAR * many
            share = dear / cheap / (n[1] * math.log(n[1]) / (n[0] * math.log(n[0])))
            print(f'{mark}{name}: {one} to {many} years, {max(share, 0):.2f} of n log n')
            if share > FACTOR and not short:   # a test has no limit of time
                failed.append(name)

if short:
    print('1..1')
    print(('not ok' if failed else 'ok') + ' 1 /bench/growth/no-worse-than-n-log-n')
sys.exit(1 if failed else 0)
