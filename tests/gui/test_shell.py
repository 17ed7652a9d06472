"""The frame of the window: from nothing to a price, and back after a power cut.

usage: test_shell.py PROGRAM MAKE-BIG-FARM
"""
import fcntl
import os
import shutil
import subprocess
import sys
import tempfile
import time

import pyatspi

from drive import Window, run_cases, until, x
from portal import Portal

program = os.path.abspath(sys.argv[1])
make_big_farm = os.path.abspath(sys.argv[2])
folder = tempfile.mkdtemp()
demo = os.path.join(folder, 'demo.steading')
subprocess.check_call([program, '--demo', demo], stdout=subprocess.DEVNULL)


# The posts, left to right.
PLACES = ('Today', 'Raise', 'Make', 'Check', 'Price', 'Sell', 'Fund', 'Keep')


def copy_of_demo(name):
    path = os.path.join(folder, name)
    shutil.copy(demo, path)
    return path


def ask(question, farm):
    """The sentence that the program without a window gives for the same file."""
    return subprocess.check_output([program, '--ask', question, farm], text=True).split('\n')[0]


def pixel(name, at):
    return subprocess.check_output(['convert', name, '-format', f'%[hex:p{{{at}}}]', 'info:'], text=True).lower()


def ground(w):
    """The colour behind the cards."""
    picture = os.path.join(folder, 'ground.png')
    w.shot(picture)
    return pixel(picture, '10,400')


def is_chosen(w, post):
    return w.is_at(post.rstrip(','))


def find_or_do(w, words):
    """Type into the jump field, once it has the focus."""
    w.keys('ctrl+k')
    until(lambda: w.focused() is not None and w.focused().name.startswith('Find or do'))
    w.type(words)


def choose_save(w, title, path):
    """Answer the dialog that asks where to save."""
    w.wait_words(title)
    w.fill('Name:', path)
    w.press('push button', 'Save')


def test_from_nothing_to_a_price():
    """New farm, flock, product; then the power fails, and all is there."""
    home = os.environ['HOME']
    w = Window(program)
    w.fit()
    w.wait('push button', 'Look around the demo farm')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Start a new farm')
    w.wait('push button', 'Make the farm')
    assert w.nameless() == [], w.nameless()

    w.press('push button', 'Make the farm')             # nothing typed: told at the field, nothing made
    w.wait_words('Please fill this in.')
    w.fill('Name of the farm', 'Hill/Top Farm')
    path = os.path.join(home, 'Hill-Top Farm.steading')
    assert not os.path.exists(path)
    w.press('push button', 'Make the farm')
    w.wait_words('Step 2 of 3')
    assert os.path.exists(path)

    w.fill('Hens', '0')
    w.press('push button', 'Add the flock')
    w.wait_words('Enter one hen or more.')
    w.fill('Hens', '30')
    w.fill('Paid for one hen', '12.00')
    w.fill('Eggs collected today', '24')
    w.press('push button', 'Add the flock')
    w.wait_words('Step 3 of 3')
    w.fill('Bags of feed', '4')
    w.fill('Paid for all the feed', '78')
    w.fill('Egg cartons', '100')
    w.fill('Paid for all the cartons', '38')
    w.fill('Price for now', '4.50')
    w.press('push button', 'Finish')
    w.wait_words('the receipt needs a name')
    w.fill('Feed and cartons bought from', 'Lakeside Feed & Seed')
    w.press('push button', 'Finish')

    w.wait('push button', 'Today, ')
    w.wait_words('Hens: 24 eggs collected')
    w.kill()

    sentence = ask('price', path)
    assert '$4.50' in sentence, sentence
    w = Window(program, path)
    w.fit()
    w.wait_words('Hens: 24 eggs collected')
    w.place('Price')
    w.wait_words(sentence.split(',')[0])
    assert w.close() == 0, w.said()


