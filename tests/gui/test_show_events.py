"""An event entered, its list of what is lacking, its packet looked at and saved, and all of it there again."""
import os
import re
import subprocess
import tempfile
from itertools import islice

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
    w.wait_words('has something in each of its sections')
    w.press('push button', 'Figures and entries')
    w.wait_words('Hours worked', rows=True)
    w.wait('push button', 'Close')                 # there is nothing to cancel
    until(lambda: len(w.windows()) == 2)
    w.keys('Escape')
    until(lambda: len(w.windows()) == 1)
    assert w.close() == 0



def test_who_gets_a_packet():
    """A packet that is saved leaves the farm: who gets it is asked, and is in the log after opening again."""
    farm = Farm()
    out = os.path.join(tempfile.mkdtemp(), 'packet.pdf')
    whose, = farm.rows("SELECT person_id FROM packet WHERE name = 'Maya, this school year'")
    w = opened(farm)
    w.press('push button', 'Packets')
    w.press_for('Look at the packet', 'push button', 'Save as PDF…')
    w.press('push button', 'Save as PDF…')
    w.save_file('Save the document', out)
    w.wait_words('Who gets it?')
    assert os.path.exists(out)
    w.wait_words('It tells of: Maya R.')
    w.press('push button', 'Write it down')
    w.wait_words('Please fill this in.')
    assert number(farm, 'SELECT count (*) FROM release') == 0
    w.fill('Who gets it', 'The judges of the contest')
    assert w.nameless() == []
    w.press('push button', 'Write it down')
    until(lambda: farm.rows('SELECT to_whom FROM release') == ['The judges of the contest'])
    assert farm.rows('SELECT person_id FROM release_person') == [whose]
    w.press('push button', 'Save as PDF…')         # a draft that stays here
    w.save_file('Save the document', out + '.draft.pdf')
    until(lambda: len(w.windows()) == 3)
    w.press('push button', 'Cancel')
    until(lambda: len(w.windows()) == 2)
    w.keys('Escape')
    until(lambda: len(w.windows()) == 1)
    assert w.close() == 0
    assert number(farm, 'SELECT count (*) FROM release') == 1
    w = opened(farm)
    w.press('push button', 'Export')
    w.wait_words('The judges of the contest', rows=True)
    assert w.close() == 0
    farm.verify()

def test_marks_lead_to_their_entries():
    """From a figure to a line of the cash book, and to the lot of a movement."""
    farm = Farm()
    w = opened(farm)
    for words, place in (('Cash book: ', 'Show'), ('Store room: ', 'Keep')):
        w.place('Show')
        w.press('push button', 'Packets')
        w.press('push button', 'Figures and entries')
        table = w.wait('tree table', 'Figures and their entries')
        until(lambda: len(w.windows()) == 2)

        def first(has):                            # all of them may be hundreds
            names = list(islice((n.name for n in w.walk(table, rows=True)
                                 if n.getRoleName() == 'table row' and re.match(r'Mark \S+, ', n.name)), 3))
            return names and all(map(has, names))

        w.type('7')                                # a number is a mark
        until(lambda: first(lambda name: name.startswith('Mark 7, ')))
        w.keys('ctrl+a')
        w.type(words)
        until(lambda: first(lambda name: words in name))
        w.tab_to('table row')
        w.keys('Home', 'Return')
        until(lambda: w.is_at(place))
        if place == 'Show':                        # its card, over the list
            until(lambda: len(w.windows()) == 3)
            w.wait('push button', 'Cancel')
            w.keys('Escape')
            until(lambda: len(w.windows()) == 2)
            w.keys('Escape')
        else:                                      # its lot
            until(lambda: w.find('push button', 'Figures and entries') is None and len(w.windows()) == 2)
            w.keys('Escape')
        until(lambda: len(w.windows()) == 1)
        w.focus()
    assert w.close() == 0


def test_section_moved():
    farm = Farm()
    order = "SELECT section FROM packet_section WHERE packet_id = 1 ORDER BY position LIMIT 2"
    assert farm.rows(order) == ['cover', 'brief']
    w = opened(farm)
    w.press('push button', 'Packets')
    w.press('push button', 'Change the packet')
    w.wait('text', 'The work in brief')
    w.press('push button', 'Later: Cover and contents')
    w.press('push button', 'Save packet')
    until(lambda: farm.rows(order) == ['brief', 'cover'])
    assert w.nameless() == []
    assert w.close() == 0


def test_section_moved_by_keys():
    """By the keyboard alone: the list is one stop, Alt with an arrow moves a row and stays on it, Space leaves it out."""
    farm = Farm()
    order = "SELECT section FROM packet_section WHERE packet_id = 1 ORDER BY position LIMIT 2"
    w = opened(farm)
    w.press('push button', 'Packets')
    w.press('push button', 'Change the packet')
    w.wait('text', 'The work in brief')
    until(lambda: w.focused() is not None)

    def row():
        node = w.focused()
        return node.name if node is not None and node.getRoleName() == 'list item' else None

    stops = 0
    while row() is None:
        before = w.focused()
        w.keys('Tab')
        until(lambda: w.focused() not in (None, before))
        stops += 1
        assert stops < 30, 'Tab does not come to the list of sections'
    assert row() == 'In the packet: Cover and contents'
    w.keys('alt+Down')
    w.keys('Up')                                   # the one that it changed places with
    until(lambda: row() == 'In the packet: The work in brief')
    w.keys('Down')
    until(lambda: row() == 'In the packet: Cover and contents')
    w.keys('alt+Up', 'alt+Up')                     # there is nothing above the first
    w.keys('Down')
    until(lambda: row() == 'In the packet: The work in brief')
    w.keys('space')
    until(lambda: row() == 'Left out: The work in brief')
    before = w.focused()
    w.keys('Tab')
    until(lambda: w.focused() not in (None, before))
    assert row() is None, 'the list is more than one stop'
    w.press('push button', 'Save packet')
    until(lambda: farm.rows(order) == ['cover', 'plan'])
    assert w.close() == 0


def test_score_mended_and_removed():
    """A score that was typed wrong is mended, and one that was never won goes."""
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'Events')
    w.press('push button', 'Practice score…')
    w.wait('text', 'Points reached')
    w.press('push button', 'Remove score')
    w.wait_words('Choose the score to remove')
    last, points, out_of = farm.rows('SELECT s.id, s.score, s.out_of FROM event_score s JOIN event e ON e.id = s.event_id'
                                     ' ORDER BY e.day DESC, e.id, s.day DESC, s.id DESC LIMIT 1')[0].split('|')
    w.click('combo box', 'Which score')
    w.keys('Down', 'Return')
    until(lambda: float(w.read('Points to win') or 0) == float(out_of))
    w.fill('Points reached', '1')
    w.press('push button', 'Save score')
    until(lambda: farm.rows(f'SELECT score FROM event_score WHERE id = {last}') == ['1.0'])
    w.press('push button', 'Practice score…')
    w.wait('text', 'Points reached')
    w.click('combo box', 'Which score')
    w.keys('Down', 'Return')
    until(lambda: w.read('Points reached') == '1')
    w.press('push button', 'Remove score')
    until(lambda: farm.rows(f'SELECT count(*) FROM event_score WHERE id = {last}') == ['0'])
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


run_cases(test_event_to_packet, test_who_gets_a_packet, test_marks_lead_to_their_entries, test_section_moved,
          test_section_moved_by_keys, test_score_mended_and_removed)
