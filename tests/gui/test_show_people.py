"""Show, people: a timer that ran past midnight, consent that is given and ends, a name that a role takes the place of,
and names in any script on the screen, on paper and in a workbook."""
import datetime
import os
import sqlite3
import subprocess
import unicodedata

import openpyxl
from drive import Window, run_cases, until
from farm import Farm, PROGRAM

NAME = 'Devon K.'
CAPTION = 'The corners of the sheep pen'


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Show')
    return w


def change(farm, sql, *values):
    with sqlite3.connect(farm.path) as db:
        db.execute(sql, values)


def choose(w, name):
    """Find a person by the keyboard: the class list then has that row chosen."""
    w.focus()
    w.keys('ctrl+k')
    w.type(name)
    w.wait_words(f'{name}, Person')
    w.keys('Return')
    w.wait('push button', 'Change person')


def start(w):
    w.press_for('Start a timer', 'combo box', 'Who works')
    w.click('combo box', 'Who works')
    w.keys('Down', 'Return')
    w.press('push button', 'Start it')


def test_timer_past_midnight():
    """Row HRS-17 of the reference: 21:50 to 2:20 less 20 minutes are 4.1667 hours; they are of the first day."""
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'Hours')
    start(w)
    who = until(lambda: farm.rows('SELECT p.name FROM work_timer t JOIN person p ON p.id = t.person_id'))[0]
    w.press('push button', f'Break: {who}')
    until(lambda: farm.rows('SELECT paused_at IS NOT NULL FROM work_timer') == ['1'])
    assert w.close() == 0
    # While the window is closed, the night before last: the timer is kept in the farm.
    evening = int(farm.rows("SELECT unixepoch ('now', 'start of day', '-2 days', '+21 hours', '+50 minutes')")[0])
    change(farm, 'UPDATE work_timer SET started_at = ?, paused_at = ?, break_minutes = 20', evening, evening + 270 * 60)
    w = opened(farm)
    w.press('push button', 'Hours')
    w.wait_words(f'{who} has a break')
    w.press('push button', f'Stop: {who}')
    until(lambda: farm.rows('SELECT count (*) FROM work_timer') == ['0'])
    assert farm.rows("SELECT date (day * 86400, 'unixepoch') = date ('now', '-2 days'), minutes, break_minutes,"
                     f' to_at - from_at FROM work_span WHERE from_at = {evening}') == ['1|250.0|20.0|16200']
    # One that somebody forgot is no work.
    start(w)
    until(lambda: farm.rows('SELECT count (*) FROM work_timer') == ['1'])
    assert w.close() == 0
    change(farm, 'UPDATE work_timer SET started_at = started_at - 17 * 3600')
    w = opened(farm)
    w.press('push button', 'Hours')
    w.press('push button', 'Stop: ')
    w.wait_words('somebody forgot to stop it')
    w.press('push button', 'Drop: ')
    until(lambda: farm.rows('SELECT count (*) FROM work_timer') == ['0'])
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


def test_clock_change():
    """Clocks go back an hour on the first Sunday of November (15 U.S.C. 260a): from 12:30 to 2:30 that night are 3 hours."""
    today = datetime.date.today()
    nights = (next(day for day in (datetime.date(year, 11, number) for number in range(1, 8)) if day.weekday() == 6)
              for year in (today.year, today.year - 1))
    night = next(day for day in nights if day <= today)
    farm = Farm()
    before = farm.rows('SELECT coalesce (max (id), 0) FROM work_span')[0]
    os.environ['TZ'] = 'America/New_York'
    try:
        w = opened(farm)
        w.press('push button', 'Hours')
        w.press_for('Enter hours…', 'combo box', 'Who worked')
        w.click('combo box', 'Who worked')
        w.keys('Down', 'Return')
        w.fill('Day', night.isoformat())
        w.fill('From', '12:30 am')
        w.fill('Until', '2:30 am')
        w.fill('What was done', 'Night watch')
        w.press('push button', 'Record hours')
        until(lambda: farm.rows(f'SELECT minutes FROM work_span WHERE id > {before} LIMIT 1') == ['180.0'])
        assert farm.rows(f"SELECT DISTINCT date (day * 86400, 'unixepoch') FROM work_span WHERE id > {before}") == [str(night)]
        assert w.close() == 0
    finally:
        os.environ['TZ'] = 'UTC'
    farm.verify()


DUTIES = 'SELECT count (*), (SELECT count (*) FROM rota_turn) FROM duty'


