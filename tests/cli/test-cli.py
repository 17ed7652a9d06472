#!/usr/bin/env python3
"""What the program does without a window, each option, with good and bad input.

usage: test-cli.py STEADING

TAP, one case a claim.  No display is given to the program: whoever touches GTK
fails here.  Every farm is made in a folder of its own, for a day that is told.
"""
import csv
import hashlib
import json
import os
import pathlib
import re
import sqlite3
import stat
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])
TODAY = '2026-03-31'
HOME = tempfile.TemporaryDirectory(prefix='steading-cli-')
FOLDER = pathlib.Path(HOME.name)
count = failures = 0


def report(good, name, *notes):
    global count, failures
    count += 1
    failures += not good
    print(f"{'ok' if good else 'not ok'} {count} /cli/{name}")
    for note in notes if not good else ():
        for line in str(note).splitlines() or ['']:
            print(f'# {line}')


def run(*words, **variables):
    env = {key: value for key, value in os.environ.items()
           if key not in ('DISPLAY', 'WAYLAND_DISPLAY', 'LANGUAGE')}
    env.update(HOME=str(FOLDER), XDG_RUNTIME_DIR=str(FOLDER), **variables)
    return subprocess.run([PROGRAM, *map(str, words)], capture_output=True, text=True, env=env,
                          timeout=60, check=False)


def works(name, *words, holds='', **variables):
    done = run(*words, **variables)
    report(done.returncode == 0 and done.stderr == '' and holds in done.stdout, name, words, done)
    return done.stdout


def fails(name, *words, status=1, says=''):
    """One clear line on standard error, and the right status."""
    done = run(*words)
    lines = done.stderr.splitlines()
    report(done.returncode == status and len(lines) == 1 and lines[0].startswith('steading: ')
           and len(lines[0]) > 20 and says in lines[0], name, words, done)
    return done.stdout


def digest(path):
    return hashlib.sha256(path.read_bytes()).hexdigest()


def write(name, text):
    path = FOLDER / name
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    return path


def eggs_logged(farm):
    out = run('--ask', 'flock', '--today', TODAY, farm).stdout
    return json.loads(out.split('\n', 1)[1])['eggs_so_far']


# --- making farms -----------------------------------------------------------------
demo = FOLDER / 'demo.steading'
works('demo', '--demo', demo, '--today', TODAY)
before = digest(demo)
fails('demo-overwrites-nothing', '--demo', demo, '--today', TODAY)
report(digest(demo) == before, 'demo-is-left-alone')

twin = FOLDER / 'twin.steading'
run('--demo', twin, '--today', TODAY)
report(run('--ask', 'cost', '--today', TODAY, demo).stdout == run('--ask', 'cost', '--today', TODAY, twin).stdout,
       'demo-is-the-same-each-time')

new = FOLDER / 'North pasture.steading'
works('new', '--new', new, holds='North pasture')
fails('new-overwrites-nothing', '--new', new)
fails('new-in-no-folder', '--new', FOLDER / 'nowhere' / 'x.steading')
report(not (FOLDER / 'nowhere').exists(), 'new-leaves-nothing')
fails('new-has-no-cost', '--ask', 'cost', new)
fails('new-has-no-flock', '--ask', 'flock', new)
fails('new-has-no-fish', '--ask', 'fish', new, says='no fish')
fails('new-has-no-build', '--ask', 'build', new, says='no build')
fails('new-has-no-water', '--ask', 'water', new, says='no water')
works('new-has-nothing-due', '--ask', 'due', new)

# --- asking --------------------------------------------------------------------------
questions = works('list-questions', '--list-questions')
names = [line.split('\t')[0] for line in questions.splitlines()]
report({'cost', 'price', 'flock', 'fish', 'crop', 'greenhouse', 'water', 'recipe', 'kitchen', 'batch', 'due', 'stock', 'store-room', 'trace'} <= set(names), 'questions-by-name', questions)
report(all(re.fullmatch(r'[a-z-]+\t[^\t]+\?', line) for line in questions.splitlines()), 'questions-in-words')
# The demo farm grows no crop and cooks nothing yet, and its bay is not heated.
for name in (name for name in names if name not in ('crop', 'recipe', 'kitchen')):
    out = works(f'ask-{name}', '--ask', name, '--today', TODAY, demo)
    sentence, _, figures = out.partition('\n')
    try:
        figures = json.loads(figures)
    except ValueError as fault:
        figures = fault
    report(isinstance(figures, dict) and figures != {} and sentence.endswith('.') and '<' not in sentence,
           f'ask-{name}-gives-json', out)
