"""A window in the language that nobody speaks, a walk round it, and what it says in another."""
import atexit
import os
import re
import sqlite3
import subprocess
import tempfile

import pyatspi

from drive import Window, until
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
atexit.register(folder.cleanup)
pseudo = Pseudo(ROOT, folder.name)
os.environ['STEAD_LOCALE_DIR'] = folder.name
LOCALES = subprocess.check_output(['locale', '-a'], text=True).split()


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
    if rest in TOOLKIT or re.fullmatch(r'(Shift\+)?Ctrl\+.', rest) or not re.search('[A-Za-z]{3}', rest):
        return ''
    for words in own:
        if len(words) > 2 and words in rest:
            rest = rest.replace(words, ' ')
    return rest if re.search('[A-Za-z]{3}', rest) else ''


def untranslated(w, where, own, top=None):
    """What is said without a translation, in all windows or in that one."""
    return [f'{where}: {node.getRoleName()}: {text[:120]}' for node in w.walk(top) if node.getRoleName() in READ
            for text in (node.name, node.description or '') if left_over(text, own)]


def unfold(w):
    """Fold out how the figures were worked out, where a view tells it; return how many figures."""
    fold = w.find('push button', pseudo('Why? The figures worked out'))
    if fold is None:
        return 0
    if not fold.getState().contains(pyatspi.STATE_EXPANDED):
        fold.queryAction().doAction(0)
    rows = until(lambda: [n for n in w.walk(fold) if n.getRoleName() == 'push button' and n != fold])
    for row in rows:
        row.queryAction().doAction(0)
    return len(rows)


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


def opened(language, region='en_US'):
    """From glibc 2.37 on, nothing is translated in C.UTF-8, whatever LANGUAGE asks for: with a locale, if it is there."""
    os.environ['LANGUAGE'] = language
    if f'{region}.utf8' in LOCALES:
        os.environ['LC_ALL'] = f'{region}.UTF-8'
    farm = Farm()
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.strip = until(lambda: next((n for n in w.walk() if n.name == pseudo('Places')), None))
    return w, written(farm.path)