def test_steps_can_be_skipped():
    w = Window(program)
    w.press('push button', 'Start a new farm')
    w.fill('Name of the farm', 'Bare Farm')
    w.press('push button', 'Make the farm')
    w.wait_words('Step 2 of 3')
    w.press('push button', 'Skip this step')
    w.wait_words('Step 3 of 3')
    w.press('push button', 'Skip this step')
    w.wait('push button', 'Today')
    w.wait_words('Nothing is due.')
    w.wait('push button', 'Go to Raise')
    w.wait('push button', 'New receipt')
    for place in ('Raise', 'Keep', 'Today'):
        w.press('push button', place + ',')
        until(lambda: is_chosen(w, place + ','))
        assert w.nameless() == [], w.nameless()
    w.press('push button', 'New product')                 # the first step leads to its form
    w.wait('push button', 'Cancel')
    assert w.close() == 0, w.said()


def test_a_line_is_recorded_undone_and_redone():
    farm = copy_of_demo('line.steading')
    w = Window(program, farm)
    w.fit()
    before = w.wait('push button', 'Today, ').name
    w.fill('What happened', '21 eggz')
    assert not w.wait('push button', 'Record').getState().contains(pyatspi.STATE_SENSITIVE)
    w.fill('What happened', 'Brown hens: 21 eggs, 1 cracked')
    w.wait_words('21 eggs')
    w.press('push button', 'Record')
    w.wait_words('Saved: 21 eggs')
    w.wait_words('Brown hens: 21 eggs collected')
    until(lambda: w.wait('push button', 'Today, ').name != before)
    w.keys('ctrl+z')
    w.wait_words('Undone: 21 eggs')
    until(lambda: w.wait('push button', 'Today, ').name == before)
    w.wait('push button', 'Redo: 21 eggs')
    w.keys('ctrl+shift+z')
    w.wait_words('Done again: 21 eggs')
    w.wait_words('Brown hens: 21 eggs collected')
    w.press('push button', 'Close this message')
    assert w.close() == 0, w.said()

    w = Window(program, farm)                            # the step can be undone after closing too
    w.fit()
    w.wait_words('Brown hens: 21 eggs collected')
    w.keys('ctrl+z')
    w.wait_words('Undone: 21 eggs')
    assert w.close() == 0, w.said()


def test_typed_by_keys_alone():
    """Down takes a completion, Return records what the line below says."""
    w = Window(program, copy_of_demo('keys.steading'))
    w.fit()
    until(lambda: w.focused() is not None and w.focused().name.startswith('What happened'))
    w.type('Brown hens: 17 eg')
    until(lambda: w.find('list item', '', rows=True) or w.find('list', 'Ways to go on'))
    w.keys('Down')
    w.keys('Return')
    until(lambda: w.read('What happened') not in ('Brown hens: 17 eg', ''))
    assert w.read('What happened').startswith('Brown hens: 17 egg'), w.read('What happened')
    w.keys('Escape')
    w.keys('Return')
    w.wait_words('Saved: 17 eggs')
    assert w.read('What happened') == ''
    assert w.close() == 0, w.said()


def test_the_key_takes_back_what_was_done_last():
    """Typing in the field first, the farm's step then; the key's typing does not come back."""
    w = Window(program, copy_of_demo('typing.steading'))
    w.fit()
    until(lambda: w.focused() is not None and w.focused().name.startswith('What happened'))
    w.type('Brown hens: 17 eggs')
    w.wait_words('17 eggs')
    w.keys('Return')
    w.wait_words('Saved: 17 eggs')
    w.type('22')
    until(lambda: w.read('What happened') == '22')
    w.keys('ctrl+z')
    until(lambda: w.read('What happened') == '')
    w.wait('push button', 'Undo: 17 eggs')
    w.keys('ctrl+z')
    w.wait_words('Undone: 17 eggs')
    assert w.read('What happened') == ''
    assert w.close() == 0, w.said()


