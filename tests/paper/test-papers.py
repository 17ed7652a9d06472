"""Papers of the demo farm, read with other people's readers.

usage: test-papers.py SHOW-PAPERS

SHOW-PAPERS writes every document into a folder; poppler reads the PDFs back,
openpyxl the workbooks, Python's csv the CSVs, expat the SVG.  TAP.
"""
import csv
import datetime
import io
import os
import re
import sqlite3
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

import openpyxl

cases = []


def case(function):
    cases.append(function)
    return function


def run(*command):
    return subprocess.run(command, check=True, capture_output=True).stdout


def text_of(path):
    return run('pdftotext', '-layout', path, '-').decode()


def spoken(path):
    """The text in the order of its tags, white space made one."""
    struct = run('pdfinfo', '-struct-text', path).decode()
    return re.sub(r'\s+', ' ', ' '.join(re.findall(r'"(.*)"', struct)))


def make(show, folder):
    environment = dict(os.environ, LC_ALL='C.UTF-8', TZ='UTC')
    done = subprocess.run([show, folder], capture_output=True, env=environment)
    assert done.returncode == 0 and not done.stderr, done.stderr.decode()
    return folder


OF_A_PERIOD = ('cost-sheet', 'price-page', 'break-even-chart', 'batch-card')
PDFS = OF_A_PERIOD + ('grading-sheet',)


@case
def pdf_is_tagged_titled_dated(a, b):
    for name in PDFS:
        info = run('pdfinfo', f'{a}/{name}.pdf').decode()
        assert re.search(r'Tagged:\s+yes', info), info
        assert re.search(r'Title:\s+(Eggs|Brown hens): ', info), info
        assert re.search(r'Author:\s+Ember Lake School Farm', info), info
        assert re.search(r'CreationDate:\s+Tue Mar  3 12:00:00 2026', info), info
        assert re.search(r'ModDate:\s+Tue Mar  3 12:00:00 2026', info), info
        assert '612 x 792 pts (letter)' in info, info


@case
def pdf_has_a_language(a, b):
    for name in PDFS:
        data = open(f'{a}/{name}.pdf', 'rb').read()
        start = int(data[data.rindex(b'startxref'):].split()[1])
        assert data[start:start + 4] == b'xref'
        root = int(re.search(rb'/Root (\d+) 0 R', data[start:]).group(1))
        first, count, at = (int(x) for x in data[start:].split()[1:4])
        assert (first, count) == (root, 1)
        catalog = data[at:data.index(b'endobj', at)]
        assert catalog.startswith(b'%d 0 obj' % root) and b'/Catalog' in catalog
        assert b'/Lang (en-US)' in catalog and b'/StructTreeRoot' in catalog and b'/Outlines' in catalog
        done = subprocess.run(['pdftotext', f'{a}/{name}.pdf', '-'], capture_output=True)
        assert done.returncode == 0 and not done.stderr, done.stderr


@case
def pdf_embeds_its_fonts(a, b):
    for name in PDFS:
        lines = run('pdffonts', f'{a}/{name}.pdf').decode().splitlines()[2:]
        assert lines
        for line in lines:
            assert re.search(r'yes yes yes\s+\d+\s+\d+$', line), line


@case
def pdf_pages_bear_their_frame(a, b):
    for name in OF_A_PERIOD:
        pages = text_of(f'{a}/{name}.pdf').rstrip('\f').split('\f')
        for i, page in enumerate(pages):
            assert 'Ember Lake School Farm' in page
            assert 'Made on Mar 3, 2026' in page
            assert re.search(r'Period: \w+ \d+, \d+ to Mar 3, 2026\. Farm file at change \d+', page), page
            assert f'Page {i + 1} of {len(pages)}' in page, page


def amounts(line):
    return [float(x.replace(',', '')) for x in re.findall(r'\$([\d,]+\.\d\d)', line)]


@case
def no_word_is_cut_from_its_comma(a, b):
    pdfs = [name for name in sorted(os.listdir(a)) if name.endswith('.pdf')]
    assert 'limit-card-english.pdf' in pdfs, pdfs
    for name in pdfs:
        lines = run('pdftotext', '-raw', f'{a}/{name}', '-').decode().splitlines()
        assert lines and not [line for line in lines if re.match(r'[,.;:!?)]', line)], name


