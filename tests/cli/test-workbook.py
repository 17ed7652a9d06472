#!/usr/bin/env python3
"""The workbook of a farm, read by readers that are not ours.

usage: test-workbook.py STEADING

Sums are made here from the farm's file by SQL.  Where an office suite is installed it
opens the workbook without a window, works its formulas out anew, and must come to the same.
"""
import csv
import os
import pathlib
import shutil
import sqlite3
import subprocess
import sys
import tempfile

import openpyxl

PROGRAM = os.path.abspath(sys.argv[1])
HOME = tempfile.TemporaryDirectory(prefix='steading-workbook-')
FOLDER = pathlib.Path(HOME.name)
TODAY, YEAR_BEGINS = '2026-03-31', '2025-08-01'
LIVE = '=HYPERLINK("http://x.invalid";"a")'
FROM, TO = ("(julianday('%s') - julianday('1970-01-01'))" % day for day in (YEAR_BEGINS, TODAY))
count = failures = 0


def report(good, name, *notes):
    global count, failures
    count += 1
    failures += not good
    print(f"{'ok' if good else 'not ok'} {count} /paper/workbook/{name}")
    for note in notes if not good else ():
        print(f'# {str(note)[:300]}')


def run(*words):
    env = {**os.environ, 'HOME': str(FOLDER)}
    return subprocess.run([str(word) for word in words], env=env, capture_output=True, text=True, timeout=240, check=False)


farm, book = FOLDER / 'farm.steading', FOLDER / 'book.xlsx'
run(PROGRAM, '--demo', farm, '--today', TODAY)
with sqlite3.connect(farm) as db:
    db.execute('UPDATE item SET name = ? WHERE id = (SELECT l.item_id FROM lot l JOIN lot_stock s ON s.lot_id = l.id'
               ' WHERE s.base > 1 ORDER BY l.id LIMIT 1)', (LIVE,))
    db.execute("UPDATE person SET name = 'مريم 🐔' WHERE id = 1")
    db.execute("INSERT INTO work_span (person_id, day, minutes, break_minutes, duty, paid, entered_on)"
               f" VALUES (1, {TO} - 3, 90, 0, '=1+1', 0, {TO} - 3)")
    one = lambda sql: db.execute(sql).fetchone()[0]
    eggs = one(f'SELECT sum (eggs) FROM batch_entry WHERE day BETWEEN {FROM} AND {TO}')
    money_in = one(f'SELECT sum (cents) FROM cash_line WHERE cents > 0 AND pair_id IS NULL AND day BETWEEN {FROM} AND {TO}')
    stock = one('SELECT sum (cents) FROM lot_stock WHERE base > 1e-7')
    minutes = one(f'SELECT sum (minutes) FROM work_span WHERE day BETWEEN {FROM} AND {TO}'
                  ' AND id NOT IN (SELECT corrects_id FROM work_span WHERE corrects_id IS NOT NULL)')
    names = [row[0] for row in db.execute('SELECT name FROM person')]
done = run(PROGRAM, '--document', 'workbook', '--out', book, '--today', TODAY, farm)
report(done.returncode == 0, 'written', done)

formulas, values = openpyxl.load_workbook(book), openpyxl.load_workbook(book, data_only=True)
report(formulas.sheetnames == ['Hours', 'Money', 'Stock', 'Production', 'Sales', 'People'], 'sheets', formulas.sheetnames)
report(all(sheet.freeze_panes == 'A2' for sheet in formulas), 'heads-stay')
report(len(formulas['Production']._charts) == 2, 'charts')


def last(book_, sheet, column):
    sheet = book_[sheet]
    heads = [cell.value for cell in sheet[1]]
    return sheet.cell(sheet.max_row, heads.index(column) + 1).value


report(str(last(formulas, 'Production', 'Eggs')).startswith('=SUM('), 'sums-are-live')
wanted = [('Production', 'Eggs', eggs), ('Production', 'Money in', money_in / 100), ('Stock', 'Value', stock / 100),
          ('Hours', 'Minutes', minutes)]
wrong = [(sheet, column, last(values, sheet, column), value) for sheet, column, value in wanted
         if abs(last(values, sheet, column) - value) > 0.005]
report(not wrong, 'sums-agree', wrong)
day = formulas['Money']['B2']
report(day.is_date and day.data_type == 'd', 'days-are-days', day.value)
items = {cell.value: cell for cell in formulas['Stock']['A']}
report(LIVE in items and items[LIVE].data_type == 's', 'texts-stay-texts', list(items)[:9])
duties = [cell for cell in formulas['Hours']['C'] if cell.value == '=1+1']
report(len(duties) == 1 and duties[0].data_type == 's', 'duty-stays-text', duties)
cells = {str(cell.value) for sheet in formulas for row in sheet.iter_rows() for cell in row}
report(not cells & set(names) and 'Student 1' in cells, 'nobody-is-named', cells & set(names))

office = shutil.which('soffice') or shutil.which('libreoffice')
if office is None:
    count += 1
    print(f'ok {count} /paper/workbook/office # SKIP no office suite is installed')
else:
    # Comma, quotes, UTF-8, all sheets; formulas are worked out when the file is loaded.
    run(office, '--headless', '--convert-to', 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1',
        '--outdir', FOLDER, book)
    wrong = []
    for sheet, column, value in wanted:
        path = FOLDER / f'book-{sheet}.csv'
        rows = list(csv.reader(path.open(encoding='utf-8'))) if path.exists() else [[column], ['0']]
        found = float(rows[-1][rows[0].index(column)].replace(',', '').replace('$', ''))
        if abs(found - value) > 0.006:
            wrong.append((sheet, column, found, value))
    report(not wrong, 'office', wrong)

print(f'1..{count}')
HOME.cleanup()
sys.exit(failures > 0)
