#!/usr/bin/env python3
"""The counter of tests must itself be able to count, and to fail."""
import contextlib
import importlib.util
import io
import json
import os
import tempfile

tests = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
spec = importlib.util.spec_from_file_location('count', os.path.join(tests, 'count.py'))
count = importlib.util.module_from_spec(spec)
spec.loader.exec_module(count)


def run(*tests):
    """Return the status and last line for a log of (result, stdout) pairs."""
    with tempfile.NamedTemporaryFile('w', suffix='.json') as log:
        for result, stdout in tests:
            json.dump({'name': 'x', 'stdout': stdout, 'result': result, 'returncode': 0}, log)
            log.write('\n')
        log.flush()
        out = io.StringIO()
        with contextlib.redirect_stdout(out):
            status = count.main(log.name)
    return status, out.getvalue().splitlines()[-1]


GOOD = 'TAP version 13\n# seed\n1..2\nok 1 /a/b\nok 2 /a/c\n'
cases = {
    'cases-not-programs': ([('OK', GOOD), ('OK', GOOD)], (0, '4 passed, 0 failed')),
    'a-failing-case': ([('ERROR', '1..2\nok 1 a\nnot ok 2 b\n')], (1, '1 passed, 1 failed')),
    'a-crash-after-good-cases': ([('ERROR', '1..3\nok 1 a\n')], (1, '1 passed, 1 failed')),
    'a-timeout': ([('OK', GOOD), ('TIMEOUT', '1..2\nok 1 a\n')], (1, '3 passed, 1 failed')),
    'a-skipped-case': ([('OK', '1..2\nok 1 a\nok 2 b # SKIP no clock\n')],
                       (0, '1 passed, 0 failed, 1 skipped')),
    'a-skipped-program': ([('OK', GOOD), ('SKIP', '1..0 # SKIP none\n')],
                          (0, '2 passed, 0 failed, 1 skipped')),
    'a-plain-program': ([('OK', ''), ('FAIL', 'oh\n')], (1, '1 passed, 1 failed')),
    'a-pass-that-should-fail': ([('UNEXPECTEDPASS', '')], (1, '0 passed, 1 failed')),
    'nothing-ran': ([], (1, '0 passed, 0 failed')),
    'all-skipped': ([('SKIP', '')], (1, '0 passed, 0 failed, 1 skipped')),
}
print(f'1..{len(cases)}')
bad = 0
for number, (name, (log, expected)) in enumerate(cases.items(), 1):
    found = run(*log)
    bad += found != expected
    print('ok' if found == expected else 'not ok', number, f'/house/count/{name}')
    if found != expected:
        print(f'# expected {expected}, found {found}')
raise SystemExit(bad > 0)