def test_a_duty_is_renamed_and_removed():
    """What a duty is called counts for all its turns; one that nobody does goes with them, and comes back by Undo."""
    farm = Farm()
    first, second = farm.rows('SELECT name FROM duty ORDER BY name, id')[:2]
    turns = int(farm.rows(f"SELECT count (*) FROM rota_turn t JOIN duty d ON d.id = t.duty_id WHERE d.name = '{first}'")[0])
    duties, all_turns = map(int, farm.rows(DUTIES)[0].split('|'))
    w = opened(farm)
    w.press('push button', 'Rota')
    w.press_for('Duties…', 'text', 'Name of the duty')
    until(lambda: w.read('Name of the duty') == first)
    w.wait_words('of the rota')
    w.fill('Name of the duty', second)
    w.press('push button', 'Save the duty')
    until(lambda: w.find('text', 'Name of the duty').description)           # the name is taken
    w.fill('Name of the duty', 'A duty to go')
    w.press('push button', 'Save the duty')
    until(lambda: farm.rows("SELECT count (*) FROM duty WHERE name = 'A duty to go'") == ['1'])
    w.press_for('Duties…', 'text', 'Name of the duty')
    until(lambda: w.read('Name of the duty') == 'A duty to go')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Remove the duty')
    until(lambda: farm.rows(DUTIES) == [f'{duties - 1}|{all_turns - turns}'])
    w.press('push button', 'Undo: Duty removed')
    until(lambda: farm.rows(DUTIES) == [f'{duties}|{all_turns}'])
    assert w.close() == 0
    farm.verify()


def packet(farm):
    """What the packet of the one on the picture says."""
    out = os.path.join(farm.folder.name, 'packet.pdf')
    subprocess.run([PROGRAM, '--document', 'packet', '--of', 'Pictures of Devon', '--out', out, farm.path], check=True)
    images = subprocess.check_output(['pdfimages', '-list', out], text=True).count(' image ')
    return images, subprocess.check_output(['pdftotext', '-layout', out, '-'], text=True)


def consent(w, farm, wanted):
    """Tick, or take the tick away, at what the signed paper allows; it stays on record either way."""
    choose(w, NAME)
    w.press('push button', 'Change person')
    w.click('check box', 'Pictures may be shown')
    w.press('push button', 'Save')
    until(lambda: farm.rows('SELECT ended_on IS NULL FROM consent c JOIN person p ON p.id = c.person_id'
                            f" WHERE p.name = '{NAME}' AND what = 'picture'") == [wanted])


def test_consent_given_and_ended():
    farm = Farm()
    change(farm, "UPDATE packet SET name = 'Pictures of Devon', person_id = (SELECT id FROM person WHERE name = ?)"
           ' WHERE with_pictures', NAME)
    images, text = packet(farm)
    assert images == 0 and CAPTION not in text and '1 picture is left out' in text, text[-2000:]
    w = opened(farm)
    consent(w, farm, '1')
    images, text = packet(farm)
    assert images == 1 and CAPTION in text, text[-2000:]
    consent(w, farm, '0')
    images, text = packet(farm)
    assert images == 0 and CAPTION not in text and '1 picture is left out' in text, text[-2000:]
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


def totals(farm):
    """Sums that the program tells, and those that another program reads out of the file; nobody's name."""
    def bare(found):
        if isinstance(found, dict):
            return {key: bare(value) for key, value in found.items() if not isinstance(value, str)}
        if isinstance(found, list):
            return sorted((bare(value) for value in found if not isinstance(value, str)), key=repr)
        return found

    told = {question: bare(farm.ask(question)) for question in ('hours', 'class', 'results', 'statement')}
    read = farm.rows('SELECT sum (minutes), count (*), count (DISTINCT person_id) FROM work_span')
    read += farm.rows('SELECT sum (eggs), sum (feed_kg), count (DISTINCT person_id) FROM batch_entry')
    return told, read + farm.rows('SELECT sum (cents), count (*) FROM cash_line')


def test_role_takes_the_place_of_a_name():
    farm = Farm()
    number = farm.rows(f"SELECT id FROM person WHERE name = '{NAME}'")[0]
    before = totals(farm)
    assert before[0]['hours'] and before[0]['statement']
    w = opened(farm)
    choose(w, NAME)
    w.press('push button', 'Replace a name')
    w.wait_words(f'The name “{NAME}” is taken out')
    w.press('push button', 'Replace the name')
    until(lambda: farm.rows(f'SELECT name FROM person WHERE id = {number}') != [NAME])
    role = farm.rows(f'SELECT name FROM person WHERE id = {number}')[0]
    assert role.startswith('Student '), role
    assert w.close() == 0
    with open(farm.path, 'rb') as file:
        assert NAME.encode() not in file.read()
    assert totals(farm) == before
    # Opened again, the class has the role where the name was, with its hours.
    w = opened(farm)
    choose(w, role)
    w.press('push button', 'Hours of this person')
    w.wait_words(role)
    assert w.find('combo box', 'Whose hours') is not None
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