@case
def cost_sheet_adds_up(a, b):
    lines = text_of(f'{a}/cost-sheet.pdf').splitlines()
    first = next(i for i, line in enumerate(lines) if re.match(r'\s*Part\s', line))
    last = next(i for i, line in enumerate(lines) if line.strip().startswith('All costs'))
    parts = [amounts(line) for line in lines[first + 1:last] if amounts(line)]
    assert len(parts) >= 5, parts
    assert round(sum(p[0] for p in parts), 2) == amounts(lines[last])[0]
    assert abs(sum(p[1] for p in parts) - amounts(lines[last])[1]) < 0.005 * len(parts) + 0.001
    assert f'One dozen costs us ${amounts(lines[last])[0]:.2f}.' in spoken(f'{a}/cost-sheet.pdf')


@case
def trace_is_tagged_and_says_where_all_is(a, b):
    assert re.search(r'Tagged:\s+yes', run('pdfinfo', f'{a}/trace.pdf').decode())
    text = spoken(f'{a}/trace.pdf')
    assert 'one way back' in text and 'This lot, and what was made of it' in text, text
    assert 'Each row adds up' in text, text


@case
def cost_sheet_entries_sum_to_their_part(a, b):
    text = text_of(f'{a}/cost-sheet.pdf')
    behind = text[text.index('What stands behind each part'):].splitlines()
    total, tables = 0.0, 0
    for line in behind:
        if line.strip().startswith('Together'):
            assert round(total, 2) == amounts(line)[-1], line
            total, tables = 0.0, tables + 1
        elif amounts(line):
            total += amounts(line)[-1]
    assert tables >= 5, tables


def table(lines, head, last):
    first = next(i for i, line in enumerate(lines) if line.strip() == head)
    end = next((i for i, line in enumerate(lines) if i > first and line.strip().startswith(last)), len(lines))
    return [line for line in lines[first + 1:end + 1] if amounts(line)]


@case
def batch_card_costs_add_up(a, b):
    rows = table(text_of(f'{a}/batch-card.pdf').splitlines(), 'Cost so far, and to finish it', 'All costs')
    in_all = [amounts(row)[-1] * (-1 if '−' in row.split()[-1] else 1) for row in rows]
    assert len(in_all) >= 5, rows
    assert round(sum(in_all[:-1]), 2) == in_all[-1], rows


@case
def batch_card_weeks_are_the_log(a, b):
    text = text_of(f'{a}/batch-card.pdf')
    weeks = re.findall(r'^\s*(\w{3} \d+, \d{4})\s+([\d,]+|–)\s+([\d,]+|–)\s+(\d+%|–)', text, re.M)
    eggs = sum(int(week[1].replace(',', '')) for week in weeks if week[1] != '–')
    with open(f'{a}/flock-log.csv', encoding='utf-8-sig') as file:
        log = list(csv.DictReader(file))
    assert eggs == sum(int(row['Eggs'] or 0) for row in log), eggs
    assert len(weeks) >= 30


@case
def grading_sheet_is_two_sides_with_the_limits(a, b):
    text = text_of(f'{a}/grading-sheet.pdf')
    assert 'Page 2 of 2' in text
    # Pennsylvania Code, title 7, section 87.42(a): least ounces of a dozen.
    for name, ounces in (('Jumbo', 30), ('Extra large', 27), ('Large', 24), ('Medium', 21), ('Small', 18), ('Peewee', 15)):
        assert re.search(rf'^\s*{name}\s+{ounces} oz\b', text, re.M), name
    # The Haugh unit, 100 log (h - 1.7 w^0.37 + 7.57), solved here for the height.
    for grade, units in (('AA', 72), ('A', 60)):
        row = re.search(rf'^\s*Grade {grade} from\s+(.*)$', text, re.M).group(1)
        heights = [10 ** (units / 100) + 1.7 * grams ** 0.37 - 7.57 for grams in (50, 55, 60, 65, 70)]
        assert re.findall(r'([\d.]+) mm', row) == [f'{h:.1f}' for h in heights], (row, heights)


@case
def structure_follows_the_reading(a, b):
    struct = run('pdfinfo', '-struct', f'{a}/cost-sheet.pdf').decode()
    tags = re.findall(r'^\s*(Document|H1|H2|H3|P|Figure|Table)\b', struct, re.M)
    assert tags[:5] == ['Document', 'H1', 'P', 'Figure', 'Table'], tags[:6]
    assert struct.count('TH') >= 4 and struct.count('TD') > 40
    assert tags.count('H1') == 1