cost = json.loads(run('--ask', 'cost', '--today', TODAY, demo).stdout.split('\n', 1)[1])
parts = sum(part['shown_cents'] for name, part in cost['parts'].items() if name != 'labor')
report(parts == cost['unit_cents'], 'cost-parts-sum', cost)
price = json.loads(run('--ask', 'price', '--today', TODAY, demo).stdout.split('\n', 1)[1])
report(price['margin_cents'] == price['price_cents'] - cost['unit_cents'], 'price-stands-on-cost', price)
build = json.loads(run('--ask', 'build', '--today', TODAY, demo).stdout.split('\n', 1)[1])
report(build['build'] == 'Sheep pen' and build['goal_cents'] == build['spent_cents'] + build['to_buy_cents']
       + build['tax_cents'] + build['contingency_cents'], 'ask-build-adds-up', build)
report(abs(build['funded_frac'] - (build['spent_cents'] + build['free_cents'] + build['grants_cents']) / build['goal_cents']) < 1e-9,
       'ask-build-tells-who-pays', build)
# 48 by 24 ft: 1,152 sq ft (build-and-records, CASE-01).
report(abs(build['area_m2'] / 0.3048 ** 2 - 1152) < 1e-6, 'ask-build-measures', build)
fails('ask-build-of-nobody', '--ask', 'build', '--of', 'Castle', '--today', TODAY, demo, says='Castle')
works('ask-of-name', '--ask', 'price', '--of', cost['product'].upper(), '--today', TODAY, demo)
fails('ask-of-nobody', '--ask', 'price', '--of', 'Llamas', '--today', TODAY, demo, says='Llamas')
fails('ask-no-question', '--ask', 'weather', demo, says='weather')
report(digest(demo) == before, 'asking-changes-nothing')

# --- documents ------------------------------------------------------------------------
documents = works('list-documents', '--list-documents')
for line in documents.splitlines():
    name, formats, title = line.split('\t')
    for ending in formats.split():
        out = FOLDER / f'{name}.{ending}'
        works(f'document-{name}-{ending}', '--document', name, '--out', out, '--today', TODAY, demo)
        report(out.exists() and out.stat().st_size > 100, f'document-{name}-{ending}-is-there')
        first = digest(out) if out.exists() else None
        run('--document', name, '--out', out, '--today', TODAY, demo)
        report(out.exists() and digest(out) == first, f'document-{name}-{ending}-same-bytes')
report(len(documents.splitlines()) > 0, 'there-are-documents')


def text_of(path):
    text = subprocess.run(['pdftotext', path, '-'], text=True, stdout=subprocess.PIPE).stdout
    return re.sub(r'\s+', ' ', text)              # one blank for what keeps a number and its unit together, too


# The card of the kitchen's limits is in the language that is asked for, whatever the program speaks.
for speaks in ({}, {'LC_ALL': 'C'}, {'LANGUAGE': 'es'}):
    for card, words, none in (('limit-card', ('Our limits', 'Nuestros límites', 'Cocinar huevos'), None),
                              ('limit-card-english', ('Our limits', 'Cook eggs'), 'Nuestros'),
                              ('limit-card-spanish', ('Nuestros límites', 'Cocinar huevos'), 'Our limits')):
        out = FOLDER / 'card.pdf'
        run('--document', card, '--out', out, '--today', TODAY, demo, **speaks)
        text = ' '.join(text_of(out).split())
        report(all(word in text for word in words) and (none is None or none not in text), f'{card}-{speaks}', text[:400])