# Right to left, letters with two marks, a picture that is three characters joined, and what a formula begins with.
SCRIPTS = ('مريم ع.', 'Trần Thị Ngọc Ánh', 'Ada 👩‍🌾🐔', '=SUM(A1:A9)')


def colored(paper):
    """How many dots of the first page, at 50 to the inch, are of a color."""
    page = paper.removesuffix('.pdf')
    subprocess.check_call(['pdftoppm', '-r', '50', '-png', '-l', '1', '-singlefile', paper, page])
    return float(subprocess.check_output(['convert', page + '.png', '-colorspace', 'HSL', '-channel', 'G', '-separate',
                                          '-threshold', '20%', '-format', '%[fx:mean*w*h]', 'info:'], text=True))


def test_names_in_any_script():
    farm = Farm()
    for number, name in enumerate(SCRIPTS):
        change(farm, 'UPDATE person SET name = ? WHERE id = (SELECT id FROM person ORDER BY id LIMIT 1 OFFSET ?)', name, number)
    w = opened(farm)
    for name in SCRIPTS:
        w.wait_row(name)
    w.press('push button', 'Exports')
    w.press_for('Export…', 'combo box', 'What to export')
    w.wait_words('by role and number')
    w.click('check box', 'Names of people')
    w.wait_words('by name')
    w.fill('Who gets it', 'District office')
    w.press('push button', 'Choose a place…')
    book = os.path.join(farm.folder.name, 'by name.xlsx')
    w.save_file('Where to export to', book)
    until(lambda: os.path.exists(book) and farm.rows('SELECT count (*) FROM release') == ['1'], 60)
    assert w.nameless() == []
    assert w.close() == 0
    cells = [cell for row in openpyxl.load_workbook(book)['People'].iter_rows() for cell in row]
    assert all(cell.data_type == 's' for cell in cells if cell.value in SCRIPTS)     # a text, never a formula
    assert {cell.value for cell in cells} >= set(SCRIPTS)
    # On paper the title holds each name whole; in the text the letters come back, joined as they are read.
    for number, name in enumerate(SCRIPTS):
        change(farm, 'UPDATE packet SET name = ?, person_id = (SELECT id FROM person ORDER BY id LIMIT 1 OFFSET ?)'
               ' WHERE with_pictures', f'Packet {number}', number)
        out = os.path.join(farm.folder.name, f'{number}.pdf')
        subprocess.run([PROGRAM, '--document', 'packet', '--of', f'Packet {number}', '--out', out, farm.path], check=True)
        assert name in subprocess.check_output(['pdfinfo', out], text=True), name
        text = unicodedata.normalize('NFKC', subprocess.check_output(['pdftotext', out, '-'], text=True))
        for word in name.split():
            assert not word[0].isalpha() or word.strip('.') in text, (word, text[:300])
        if number == 2 and subprocess.check_output(['fc-list', ':lang=und-zsye'], text=True):
            assert colored(out) > 30, colored(out)                                       # drawn, not boxed
        else:
            assert colored(out) == 0, colored(out)
    farm.verify()


def written(farm, name, text):
    path = os.path.join(farm.folder.name, name)
    with open(path, 'w', encoding='utf-8') as out:
        out.write(text)
    return path


def test_files_that_are_not_what_they_should_be():
    """A class list without names and a picture that is text: said so, and nothing is taken."""
    farm = Farm()
    before = farm.rows('SELECT (SELECT count (*) FROM person), (SELECT count (*) FROM picture)')
    w = opened(farm)
    w.press('push button', 'Import a class list')
    w.choose_file('Import a class list', written(farm, 'class.csv', 'Class of,Group\n2028,Early birds\n'))
    w.wait_words('The first row must name the columns: Name')
    w.keys('Escape')
    w.press_for('Journal', 'push button', 'Picture…')
    w.press('push button', 'Picture…')
    w.choose_file('Choose a picture', written(farm, 'pen.png', 'A text that was named a picture.'))
    w.wait_words('This file is no picture that can be read')
    assert farm.rows('SELECT (SELECT count (*) FROM person), (SELECT count (*) FROM picture)') == before
    assert w.close() == 0
    farm.verify()


run_cases(test_files_that_are_not_what_they_should_be,
          test_timer_past_midnight, test_a_duty_is_renamed_and_removed, test_clock_change,
          test_consent_given_and_ended, test_role_takes_the_place_of_a_name,
          test_names_in_any_script)
