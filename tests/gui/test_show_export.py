"""Show, Exports: a whole farm out and in again is the same; names stay in unless asked for; removing is for good."""
import datetime
import pathlib
import re
import sqlite3
import subprocess

from drive import Window, run_cases, until
from farm import Farm, PROGRAM

NAME = 'Zephyrine Quillfeather'


def beside(farm, name):
    return pathlib.Path(farm.folder.name, name)


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Show')
    w.press('push button', 'Exports')
    w.wait('push button', 'Export…')
    return w


def rows_of(path):
    """Every row of every table but the steps of undo and the count of changes."""
    with sqlite3.connect(f'file:{path}?mode=ro', uri=True) as db:
        names = [row[0] for row in db.execute("SELECT name FROM sqlite_schema WHERE type = 'table'")]
        return {name: sorted(map(repr, db.execute(f'SELECT * FROM "{name}"'))) for name in names
                if name not in ('step', 'sqlite_sequence')}


def test_whole_farm_out_and_in():
    """The log of releases is written after the folder, so it alone may differ."""
    farm = Farm()
    folder, back = beside(farm, 'Out folder'), beside(farm, 'Back.steading')
    before = rows_of(farm.path)
    w = opened(farm)
    w.press('push button', 'Export…')
    w.wait_words('by role and number')             # what is put forward names nobody
    w.click('combo box', 'What to export')
    w.keys('Down', 'Down', 'Down', 'Down', 'Return')
    w.wait_words('by name')
    w.fill('Who gets it', 'District office')
    w.press('push button', 'Choose a place…')
    w.save_file('Where to export to', str(folder))
    until(lambda: (folder / 'folder.csv').exists(), 30)
    until(lambda: rows_of(farm.path)['release'], 60)
    with sqlite3.connect(f'file:{farm.path}?mode=ro', uri=True) as db:
        (what, whom), = db.execute('SELECT what, to_whom FROM release')
    assert whom == 'District office' and 'by name' in what, what
    w.press('push button', 'Take in a folder…')
    w.choose_file('Choose the file folder.csv in the folder', str(folder / 'folder.csv'))
    w.save_file('Where to keep the new farm', str(back))
    until(lambda: back.exists() and back.stat().st_size > 0, 30)
    after = rows_of(back)
    assert {name for name in before if before[name] != after[name]} == set()
    assert w.nameless() == []
    assert w.close() == 0


def things_of(path):
    """What a calendar holds, read by the rules of RFC 5545 alone: lines unfolded (3.1), TEXT unescaped (3.3.11)."""
    raw = path.read_bytes()
    assert raw.endswith(b'\r\n') and b'\n' not in raw.replace(b'\r\n', b'')
    assert max(map(len, raw.split(b'\r\n'))) <= 75
    lines = raw.replace(b'\r\n ', b'').decode().split('\r\n')[:-1]
    assert lines[0] == 'BEGIN:VCALENDAR' and lines[-1] == 'END:VCALENDAR'
    things, thing = [], None
    for line in lines[1:-1]:
        name, value = line.split(':', 1)
        if line == 'BEGIN:VEVENT':
            assert thing is None
            thing = {}
        elif line == 'END:VEVENT':
            things.append(thing)
            thing = None
        elif thing is not None:
            assert name not in thing, line
            thing[name] = re.sub(r'\\(.)', lambda m: '\n' if m[1] in 'nN' else m[1], value)
    assert thing is None
    for thing in things:
        day = 'DTSTART;VALUE=DATE' in thing
        form = '%Y%m%d' if day else '%Y%m%dT%H%M%SZ'
        start, end = (datetime.datetime.strptime(thing[key + (';VALUE=DATE' if day else '')], form)
                      for key in ('DTSTART', 'DTEND'))
        assert end > start, thing
        datetime.datetime.strptime(thing['DTSTAMP'], '%Y%m%dT%H%M%SZ')
        thing['day'] = start.date()
    assert len({thing['UID'] for thing in things}) == len(things) > 0
    return things