# A page of ten labels, each with the whole weight in the law's form: 21 CFR 101.7(m).
run('--document', 'labels', '--out', FOLDER / 'labels.pdf', '--today', TODAY, demo)
words = text_of(FOLDER / 'labels.pdf')
report(words.count('Net Wt. 16 oz') == 10 and words.count('454 g') == 10, 'labels-fill-a-page', words[:200])
# What must stand on eggs asks for larger blanks, six a page: 21 CFR 101.17(h).
with sqlite3.connect(f'file:{demo}?mode=ro', uri=True) as db:
    code, = db.execute("SELECT l.code FROM lot l JOIN item i ON i.id = l.item_id WHERE i.food = 'raw_shell_eggs'"
                       " ORDER BY l.id LIMIT 1").fetchone()
works('labels-of-eggs', '--document', 'labels', '--of', code, '--out', FOLDER / 'eggs.pdf', '--today', TODAY, demo)
report(text_of(FOLDER / 'eggs.pdf').count('SAFE HANDLING INSTRUCTIONS') == 6, 'labels-of-eggs-are-larger')
name = documents.split('\t')[0]
ending = documents.split('\t')[1].split()[0]
for period in ('4-weeks', '12-weeks', 'school-year', 'whole-batch'):
    works(f'document-over-{period}', '--document', name, '--period', period, '--today', TODAY,
          '--out', FOLDER / f'{period}.{ending}', demo)
fails('document-no-out', '--document', name, demo, status=2, says='--out')
fails('document-no-name', '--document', 'love-letter', '--out', FOLDER / 'x.pdf', demo)
fails('document-no-ending', '--document', name, '--out', FOLDER / 'x.odt', demo)
fails('document-in-no-folder', '--document', name, '--out', FOLDER / 'nowhere' / f'x.{ending}', demo)
fails('document-bad-period', '--document', name, '--period', 'ever', '--out', FOLDER / 'x.pdf', demo, status=2)
report(not (FOLDER / 'x.odt').exists() and not (FOLDER / 'x.pdf').exists(), 'failed-documents-leave-nothing')

# --- checking ------------------------------------------------------------------------
works('verify', '--verify', demo)
fails('verify-folder', '--verify', FOLDER)
fails('verify-missing', '--verify', FOLDER / 'gone.steading')
fails('verify-text', '--verify', write('letter.txt', 'Dear hens,\n'))
fails('verify-empty', '--verify', write('empty.steading', ''))
damaged = write('damaged.steading', demo.read_bytes()[:-30000])
damage = digest(damaged)
fails('verify-damaged', '--verify', damaged)
report(digest(damaged) == damage, 'verify-changes-nothing')

# --- rescuing ------------------------------------------------------------------------
rescued = FOLDER / 'rescued.steading'
works('rescue-sound', '--rescue', demo, rescued, holds='Nothing was lost')
works('rescue-sound-verifies', '--verify', rescued)
fails('rescue-not-over-a-file', '--rescue', damaged, rescued, says='another name')
rescued.unlink()
works('rescue-damaged', '--rescue', damaged, rescued, holds='could be read')
report(digest(damaged) == damage, 'rescue-changes-nothing')
works('rescued-opens', '--ask', 'due', '--today', TODAY, rescued)
fails('rescue-text', '--rescue', FOLDER / 'letter.txt', FOLDER / 'x.steading', says='Nothing of a farm')
fails('rescue-missing', '--rescue', FOLDER / 'gone.steading', FOLDER / 'x.steading')
fails('rescue-one-file', '--rescue', damaged, status=2)
report(not (FOLDER / 'x.steading').exists(), 'failed-rescues-leave-nothing')

for name in ('cost', 'due'):
    fails(f'ask-{name}-of-text', '--ask', name, FOLDER / 'letter.txt')
    fails(f'ask-{name}-of-folder', '--ask', name, FOLDER)
    fails(f'ask-{name}-of-nothing', '--ask', name, FOLDER / 'gone.steading')

# --- importing -------------------------------------------------------------------------
good = write('good.csv', 'Date,Eggs,Cracked,Feed (lb),Note\n2026-03-30,11,1,2.5,second round\n2026-03-31,9,0,,\n')
had = eggs_logged(demo)
out = works('import-dry-run', '--import', 'flock-log', good, demo, '--of', 'Brown hens', '--dry-run', '--today', TODAY,
            holds='2 rows')
