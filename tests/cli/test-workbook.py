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

def plain(value):
    """A cell as it is compared: days as text, numbers without the last bits, nothing as an empty text."""
    if hasattr(value, 'strftime'):
        return value.strftime('%Y-%m-%d')
    if isinstance(value, (int, float)):
        return round(float(value), 6)
    return '' if value is None else str(value)


def rows_of(book_, sheet, width=None):
    """The rows under the heads, without the sums."""
    found = [[plain(cell.value) for cell in row[:width]] for row in book_[sheet].iter_rows(min_row=2)]
    return found[:-1] if any(str(cell.value).startswith('=') for cell in formulas[sheet][formulas[sheet].max_row]) else found


def differ(found, expected):
    """The first rows that are not the same; empty if all are."""
    if len(found) != len(expected):
        return [(len(found), 'rows, not', len(expected))]
    return [(row, other) for row, other in zip(found, expected) if row != other][:3]


# Each cell, against what other statements find in the file.
WHO = "upper (substr (p.role, 1, 1)) || substr (p.role, 2) || ' ' || p.id"
MONTH = "strftime ('%Y-%m', day * 86400, 'unixepoch')"
LASTING = 'id NOT IN (SELECT corrects_id FROM work_span WHERE corrects_id IS NOT NULL)'
POUND = 0.45359237                                 # kg, by definition: NIST Handbook 44, appendix C
with sqlite3.connect(farm) as db:
    def all_of(sql):
        return [[plain(value) for value in row] for row in db.execute(sql)]

    report(not (wrong := differ(rows_of(values, 'Hours'), all_of(
        f"SELECT date (day * 86400, 'unixepoch'), {WHO}, duty, round (minutes, 1), iif (paid, 'yes', 'no'),"
        " iif (entered_on > day + 7, 'yes', 'no'), iif (checked_on IS NULL, 'no', 'yes') FROM work_span w"
        f' JOIN person p ON p.id = w.person_id WHERE day BETWEEN {FROM} AND {TO} AND w.{LASTING} ORDER BY day, w.id'))),
        'each-cell-of-hours', *wrong)
    report(not (wrong := differ(rows_of(values, 'People'), all_of(
        f"SELECT p.id, {WHO}, iif (class_year > 0, class_year, '') || '', date (left_on * 86400, 'unixepoch'),"
        f' round (total (minutes), 1) FROM person p LEFT JOIN work_span w ON w.person_id = p.id AND day BETWEEN {FROM}'
        f' AND {TO} AND w.{LASTING} GROUP BY p.id'))), 'each-cell-of-people', *wrong)
    # Amounts have the item's unit, which a test of units holds; here the rest.
    stock_cells = [row[:4] + row[6:] for row in rows_of(values, 'Stock')]
    report(not (wrong := differ(stock_cells, all_of(
        "SELECT i.name, l.code, date (l.day * 86400, 'unixepoch'), date (best_by * 86400, 'unixepoch'), cents / 100.0"
        ' FROM lot_stock s JOIN lot l ON l.id = s.lot_id JOIN item i ON i.id = l.item_id WHERE base > 1e-7'
        ' ORDER BY i.name, l.day, l.id'))), 'each-cell-of-stock', *wrong)
    report(not (wrong := differ(rows_of(values, 'Money', 3), all_of(
        "SELECT c.id, date (day * 86400, 'unixepoch'), a.name FROM cash_line c JOIN account a ON a.id = account_id"
        f' WHERE day BETWEEN {FROM} AND {TO} ORDER BY day, c.id'))), 'each-line-of-money', *wrong)
    sums = {}
    for column, sql in enumerate((
            f'SELECT {MONTH}, sum (eggs) FROM batch_entry WHERE day BETWEEN {FROM} AND {TO} AND eggs > 0 GROUP BY 1',
            f"""SELECT {MONTH.replace('day', 'h.day')}, round (sum (coalesce (live_kg, (SELECT sum (quantity_base) FROM movement m
                WHERE m.lot_id = h.lot_id AND kind = 'made'))) / {POUND}, 1) FROM harvest h JOIN batch b ON b.id = h.batch_id
                WHERE b.kind = 'fish' AND h.day BETWEEN {FROM} AND {TO} GROUP BY 1""",
            None, None,
            f'SELECT {MONTH}, sum (cents) / 100.0 FROM cash_line WHERE cents > 0 AND pair_id IS NULL AND day BETWEEN {FROM} AND {TO} GROUP BY 1',
            f'SELECT {MONTH}, -sum (cents) / 100.0 FROM cash_line WHERE cents < 0 AND pair_id IS NULL AND day BETWEEN {FROM} AND {TO} GROUP BY 1',
            f'SELECT {MONTH}, round (sum (minutes) / 60, 1) FROM work_span WHERE day BETWEEN {FROM} AND {TO} AND {LASTING} GROUP BY 1'), 1):
        if sql:
            sums[column] = dict(all_of(sql))
    months = rows_of(values, 'Production')
    wrong = [(row[0], column, row[column], of_month.get(row[0], 0.0)) for row in months for column, of_month in sums.items()
             if abs(row[column] - of_month.get(row[0], 0.0)) > 0.051 * (column in (2, 7)) + 1e-6]
    report(len(months) == 8 and not wrong, 'each-month-of-production', months[:1], *wrong[:3])