def test_places_and_jump():
    w = Window(program, copy_of_demo('jump.steading'))
    w.fit()
    for number, name in enumerate(PLACES, 1):
        w.keys(f'alt+{number}')
        until(lambda: is_chosen(w, name + ','))
        assert w.nameless() == [], (name, w.nameless())
    find_or_do(w, 'brown')
    w.wait_words('Brown hens, Flock')
    w.keys('Return')
    until(lambda: is_chosen(w, 'Raise,'))
    find_or_do(w, 'zzzz')
    w.wait_words('Nothing has these words.')
    w.keys('Escape')
    find_or_do(w, 'new rec')
    w.wait_words('New receipt, Command')
    w.keys('Return')
    w.wait('text', 'From')
    w.keys('Escape')
    assert w.close() == 0, w.said()


def test_settings():
    farm = copy_of_demo('settings.steading')
    w = Window(program, farm)
    w.fit()
    assert ground(w).startswith('f4f3ef'), ground(w)
    w.keys('ctrl+comma')
    w.wait('text', 'Name of the farm')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Dark')
    w.fill('Name of the farm', 'Lake Farm')
    w.fill('on day', '40')
    w.press('push button', 'Save the settings')
    w.wait_words('This month has no such day.')
    w.fill('on day', '15')
    w.press('push button', 'Save the settings')
    w.wait_words('Saved: Settings of the farm.')
    until(lambda: w.find('frame', 'Lake Farm'))
    assert ground(w).startswith('161c23'), ground(w)
    w.keys('ctrl+z')
    until(lambda: w.find('frame', 'Ember Lake School Farm'))
    assert w.close() == 0, w.said()


def test_the_desktop_says_light_or_dark():
    """The choice is read from the settings portal, and followed."""
    with Portal(1) as portal:
        w = Window(program, copy_of_demo('portal.steading'))
        w.fit()
        w.wait('push button', 'Record')
        until(lambda: ground(w).startswith('161c23'))
        portal.change(2)
        until(lambda: ground(w).startswith('f4f3ef'))
        portal.change(1)
        until(lambda: ground(w).startswith('161c23'))
        assert w.close() == 0, w.said()


def test_people():
    w = Window(program, copy_of_demo('people.steading'))
    find_or_do(w, 'people')
    w.keys('Return')
    w.wait('push button', 'Forget this name')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Add')
    w.wait_words('Please fill this in.')
    w.fill('Name', 'Robin')
    w.press('push button', 'Add')
    w.wait_words('Saved: Person: Robin.')
    x('windowfocus', '--sync', w.windows()[-1])
    w.tab_to('table row')
    w.keys('End')                                         # a newer GTK makes only the rows that can be seen
    w.wait_words('Name Robin', rows=True)
    w.press('push button', 'Close')
    assert w.close() == 0, w.said()


def test_what_cannot_be_opened():
    """Each stands on a page of its own, and not one byte is changed."""
    text = os.path.join(folder, 'text.steading')
    with open(text, 'w') as f:
        f.write('Dear diary, today the hens laid well.\n' * 40)
    empty = os.path.join(folder, 'empty.steading')
    open(empty, 'w').close()
    damaged = copy_of_demo('damaged.steading')
    with open(damaged, 'r+b') as f:
        f.seek(4096)
        f.write(b'\xff' * 20000)
    gone = os.path.join(folder, 'gone.steading')
    for path, words in ((text, 'This file is not a farm'), (empty, 'This file is not a farm'),
                        (damaged, 'This farm file is damaged'), (gone, 'This farm')):
        before = open(path, 'rb').read() if os.path.exists(path) else None
        w = Window(program, path)
        w.wait_words(words)
        w.wait('push button', 'Try again')
        assert w.nameless() == [], w.nameless()
        assert w.close() == 0, w.said()
        assert (open(path, 'rb').read() if os.path.exists(path) else None) == before