@case
def no_text_is_lost_to_a_reader(a, b):
    """What is seen is also spoken: every word of the pages but the frame's."""
    for name in PDFS:
        said = re.sub(r'\s+', '', spoken(f'{a}/{name}.pdf'))
        for line in text_of(f'{a}/{name}.pdf').splitlines():
            for words in re.split(r'\s{2,}', line.strip()):
                if re.search(r'Ember Lake School Farm|Made on|^Page \d|^Period:|^Farm file', words):
                    continue
                assert re.sub(r'\s+', '', words) in said, words


@case
def outline_leads_to_the_headings(a, b):
    data = open(f'{a}/price-page.pdf', 'rb').read()
    assert b'/Outlines' in data
    text = text_of(f'{a}/price-page.pdf')
    for heading in ('The figures', 'The chart in numbers', 'The price so far', 'How it is worked out'):
        assert heading in text
    assert data.count(b'/Title (') + data.count(b'/Title <') >= 5   # headings, and the document's own


@case
def price_page_agrees_with_itself(a, b):
    text = text_of(f'{a}/price-page.pdf')
    price = amounts(re.search(r'^\s*Price\s+(.*)$', text, re.M).group(1))[0]
    cost = amounts(re.search(r'^\s*Cost of each\s+(.*)$', text, re.M).group(1))[0]
    left = amounts(re.search(r'^\s*What each one leaves\s+(.*)$', text, re.M).group(1))[0]
    assert round(price - cost, 2) == left
    table = re.search(r'Sold\s+Money in\s+All costs.*?\n(.*?)The price so far', text, re.S).group(1)
    rows = re.findall(r'(\d+) dozen\s+(\S+)\s+(\S+)\s+(\S+)', table)
    assert len(rows) >= 5, table
    money = lambda t: float(t.replace('$', '').replace(',', '').replace('\u2212', '-'))
    for units, revenue, costs, profit in rows:
        assert round(int(units) * price, 2) == money(revenue)
        assert abs(money(revenue) - money(costs) - money(profit)) < 0.011


def signed(text):
    return float(text.replace('$', '').replace(',', '').replace('\u2212', '-'))


SUM = r'\u2212?\$[\d,]+\.\d\d'


@case
def shared_cost_is_shared_whole(a, b):
    text = text_of(f'{a}/shared-cost.pdf')
    whole = re.search(rf'({SUM}) in all goes into Brown hens', spoken(f'{a}/shared-cost.pdf')).group(1)
    table = re.search(r'What each bears of it(.*?)What one then costs', text, re.S).group(1)
    rows = [[signed(x) for x in re.findall(SUM, line)] for line in table.splitlines() if re.search(SUM, line)]
    assert len(rows) >= 3 and len({len(row) for row in rows}) == 1, table
    for way in zip(*rows):
        assert abs(sum(way[:-1]) - way[-1]) < 0.001 and way[-1] == signed(whole), (way, whole)


@case
def break_even_of_all_adds_up(a, b):
    text = text_of(f'{a}/break-even-all.pdf')
    left = 0
    rows = re.findall(rf'(\d+) (?:half )?[a-z]+\s+({SUM})\s+({SUM})\s+({SUM})\s+(\d+)%', text)
    assert len(rows) >= 5, text
    for planned, price, cost, one, share in rows:
        assert abs(signed(price) - signed(cost) - signed(one)) < 0.011, (price, cost, one)
        assert abs(signed(one) / signed(price) - int(share) / 100) < 0.006
        left += int(planned) * signed(one)
    day = dict(re.findall(rf'^\s*(Planned sales|Costs of the sale day|Break-even|Left at the plan)\s+({SUM})', text, re.M))
    sales = sum(int(planned) * signed(price) for planned, price, *_ in rows)
    assert abs(sales - signed(day['Planned sales'])) < 0.011, (sales, day)
    assert signed(day['Left at the plan']) <= left - signed(day['Costs of the sale day']) + 0.5, (left, day)