# The cash book as the program prints it into CSV has the same money and the same balances.
run(PROGRAM, '--document', 'cash-book', '--out', FOLDER / 'cash.csv', '--period', 'school-year', '--today', TODAY, farm)
with open(FOLDER / 'cash.csv', encoding='utf-8-sig', newline='') as file:
    printed = {row['Line']: row for row in csv.DictReader(file) if row['Line']}
heads = [cell.value for cell in values['Money'][1]]
wrong = []
for row in rows_of(values, 'Money'):
    cells_of = dict(zip(heads, row))
    its = printed.get(str(int(cells_of['Line'])))
    wrong += [(cells_of['Line'], head, cells_of[head], its and its[head]) for head in
              ('Category', 'Money in', 'Money out', 'Fund', 'Reference', 'Corrects line')
              if its is None or cells_of[head] != (plain(float(its[head])) if its[head] and head not in
                                                   ('Category', 'Fund', 'Reference') else its[head])]
report(not wrong and len(printed) > 20, 'money-as-in-the-cash-book', *wrong[:3])


office = shutil.which('soffice') or shutil.which('libreoffice')
if office is None:
    for name in ('office-has-each-cell', 'office-works-sums-out'):
        count += 1
        print(f'ok {count} /paper/workbook/{name} # SKIP no office suite is installed')
else:
    CSV = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1'

    def in_office(path):
        """Comma, quotes, UTF-8, as they are and not as they look, all sheets; by sheet."""
        run(office, '--headless', '--convert-to', CSV, '--outdir', FOLDER / path.stem, path)
        return {sheet: list(csv.reader((FOLDER / path.stem / f'{path.stem}-{sheet}.csv').open(encoding='utf-8')))
                for sheet in formulas.sheetnames}

    def same(text, value):
        if isinstance(value, float):
            try:
                return abs(float(text.replace(',', '').replace('$', '') or 'nan') - value) < 1e-6
            except ValueError:
                return False
        return text == value

    opened = in_office(book)
    wrong = [(sheet, at, text, cell.value) for sheet in formulas.sheetnames
             for at, row in enumerate(values[sheet].iter_rows()) for cell, text in zip(row, opened[sheet][at])
             if not same(text, plain(cell.value))]
    seen = sum(len(row) for sheet in opened.values() for row in sheet)
    report(seen > 1000 and not wrong, 'office-has-each-cell', seen, *wrong[:3])
    # A number is changed and no sum is told: the office suite must find each sum by the formulas.
    for sheet, column, _ in wanted:
        first = formulas[sheet].cell(2, [cell.value for cell in formulas[sheet][1]].index(column) + 1)
        first.value = (first.value or 0) + 7
    formulas.save(FOLDER / 'changed.xlsx')
    opened = in_office(FOLDER / 'changed.xlsx')
    wrong = [(sheet, column, opened[sheet][-1], value + 7) for sheet, column, value in wanted
             if not same(opened[sheet][-1][opened[sheet][0].index(column)], plain(value + 7))]
    report(not wrong, 'office-works-sums-out', *wrong)

print(f'1..{count}')
HOME.cleanup()
sys.exit(failures > 0)