report(eggs_logged(demo) == had, 'dry-run-changes-nothing')
works('import', '--import', 'flock-log', good, demo, '--of', 'Brown hens', '--today', TODAY, holds='2 rows were taken')
report(eggs_logged(demo) == had + 20, 'import-is-there', eggs_logged(demo), had)
out = works('import-again', '--import', 'flock-log', good, demo, '--of', 'Brown hens', '--today', TODAY, holds='0 rows were taken')
report(eggs_logged(demo) == had + 20, 'import-again-adds-nothing', out)

bad = write('bad.csv', 'Date;Eggs;Feed (lb)\n31.3.2026;4;1,5\n32.3.2026;4;\n30.3.2026;999;\n29.3.2026;-3;\n')
out = fails('import-bad-rows', '--import', 'flock-log', bad, demo, '--of', 'Brown hens', '--today', TODAY, says='3 rows')
report(all(f'Line {line}' in out for line in (3, 4, 5)) and 'Line 2' not in out, 'bad-rows-are-named', out)
report('999' in out and '32.3.2026' in out and '-3' in out, 'bad-cells-are-shown', out)
report(eggs_logged(demo) == had + 24, 'good-rows-are-taken')

either = write('either.csv', 'Date,Eggs\n03/04/2026,5\n03/05/2026,5\n')
fails('import-doubtful-dates', '--import', 'flock-log', either, demo, '--of', 'Brown hens', '--today', TODAY)
report(eggs_logged(demo) == had + 24, 'doubtful-dates-take-nothing')
works('import-dates-mdy', '--import', 'flock-log', either, demo, '--of', 'Brown hens', '--dates', 'mdy', '--today', TODAY,
      holds='2 rows were taken')
fails('import-dates-no-order', '--import', 'flock-log', either, demo, '--dates', 'dym', status=2)

receipts = write('receipts.csv', 'Date,Supplier,Item,Quantity,Cost,Gift,Kind\n'
                 '2026-03-20,Lakeside Feed & Seed,Layer feed,50 lb,"$19.50",,\n'
                 '2026-03-20,Lakeside Feed & Seed,Grit,10 lb,4.10,,supply\n'
                 '2026-03-21,A neighbor,Straw,40 lb,8.00,yes,\n')
works('import-receipts', '--import', 'receipts', receipts, demo, '--today', TODAY, holds='3 rows were taken')
works('import-keeps-farm-sound', '--verify', demo)

fails('import-no-kind', '--import', 'poems', good, demo, status=2)
fails('import-folder', '--import', 'flock-log', FOLDER, demo)
fails('import-missing', '--import', 'flock-log', FOLDER / 'gone.csv', demo)
fails('import-empty', '--import', 'flock-log', write('empty.csv', ''), demo)
fails('import-no-header', '--import', 'flock-log', write('headless.csv', '2026-03-01,5\n'), demo, '--of', 'Brown hens', says='Date')
fails('import-spreadsheet', '--import', 'flock-log', write('packed.csv', b'PK\3\4' + bytes(200)), demo)
fails('import-into-text', '--import', 'flock-log', good, FOLDER / 'letter.txt')
fails('import-of-nobody', '--import', 'flock-log', good, demo, '--of', 'Geese', says='Geese')
huge = FOLDER / 'huge.csv'
with open(huge, 'wb') as file:
    file.truncate(200 * 1024 * 1024)
fails('import-200-MB', '--import', 'flock-log', huge, demo, '--of', 'Brown hens', says='64 MB')

# --- the farm as a folder -----------------------------------------------------------------
def rows_of(path):
    """Every row of every table but the steps of undo, read by Python's own SQLite."""
    db = sqlite3.connect(f'file:{path}?mode=ro', uri=True)
    names = [row[0] for row in db.execute("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")]
    kept = {name: sorted(map(repr, db.execute(f'SELECT * FROM "{name}"'))) for name in names if name != 'step'}
    kept['sqlite_sequence'] = [row for row in kept['sqlite_sequence'] if not row.startswith("('step',")]
    return kept