def test_somebody_else_has_it():
    """Who comes second is told who has the farm, and may look; a mark left by a crash is no obstacle."""
    farm = copy_of_demo('shared.steading')
    mark = os.path.join(folder, '.shared.steading.in-use')
    with open(mark, 'w') as other:
        other.write('ana\nlab-3\n4711\n%d\n' % time.time())
        other.flush()
        fcntl.lockf(other, fcntl.LOCK_EX | fcntl.LOCK_NB)
        w = Window(program, farm)
        w.wait_words('ana opened this farm on the computer “lab-3”')
        w.wait('push button', 'Save a copy')
        w.place('Raise')
        assert w.close() == 0, w.said()
    assert os.path.exists(mark)
    w = Window(program, farm)
    w.fit()
    w.place('Today')
    w.fill('What happened', 'Brown hens: 25 eggs')
    w.press('push button', 'Record')
    w.wait_words('Saved: 25 eggs')
    assert w.close() == 0, w.said()
    assert not os.path.exists(mark)


def test_rescue():
    """What can be read of a damaged farm is opened as a new one, and what is lost is told."""
    farm = copy_of_demo('struck.steading')
    pages = subprocess.check_output(['sqlite3', farm, "SELECT pageno FROM dbstat WHERE name = 'batch_entry' "
                                     "AND pagetype = 'leaf' ORDER BY pageno"], text=True).split()
    with open(farm, 'r+b') as f:
        f.seek((int(pages[len(pages) // 2]) - 1) * 4096)
        f.write(b'\xff' * 4096)
    before = open(farm, 'rb').read()
    w = Window(program, farm)
    w.wait_words('This farm file is damaged')
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Rescue what can be read')
    choose_save(w, 'Rescue what can be read', os.path.join(folder, 'saved.steading'))
    w.wait_words('This is the rescued farm.')
    w.wait_words('could be read')
    w.keys('Escape')
    w.place('Raise')
    assert w.close() == 0, w.said()
    assert open(farm, 'rb').read() == before


def test_an_earlier_day():
    """A copy is made before the first change; going back brings the farm as it was."""
    farm = copy_of_demo('days.steading')
    before = ask('flock', farm)
    w = Window(program, farm)
    w.fit()
    w.fill('What happened', 'Brown hens: 25 eggs')
    w.press('push button', 'Record')
    w.wait_words('Saved: 25 eggs')
    assert os.path.isdir(os.path.join(folder, 'days.copies'))
    find_or_do(w, 'earlier')
    w.keys('Return')
    w.press('push button', 'Go back to')
    w.wait_words('The farm is as it was on that day.')
    assert w.find('push button', 'Record') is not None
    assert w.close() == 0, w.said()
    assert ask('flock', farm) == before
    assert any(n.startswith('days before') for n in os.listdir(folder)), os.listdir(folder)


def test_looking_at_an_earlier_day_changes_nothing():
    farm = copy_of_demo('look.steading')
    w = Window(program, farm)
    w.fit()
    w.fill('What happened', 'Brown hens: 25 eggs')
    w.press('push button', 'Record')
    w.wait_words('Saved: 25 eggs')
    find_or_do(w, 'earlier')
    w.keys('Return')
    w.press('push button', 'Look at')
    w.wait_words('It can only be read.')
    assert len([n for n in w.walk() if n.getRoleName() == 'frame']) == 2
    w.kill()


def test_one_window_a_farm():
    farm = copy_of_demo('one.steading')
    w = Window(program, farm)
    second = subprocess.run([program, farm], timeout=20)
    assert second.returncode == 0
    assert len([n for n in w.walk() if n.getRoleName() == 'frame']) == 1
    assert w.close() == 0, w.said()


def test_save_a_copy():
    farm = copy_of_demo('copied.steading')
    copy = os.path.join(folder, 'the copy.steading')
    w = Window(program, farm)
    w.fit()
    w.keys('ctrl+shift+s')
    choose_save(w, 'Save a copy of the farm', copy)
    w.wait_words('A copy was saved as the copy.steading.')
    assert w.close() == 0, w.said()
    assert ask('flock', copy) == ask('flock', farm)


def test_help_keys_and_about():
    w = Window(program, copy_of_demo('help.steading'))
    w.fit()
    w.place('Price')
    w.keys('F1')                                          # the page of the place in view
    w.wait('heading', 'How is one dozen costed?')
    x('windowfocus', '--sync', w.windows()[-1])
    until(lambda: w.focused() is not None and w.focused().name == 'Price')
    w.keys('Down')                                        # from page to page by the arrows
    w.wait('heading', 'How many should we bring?')
    assert w.nameless() == [], w.nameless()
    w.keys('Escape')
    until(lambda: not w.find('frame', 'Help'))
    w.focus()
    w.keys('ctrl+question')
    w.wait_words('Find or do')
    w.keys('Escape')
    w.keys('F10')
    w.wait_words('About Steading')
    w.keys('Escape')
    assert w.close() == 0, w.said()


def test_a_large_farm_is_shown_first_and_checked_then():
    large = os.path.join(folder, 'large.steading')
    subprocess.check_call([make_big_farm, large, '60000'], stdout=subprocess.DEVNULL)
    w = Window(program, large)
    w.wait('push button', 'Today,')
    until(lambda: not w.find('label', 'This large farm is being checked'))
    w.keys('ctrl+comma')
    w.wait('text', 'Name of the farm')
    w.fill('Name of the farm', 'Large Farm')              # once it was checked, changes are taken
    w.press('push button', 'Save the settings')
    w.wait_words('Saved: Settings of the farm.')
    assert w.close() == 0, w.said()

    # Pages of the log itself: much of the middle of the file is free, and nobody reads it.
    pages = subprocess.check_output(['sqlite3', large, "SELECT pageno FROM dbstat WHERE name = 'batch_entry' "
                                     "AND pagetype = 'leaf' ORDER BY pageno"], text=True).split()
    with open(large, 'r+b') as f:
        for page in pages[len(pages) // 2:][:50]:
            f.seek((int(page) - 1) * 4096)
            f.write(b'\xff' * 4096)
    w = Window(program, large)
    w.wait_words('This farm file is damaged')
    w.wait('push button', 'Open an earlier day')
    assert w.close() == 0, w.said()


def test_tab_goes_round():
    """Every control of a place once, in the order of reading, then the posts and the tools."""
    w = Window(program, copy_of_demo('tab.steading'))
    w.fit()
    for place in ('Keep', 'Today'):
        w.place(place)
        names = []
        for _ in range(40):
            now = until(w.focused)
            if names and now.name == names[0]:
                break
            names.append(now.name)
            w.keys('Tab')
            until(lambda: w.focused() is not None and w.focused().name != now.name)
        assert 5 < len(names) < 40, names
        assert len(set(names)) == len(names), names
        posts = [names.index(n) for n in names if n.split(',')[0] in PLACES]
        assert len(posts) == len(PLACES) and posts == sorted(posts), names
    for number in (2, 3):                                 # longer ones: past each control without a fault
        w.keys(f'alt+{number}', *['Tab'] * 50)
        assert w.focused() is not None
    assert w.close() == 0, w.said()


try:
    run_cases(test_from_nothing_to_a_price, test_steps_can_be_skipped,
              test_a_line_is_recorded_undone_and_redone, test_typed_by_keys_alone,
              test_the_key_takes_back_what_was_done_last, test_places_and_jump, test_settings,
              test_the_desktop_says_light_or_dark, test_people, test_what_cannot_be_opened, test_somebody_else_has_it, test_rescue, test_an_earlier_day,
              test_looking_at_an_earlier_day_changes_nothing, test_one_window_a_farm, test_save_a_copy,
              test_help_keys_and_about, test_a_large_farm_is_shown_first_and_checked_then,
              test_tab_goes_round)
finally:
    shutil.rmtree(folder, ignore_errors=True)