@case
def costs_of_all_tell_markup_from_margin(a, b):
    text = text_of(f'{a}/costs-all.pdf')
    rows = re.findall(rf'({SUM})\s+({SUM}) an? [a-z ]+?\s+({SUM})\s+(\d+)%\s+(\d+)%', text)
    assert len(rows) >= 5, text
    for cost, price, left, markup, margin in rows:
        assert abs(signed(price) - signed(cost) - signed(left)) < 0.011
        assert abs(signed(left) / signed(cost) - int(markup) / 100) < 0.011, (cost, left, markup)
        assert abs(signed(left) / signed(price) - int(margin) / 100) < 0.006
    listed = text_of(f'{a}/price-list.pdf')
    assert {price for _, price, *_ in rows} <= set(re.findall(SUM, listed))
    assert 'ost' not in listed.replace('osted', ''), listed    # customers see no costs


@case
def best_use_brings_what_it_says(a, b):
    text = text_of(f'{a}/best-use.pdf')
    table = re.search(r'What to make of it(.*?)What there is', text, re.S).group(1)
    sums = [[signed(x) for x in re.findall(SUM, line)] for line in table.splitlines() if re.search(SUM, line)]
    total = sums.pop()
    assert len(sums) >= 5 and len(total) == 1, table
    # Left of one, what all of it brings, and the prices between which the plan stays the same.
    assert abs(sum(row[1] for row in sums) - total[0]) < 0.011 * len(sums), table
    assert f'${total[0]:,.2f}' in spoken(f'{a}/best-use.pdf').split('What to make')[0]


@case
def scenarios_and_swings_agree(a, b):
    text = text_of(f'{a}/scenarios.pdf')
    assert 'As the farm has it' in text
    swings = re.findall(rf'({SUM})\s+\S+(?: [a-z]+)*\s+({SUM})\s+({SUM})$', text, re.M)
    assert len(swings) >= 5, text
    for low, high, apart in swings:
        assert abs(abs(signed(low) - signed(high)) - signed(apart)) < 0.011, (low, high, apart)


@case
def days_of_a_price_are_worked_out(a, b):
    text = text_of(f'{a}/which-price.pdf')
    rows = re.findall(rf'\d{{4}}\s+({SUM})\s+(\d+) dozen\s+({SUM})', text)
    assert len(rows) >= 3, text
    for price, sold, taken in rows:
        assert abs(signed(price) * int(sold) - signed(taken)) < 0.001


@case
def seasons_are_worked_out_and_add_up(a, b):
    text = text_of(f'{a}/how-sure.pdf')
    lines = re.findall(rf'sold on a day: (\d+) × \(({SUM}) − ({SUM})\) = ({SUM})', text)
    assert len(lines) >= 5, text
    day = sum(signed(left) for *_, left in lines)
    costs, left = re.search(rf'with steps, ({SUM}): ({SUM})', text).groups()
    assert abs(day - signed(costs) - signed(left)) < 0.011 * len(lines), (day, costs, left)
    days, once, season = re.search(rf'^\s*(\d+) × ({SUM}) = ({SUM})', text, re.M).groups()
    assert once == left and abs(int(days) * signed(once) - signed(season)) < 0.01 * int(days), (days, once, season)
    assert season in re.search(r'With everything as likely as can be.*', text).group(0)
    low, high = re.search(rf'leave between ({SUM}) and ({SUM})', spoken(f'{a}/how-sure.pdf')).groups()
    assert signed(low) < signed(re.search(rf'half of them more than ({SUM})', spoken(f'{a}/how-sure.pdf')).group(1)) < signed(high)


@case
def workbook_holds_numbers_and_dates(a, b):
    book = openpyxl.load_workbook(f'{a}/flock-log.xlsx')
    sheet = book.active
    head = [cell.value for cell in sheet[1]]
    assert head[:5] == ['Date', 'Age (weeks)', 'Hens', 'Eggs', 'Cracked'], head
    assert sheet.freeze_panes == 'A2'
    assert sheet.auto_filter.ref == f'A1:L{sheet.max_row - 1}', sheet.auto_filter.ref
    assert sheet.max_row > 300
    for row in sheet.iter_rows(min_row=2, max_row=sheet.max_row - 1):
        assert isinstance(row[0].value, datetime.datetime) and row[0].number_format == 'yyyy-mm-dd'
        assert isinstance(row[1].value, (int, float))
        assert row[3].value is None or isinstance(row[3].value, int)
        assert all(cell.data_type != 'f' for cell in row)
    assert sheet.cell(sheet.max_row, 4).value == f'=SUM(D2:D{sheet.max_row - 1})'
    assert sheet.column_dimensions['K'].width > 9
    properties = book.properties
    assert properties.created == datetime.datetime(2026, 3, 3, 12), properties.created
    assert properties.creator == 'Ember Lake School Farm' and properties.title == 'Log of Brown hens'