def cells_of(path):
    with open(path, newline='', encoding='utf-8') as file:
        return list(csv.reader(file, strict=True))


folder = FOLDER / 'Ember folder'
back = FOLDER / 'back.steading'
works('export-folder', '--export-folder', folder, demo, holds='by name')
works('import-folder', '--import-folder', folder, back)
one, other = rows_of(demo), rows_of(back)
report(len(one) > 100 and one == other, 'folder-round-trip', [name for name in one if one[name] != other.get(name)])
works('imported-is-sound', '--verify', back)
report(stat.S_IMODE(os.stat(folder).st_mode) == 0o700
       and all(stat.S_IMODE(path.stat().st_mode) == (0o700 if path.is_dir() else 0o600) for path in folder.rglob('*'))
       and stat.S_IMODE(back.stat().st_mode) == 0o600, 'folder-is-the-owners')
readme = (folder / 'README.md').read_text(encoding='utf-8')
described = {tuple(row[:2]): row for row in cells_of(folder / 'columns.csv')[1:]}
wanting = []
for table in sorted((folder / 'tables').glob('*.csv')):
    head, *rest = cells_of(table)
    if table.stem != 'last_id':
        wanting += [table.stem for _ in [0] if f'### {table.stem} ({len(rest)})' not in readme]
        wanting += [(table.stem, name) for name in head if not described.get((table.stem, name), [''])[-1]]
        wanting += [(table.stem, row) for row in rest if len(row) != len(head)]
report(not wanting, 'folder-is-described', wanting[:5])
tables = FOLDER / 'Ember tables'
works('export-tables', '--export-tables', tables, demo, holds='by number only')
names = [row[1] for row in cells_of(folder / 'tables' / 'person.csv')[1:]]
left = [name for name in names for path in (tables / 'tables').glob('*.csv')
        if f'"{name}"' in path.read_text(encoding='utf-8')]
report(len(names) > 3 and not left and not (tables / 'pictures').exists(), 'tables-name-nobody', left)
fails('import-tables', '--import-folder', tables, FOLDER / 'part.steading', says='only a part')
fails('import-folder-over-a-farm', '--import-folder', folder, demo, says='Choose another name')
fails('export-folder-over-a-folder', '--export-folder', folder, demo, says='Choose another name')
fails('import-no-folder', '--import-folder', FOLDER, FOLDER / 'part.steading', says='not the folder of a farm')
(folder / 'tables' / 'batch.csv').write_text('id,kind\r\n')
fails('import-lacking-columns', '--import-folder', folder, FOLDER / 'part.steading', says='lacks the column')
report(not (FOLDER / 'part.steading').exists() and not list(FOLDER.glob('*.part')), 'nothing-half-imported')
fails('export-without-farm', '--export-folder', FOLDER / 'x', status=2)

# --- the command line itself --------------------------------------------------------------
version = works('version', '--version')
report(re.fullmatch(r'steading \d+\.\d+\.\d+\n', version) is not None, 'version-is-a-number', version)
works('help', '--help', holds='--document')
fails('two-at-once', '--list-questions', '--version', status=2)
fails('no-farm', '--ask', 'cost', status=2)
fails('two-farms', '--ask', 'cost', demo, twin, status=2)
fails('import-one-file', '--import', 'flock-log', good, status=2)
fails('no-day', '--ask', 'cost', demo, '--today', 'tomorrow', status=2)
fails('no-such-day', '--ask', 'cost', demo, '--today', '2026-02-30', status=2)
fails('no-option', '--plow', status=2)
spanish = run('--ask', 'cost', '--today', TODAY, twin, LANGUAGE='es').stdout
english = run('--ask', 'cost', '--today', TODAY, twin).stdout
report(json.loads(spanish.split('\n', 1)[1])['unit_cents'] == json.loads(english.split('\n', 1)[1])['unit_cents'],
       'figures-in-any-language')

print(f'1..{count}')
HOME.cleanup()
sys.exit(failures > 0)
