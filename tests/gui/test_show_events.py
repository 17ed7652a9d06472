"""An event entered, its list of what is lacking, its packet looked at and saved, and all of it there again."""
import os
import subprocess
import tempfile

from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Show')
    return w


def number(farm, sql):
    return int(farm.rows(sql)[0])


def test_event_to_packet():
    farm = Farm()
    before = number(farm, 'SELECT count(*) FROM event')
    w = opened(farm)
    w.press('push button', 'Events')
    w.press('push button', 'New event…')
    w.wait('text', 'Name of the event')
    w.fill('Name of the event', 'Test contest')
    w.press('push button', 'Save event')
    w.wait_words('Enter the day of the event.')
    w.fill('Day', farm.rows("SELECT date('now', '+9 days')")[0])
    w.press('push button', 'Save event')
    until(lambda: number(farm, 'SELECT count(*) FROM event') == before + 1)
    until(lambda: number(farm, 'SELECT count(*) FROM event_need n JOIN event e ON e.id = n.event_id'
                               " WHERE e.name = 'Test contest'") > 3)
    assert w.nameless() == []
    assert w.close() == 0

    out = os.path.join(tempfile.mkdtemp(), 'packet.pdf')
    subprocess.run([PROGRAM, '--document', 'packet', '--of', 'Maya, this school year', '--out', out, farm.path],
                   check=True)
    text = subprocess.run(['pdftotext', '-layout', out, '-'], check=True, capture_output=True, text=True).stdout
    for words in ('Packet of Maya R.', 'Hours by activity', 'How figures were made', 'Collect, count and grade eggs'):
        assert words in text, words

    w = opened(farm)
    w.press('push button', 'Events')
    w.wait('image', 'Scores of practices')
    w.press('push button', 'Packets')
    w.wait_words('nothing is recorded for')
    w.press('push button', 'Figures and entries')
    w.wait_words('Hours worked', rows=True)
    w.wait('push button', 'Close')                 # there is nothing to cancel
    w.keys('Escape')
    assert w.close() == 0


run_cases(test_event_to_packet)