@case
def workbook_says_the_same_as_the_csv(a, b):
    for name in ('flock-log', 'cost-lines', 'fish-log', 'weighings'):
        rows = list(csv.reader(io.StringIO(open(f'{a}/{name}.csv', encoding='utf-8-sig', newline='').read())))
        sheet = openpyxl.load_workbook(f'{a}/{name}.xlsx').active
        assert len(rows) == sheet.max_row - (name != 'weighings')   # sums stand in the workbook alone
        for row, cells in zip(rows, sheet.iter_rows()):
            for text, cell in zip(row, cells):
                value = cell.value
                if isinstance(value, datetime.datetime):
                    assert text == value.date().isoformat()
                elif isinstance(value, (int, float)):
                    assert abs(float(text) - value) < 1e-9, (text, value)
                else:
                    assert text == (value or ''), (text, value)


@case
def workbook_money_has_its_currency(a, b):
    sheet = openpyxl.load_workbook(f'{a}/cost-lines.xlsx').active
    assert sheet['E2'].number_format == '"$"#,##0.00;-"$"#,##0.00', sheet['E2'].number_format
    assert isinstance(sheet['E2'].value, (int, float))


@case
def csv_lines_end_as_rfc_4180_says(a, b):
    for name in ('flock-log', 'cost-lines', 'fish-log', 'weighings'):
        data = open(f'{a}/{name}.csv', 'rb').read()
        assert data.startswith(b'\xef\xbb\xbf') and data.endswith(b'\r\n')
        assert data.count(b'\n') == data.count(b'\r\n')
        widths = {len(row) for row in csv.reader(io.StringIO(data.decode('utf-8-sig'), newline=''))}
        assert len(widths) == 1, widths


@case
def picture_is_read_aloud(a, b):
    tree = ElementTree.parse(f'{a}/break-even-chart.svg').getroot()
    name = '{http://www.w3.org/2000/svg}'
    assert tree.tag == name + 'svg'
    assert tree.find(name + 'title').text == 'Eggs: how many to sell'
    sentence = tree.find(name + 'desc').text
    assert re.search(r'\d+ dozen cover', sentence) and '<b>' not in sentence
    assert re.sub(r'\s+', '', sentence) in re.sub(r'\s+', '', spoken(f'{a}/break-even-chart.pdf'))
    assert open(f'{a}/break-even-chart.png', 'rb').read(8) == b'\x89PNG\r\n\x1a\n'


def asked(folder, sql, *values):
    """One number out of the farm file, by SQL of our own."""
    farm = sqlite3.connect(f'file:{folder}/demo.steading?mode=ro', uri=True)
    try:
        return farm.execute(sql, values).fetchone()[0]
    finally:
        farm.close()


def day_number(year, month, day):
    return (datetime.date(year, month, day) - datetime.date(1970, 1, 1)).days


SCHOOL_YEAR = day_number(2025, 8, 1), day_number(2026, 3, 3)
NOT_CORRECTED = ' AND id NOT IN (SELECT corrects_id FROM work_span WHERE corrects_id IS NOT NULL)'