def test_calendar_names_nobody():
    """It asks for nothing, and writes no line into the log; what it holds is what is planned."""
    farm = Farm()
    people = farm.rows('SELECT name FROM person')
    planned = farm.rows("SELECT date (day * 86400, 'unixepoch') || '|' || name FROM (SELECT day, name FROM sale_day"
                        ' UNION ALL SELECT day, name FROM event) WHERE day BETWEEN'
                        " unixepoch ('now') / 86400 AND unixepoch ('now') / 86400 + 83")
    path = beside(farm, 'days.ics')
    w = opened(farm)
    w.press('push button', 'Export…')
    w.wait('push button', 'Choose a place…')
    w.click('combo box', 'What to export')
    w.keys('Down', 'Down', 'Return')
    w.wait_words('of the next twelve weeks leave')
    w.press('push button', 'Choose a place…')
    w.save_file('Where to export to', str(path))
    until(path.exists, 60)
    assert path.read_bytes().startswith(b'BEGIN:VCALENDAR\r\nVERSION:2.0\r\n')
    things = things_of(path)
    for line in planned:
        day, name = line.split('|', 1)
        assert [t for t in things if str(t['day']) == day and name in t['SUMMARY']], (day, name)
    assert planned and [name for name in people if name in path.read_text()] == []
    assert rows_of(farm.path)['release'] == []
    assert w.close() == 0


def test_packets_of_the_class():
    """All in one run: told beforehand, asked who gets them, written into the log; each names its own student alone."""
    farm = Farm()
    folder = beside(farm, 'Packets out')
    students = farm.rows("SELECT name FROM person WHERE role = 'student' AND left_on IS NULL ORDER BY name")
    others = int(farm.rows('SELECT count (*) FROM packet WHERE person_id IS NULL')[0])
    w = opened(farm)
    w.press('push button', 'Packets')
    w.press_for('Packets of the class…', 'push button', 'Choose a place…')
    w.wait_words(f'{len(students) + others} packets leave the farm, each with a name')
    w.press('push button', 'Choose a place…')      # who gets them is not said
    w.wait_words('Please fill this in.')
    assert rows_of(farm.path)['release'] == []
    w.fill('Who gets them', 'The judges')
    assert w.nameless() == []
    w.press('push button', 'Choose a place…')
    w.save_file('Folder for the packets of the class', str(folder))
    until(lambda: len(list(folder.glob('*.pdf'))) == len(students) + others, 120)
    w.wait_words('packets are in the folder')
    assert farm.rows('SELECT to_whom FROM release') == ['The judges']
    assert farm.rows('SELECT count (*) FROM release_person') == [str(len(students))]
    assert {path.stat().st_mode & 0o777 for path in folder.glob('*.pdf')} == {0o600}
    chosen = 'Kai N.'                              # who has no packet that was made beforehand
    text = subprocess.check_output(['pdftotext', folder / f"{chosen.rstrip('.')}.pdf", '-'], text=True)
    assert chosen in text
    assert [name for name in students if name != chosen and name in text] == []
    assert w.close() == 0


def test_what_was_handed_out():
    """A packet on paper leaves the farm, too: who got it is written down by hand."""
    farm = Farm()
    w = opened(farm)
    w.press_for('Note what was handed out…', 'push button', 'Write it down')
    w.press('push button', 'Write it down')
    w.wait_words('Please fill this in.')
    w.fill('What was handed out', 'Packet of Maya R., on paper')
    w.fill('Who gets it', 'Her mother')
    assert w.nameless() == []
    w.press('push button', 'Write it down')
    until(lambda: farm.rows('SELECT what, to_whom FROM release') == ['Packet of Maya R., on paper|Her mother'])
    w.wait_words('Her mother', rows=True)
    assert w.close() == 0
    farm.verify()


def test_removing_names_the_copies():
    farm = Farm()
    with sqlite3.connect(farm.path) as db:
        db.execute("INSERT INTO person (name, role, left_on, keep_until) VALUES (?, 'student', 20000, 20100)", (NAME,))
    w = opened(farm)
    w.wait_words('should be removed now')
    w.press('push button', 'Remove people…')
    w.wait_words(NAME)
    w.press('push button', 'Remove for good')
    until(lambda: NAME.encode() not in pathlib.Path(farm.path).read_bytes(), 30)   # what the strip says may be gone again
    assert w.close() == 0
    assert NAME.encode() not in pathlib.Path(farm.path).read_bytes()
    copies = list(beside(farm, 'farm.copies').glob('*.steading'))
    assert copies and NAME.encode() in copies[0].read_bytes()
    w = opened(farm)
    w.press('push button', 'Remove people…')
    w.wait_words(copies[0].name)
    w.press('push button', 'Cancel')
    assert w.close() == 0


run_cases(test_whole_farm_out_and_in, test_calendar_names_nobody, test_packets_of_the_class,
          test_what_was_handed_out, test_removing_names_the_copies)
