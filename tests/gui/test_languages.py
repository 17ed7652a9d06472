"""No text of the window is without a translation, and none makes the window wider than the screen.

Every place and every view of it in a language that nobody speaks: two fifths longer, in
brackets (pseudo.py); once more from right to left.  What stands outside of brackets must
be something that the farm's people wrote.
"""
import os
import re
import sqlite3
import tempfile

import pyatspi

from drive import Window, run_cases, until
from farm import Farm, PROGRAM
from pseudo import Pseudo, outside

ROOT = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..')
VIEWS = {
    'Today': [], 'Raise': ['Weeks as table', 'Grading', 'Log', 'Plan and review', 'Chart'],
    'Make': ['Kitchen batches', 'Recipes'],
    'Check': ['Month', 'Coolers', 'Instruments', 'Limits of your own', 'Recall drill', 'Checklists'],
    'Price': ['Step by step', 'Which price', 'What if', 'All products together', 'How sure', 'Best use', 'Shared cost',
              'One product'],
    'Sell': ['Tally', 'Plan'], 'Fund': ['Bill', 'Money', 'Work', 'Afterwards', 'Why?', 'Plan'],
    'Keep': ['Receipts', 'Lots', 'Things that last', 'Cash book', 'Statements', 'Store room'],
    'Show': ['Hours', 'Rota', 'Trainings', 'Results', 'Skills', 'Events', 'Packets', 'Exports', 'Class'],
}
READ = ('label', 'heading', 'push button', 'toggle button', 'check box', 'radio button', 'text', 'spin button', 'slider',
        'image', 'link', 'page tab', 'menu item', 'list item', 'column header')
# The toolkit's own words, which it translates itself.
TOOLKIT = {'(None)', 'GtkLabel', 'Minimize', 'Minimize the window', 'Maximize', 'Maximize the window', 'Close',
           'Close the window', 'Restore', 'Restore the window', 'None', 'entry-clear-symbolic'}

folder = tempfile.TemporaryDirectory()
pseudo = Pseudo(ROOT, folder.name)
os.environ['STEAD_LOCALE_DIR'] = folder.name


def written(path):
    """Every text that the farm holds, the longest first."""
    db = sqlite3.connect(path)
    texts = set()
    for (table,) in db.execute("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'").fetchall():
        for row in db.execute(f'SELECT * FROM "{table}"'):
            texts.update(' '.join(value.split()) for value in row if isinstance(value, str) and len(value) > 1)
    db.close()
    return sorted(texts, key=len, reverse=True)


def left_over(text, own):
    rest = ' '.join(outside(text).split())
    if rest in TOOLKIT or not re.search('[A-Za-z]{3}', rest):
        return ''
    for words in own:
        if len(words) > 2 and words in rest:
            rest = rest.replace(words, ' ')
    return rest if re.search('[A-Za-z]{3}', rest) else ''


def faults_of(w, where, own):
    faults = [] if w.fits() else [f'{where}: the window is larger than the screen']
    for node in w.walk():
        if node.getRoleName() in READ:
            for text in (node.name, node.description or ''):
                if left_over(text, own):
                    faults.append(f'{where}: {node.getRoleName()}: {text[:120]}')
    return faults


def pressed(node):
    return node.getState().contains(pyatspi.STATE_PRESSED)


def go_round(w, look, views=True):
    """Call look for each place, and for each view of it."""
    for post, place in zip(w.posts(), VIEWS):
        w.keys(f'alt+{list(VIEWS).index(place) + 1}')
        until(lambda: pressed(post))
        look(place)
        for view in VIEWS[place] if views else ():
            button = w.wait('push button', pseudo(view))
            button.queryAction().doAction(0)
            until(lambda: pressed(button))
            look(f'{place}, {view}')


def opened(language):
    os.environ['LANGUAGE'] = language
    farm = Farm()
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.strip = until(lambda: next((n for n in w.walk() if n.name == pseudo('Places')), None))
    return w, written(farm.path)


def test_nothing_is_untranslated_or_too_long():
    w, own = opened('qps')
    faults = []
    go_round(w, lambda where: faults.extend(faults_of(w, where, own)))
    assert not faults, '\n'.join(faults)
    assert w.close() == 0, w.said()


def test_from_right_to_left():
    """The toolkit's words of a language that is written so decide the direction."""
    w, _ = opened('qps:he')
    today, following = (post.queryComponent().getExtents(pyatspi.WINDOW_COORDS).x for post in w.posts()[:2])
    assert today > following, 'the strip is not mirrored'
    faults = []
    go_round(w, lambda where: faults.extend([] if w.fits() else [where]), views=False)
    assert not faults, faults
    assert w.close() == 0, w.said()


def test_the_finder():
    assert left_over('[Dôñé ~] Maya R.', ['Maya R.']) == ''
    assert left_over('Done by Maya R.', ['Maya R.']).strip() == 'Done by'
    assert outside('[a [b] c] d [e]') == ' d '


try:
    run_cases(test_the_finder, test_nothing_is_untranslated_or_too_long, test_from_right_to_left)
finally:
    folder.cleanup()