@case
def season_says_what_the_farm_file_holds(a, b):
    text = spoken(f'{a}/season.pdf')
    eggs = asked(a, 'SELECT sum(eggs) FROM batch_entry WHERE day BETWEEN ? AND ?', *SCHOOL_YEAR)
    assert f'{eggs:,} eggs collected' in text, text[:400]
    minutes = asked(a, 'SELECT sum(minutes) FROM work_span WHERE day BETWEEN ? AND ?' + NOT_CORRECTED, *SCHOOL_YEAR)
    hours = float(re.search(r'([\d,.]+) hours of work', text).group(1).replace(',', ''))
    assert abs(hours - minutes / 60) < .051, (hours, minutes)
    came = asked(a, 'SELECT sum(cents) FROM cash_line WHERE pair_id IS NULL AND cents > 0 AND day BETWEEN ? AND ?',
                 *SCHOOL_YEAR)
    assert f'${came / 100:,.2f} came in' in text, came
    for heading in ('Eggs', 'Fish', 'Sales', 'Money', 'Work', 'Builds'):
        assert heading in text, heading
    # Each sale of these days that was counted, none of the days before; and the sum of them.
    lines = text_of(f'{a}/season.pdf').splitlines()
    first = next(i for i, line in enumerate(lines) if line.split() == ['Day', 'Sale', 'Taken'])
    last = next(i for i in range(first, len(lines)) if lines[i].split()[:1] == ['Together'])
    days = [line for line in lines[first + 1:last] if re.match(r'\s*[A-Z][a-z]{2} \d+, \d{4} ', line)]
    held = asked(a, 'SELECT count(*) FROM sale_day WHERE day BETWEEN ? AND ? AND id IN (SELECT sale_id FROM cash_count)',
                 *SCHOOL_YEAR)
    assert len(days) == held > 0, (len(days), held)
    sums = [round(100 * float(line.split('$')[1].replace(',', ''))) for line in [*days, lines[last]]]
    assert sum(sums[:-1]) == sums[-1], sums


@case
def packet_says_the_hours_of_its_student(a, b):
    text = spoken(f'{a}/packet.pdf')
    name = re.search(r'Packet of (.+?\.)', text).group(1)
    minutes = asked(a, 'SELECT sum(minutes) FROM work_span WHERE day BETWEEN ? AND ? AND person_id ='
                       ' (SELECT id FROM person WHERE name = ?)' + NOT_CORRECTED, *SCHOOL_YEAR, name)
    assert f'{int(minutes) // 60}:{int(minutes) % 60:02} hours and minutes' in text, (name, minutes)
    assert 'Eggs of the whole farm, by month' in text


@case
def packet_contents_name_their_pages(a, b):
    """The number beside a section is the page on which it stands."""
    whole = text_of(f'{a}/packet.pdf')
    pages = whole.split('\f')
    rows = re.findall(r'^\s*(\d+)\s{2,}(\S.*?\S)\s{2,}(\d+)\s*$', pages[0], re.M)
    assert [int(number) for number, _, _ in rows] == list(range(1, len(rows) + 1)) and len(rows) > 8, rows
    assert [int(page) for _, _, page in rows] == sorted(int(page) for _, _, page in rows), rows
    for number, title, page in rows:
        heads = [line.strip() for line in pages[int(page) - 1].splitlines()]
        assert title in heads, (number, title, page)
    assert 1 < int(rows[-1][2]) <= len(pages)


@case
def week_of_hours_is_the_log(a, b):
    text = text_of(f'{a}/hours-week.pdf')
    lines = [line.split() for line in text.splitlines() if line.strip().startswith('Sum')]
    minutes = [int(h) * 60 + int(m) for h, m in (cell.split(':') for cell in lines[0][1:])]
    assert sum(minutes[:-1]) == minutes[-1] > 0, lines
    monday = SCHOOL_YEAR[1] - datetime.date(2026, 3, 3).weekday()
    log = asked(a, 'SELECT sum(minutes) FROM work_span WHERE day BETWEEN ? AND ?' + NOT_CORRECTED, monday, monday + 6)
    assert minutes[-1] == int(log), (minutes, log)


@case
def same_farm_same_bytes(a, b):
    names = sorted(n for n in os.listdir(a) if not n.endswith(('.steading', '.copies')))
    assert len(names) > 13 and names == sorted(n for n in os.listdir(b) if not n.endswith(('.steading', '.copies'))), names
    for name in names:
        assert open(f'{a}/{name}', 'rb').read() == open(f'{b}/{name}', 'rb').read(), name


def main():
    show = sys.argv[1]
    print(f'1..{len(cases)}')
    failed = 0
    with tempfile.TemporaryDirectory() as a, tempfile.TemporaryDirectory() as b:
        make(show, a)
        make(show, b)
        for number, function in enumerate(cases, 1):
            name = '/paper/read-back/' + function.__name__.replace('_', '-')
            try:
                function(a, b)
                print(f'ok {number} {name}')
            except Exception as error:
                failed += 1
                print(f'not ok {number} {name}')
                for line in f'{type(error).__name__}: {error}'.splitlines()[:12]:
                    print(f'# {line[:400]}')
    return 1 if failed else 0


sys.exit(main())
