"""Show, Exports: a whole farm out and in again is the same; names stay in unless asked for; removing is for good."""
import pathlib
import sqlite3

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


def test_calendar_names_nobody():
    """It asks for nothing, and writes no line into the log."""
    farm = Farm()
    path = beside(farm, 'days.ics')
    w = opened(farm)
    w.press('push button', 'Export…')
    w.wait('push button', 'Choose a place…')
    w.click('combo box', 'What to export')
    w.keys('Down', 'Down', 'Down', 'Down', 'Return')
    w.wait_words('of the next twelve weeks leave')
    w.press('push button', 'Choose a place…')
    w.save_file('Where to export to', str(path))
    until(path.exists, 60)
    assert path.read_bytes().startswith(b'BEGIN:VCALENDAR\r\nVERSION:2.0\r\n')
    assert rows_of(farm.path)['release'] == []
    assert w.close() == 0


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


run_cases(test_whole_farm_out_and_in, test_calendar_names_nobody, test_removing_names_the_copies)
