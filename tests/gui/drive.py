"""Drive the real window as a person does: by names, by keys, by the pointer.

Use it under tests/gui/run.sh, with the system's /usr/bin/python3:

    w = Window('build/src/steading', 'demo.steading')
    w.fill('Eggs', '22')
    w.press('push button', 'Record eggs')
    assert w.close() == 0

Nothing here sleeps for luck: wait for a fact with until().
"""
import filecmp
import os
import re
import signal
import subprocess
import sys
import tempfile
import time
import traceback

import pyatspi
from gi.repository import Atspi, GLib

Atspi.set_timeout(10000, 30000)    # ms; the default of 800 is too short for a busy machine

# What a newer bus and a newer GTK call otherwise.
OLDER = {'button': 'push button', 'toggle button': 'push button'}
Atspi.Accessible.getRoleName = lambda node: OLDER.get(node.get_role_name(), node.get_role_name())

# Of two labels in its own window of keys, the toolkit says that they are less than nothing wide.
ITS_OWN = '(label) reported min width -4'

SPOKEN = ('push button', 'toggle button', 'check box', 'radio button', 'text', 'spin button',
          'slider', 'combo box', 'link', 'image', 'tree table', 'page tab', 'menu item')


def x(*words):
    return subprocess.check_output(['xdotool', *map(str, words)], text=True)


class Skip(Exception):
    """What a case needs is not to be had here."""


def is_newer(node):
    """Whether the program runs with GTK 4.10 or later."""
    return tuple(map(int, node.getApplication().get_toolkit_version().split('.')[:2])) >= (4, 10)


def extents(node):
    """Where a widget is, in its window's own coordinates.

    GTK 4.10 began to add up the places of the parents without what lies between the edge of a
    parent and its content, so that what is deep in a window is told to be elsewhere.
    """
    if is_newer(node):
        raise Skip('this GTK does not tell where a widget is on the screen')
    return node.queryComponent().getExtents(pyatspi.WINDOW_COORDS)


def until(test, seconds=30):
    """Return the first thing that test() finds; fail after so many seconds.

    A widget may go while the tree is walked: then the walk is begun again.
    """
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        try:
            found = test()
        except GLib.GError:
            found = None
        if found:
            return found
        time.sleep(.02)
    raise AssertionError(f'waited {seconds} s in vain')


class Window:
    """One started program and its window."""

    open = []                                      # those that a failed case may leave behind

    def __init__(self, *command, log=None):
        """log: a file for what the program says; the default is a temporary one."""
        self.strip = None
        self.out = open(log, 'w+') if log else tempfile.TemporaryFile('w+')
        self.process = subprocess.Popen(command, stdout=self.out, stderr=self.out,
                                        env=dict(os.environ, G_DEBUG='fatal-criticals'))
        Window.open.append(self)
        try:
            self.app = until(self.find_app, 30)
            until(lambda: self.find('frame') or self.find('dialog'), 30)
        except AssertionError:
            raise AssertionError('the window did not open:\n' + self.said()) from None
        # With a title: what the toolkit keeps beside the window has none, and may be gone at once.
        self.id = x('search', '--sync', '--onlyvisible', '--all', '--pid', self.process.pid, '--name', '.').split()[-1]
        self.focus()

    def find_app(self):
        assert self.process.poll() is None, 'the program ended:\n' + self.said()
        return next((a for a in pyatspi.Registry.getDesktop(0)
                     if a and a.get_process_id() == self.process.pid), None)

    def said(self):
        """What the program wrote to its output so far."""
        self.out.flush()
        self.out.seek(0)
        return self.out.read()

    def windows(self):
        """The program's windows on the screen.  A window that closes while they are
        looked for makes the search fail: then there is no answer yet."""
        found = subprocess.run(['xdotool', 'search', '--onlyvisible', '--pid', str(self.process.pid)],
                               text=True, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
        return found.stdout.split() if found.returncode == 0 else []

    # Finding ------------------------------------------------------------------

    def walk(self, node=None, rows=False):
        """Every node below; with rows also the up to 205 live rows of each table.

        What a stack does not show is hidden, and passed over as a screen reader does.
        """
        node = node or self.app
        yield node
        if node.getRoleName() == 'tree table' and not rows:
            return
        count = node.childCount
        if count and node != self.app and not node.getState().contains(pyatspi.STATE_VISIBLE):
            return
        for i in range(count):
            child = node.getChildAtIndex(i)
            if child is not None:
                yield from self.walk(child, rows)

    def find(self, role, name='', rows=False):
        """By how its name begins; “Why” is not “Why?”."""
        return next((n for n in self.walk(rows=rows)
                     if n.getRoleName() == role and n.name.startswith(name)
                     and not (name and n.name[len(name):].startswith('?'))), None)

    def wait(self, role, name='', rows=False):
        try:
            return until(lambda: self.find(role, name, rows))
        except AssertionError:
            seen = sorted({(n.getRoleName(), n.name) for n in self.walk(rows=rows) if n.name})
            raise AssertionError(f'no {role} named {name!r}; there are {seen}') from None

    def wait_words(self, words, rows=False):
        """Wait until some node's name holds these words; return the whole text.

        With rows the live rows of tables are read too, which takes seconds."""
        def found():
            return next((n.name for n in self.walk(rows=rows) if words in n.name), None)
        try:
            return until(found, 30)
        except AssertionError:
            raise AssertionError(f'nothing says {words!r}') from None

    def wait_row(self, words):
        """The same in a row of a table.  A newer GTK makes only the rows that can be seen: they are gone through."""
        def found():
            return next((n.name for n in self.walk(rows=True) if words in n.name), None)
        self.tab_to('table row')
        for key in ('Home', *['Page_Down'] * 20):
            self.keys(key)
            try:
                return until(found, 5)
            except AssertionError:
                pass
        return self.wait_words(words, rows=True)

    def focused(self):
        return next((n for n in self.walk(rows=True)
                     if n.getState().contains(pyatspi.STATE_FOCUSED)), None)

    # Doing --------------------------------------------------------------------

    def press(self, role, name):
        node = self.wait(role, name)
        # A newer GTK's menu button is two, of one name: the outer one does nothing.
        if node.queryAction().nActions == 0:
            node = node.getChildAtIndex(0)
        node.queryAction().doAction(0)

    def press_if(self, role, name):
        """Press it if it is there: a choice that goes once it was taken may be tried again."""
        node = self.find(role, name)
        if node is not None:
            node.queryAction().doAction(0)

    def press_for(self, button, role, name):
        """Press the button until what it opens is there: what is shown anew may lose a press."""
        for _ in range(3):
            if self.find(role, name) is None:
                self.press('push button', button)
            try:
                return until(lambda: self.find(role, name), 3)
            except AssertionError:
                pass
        return self.wait(role, name)

    def fill(self, name, text, role='text'):
        self.wait(role, name).queryEditableText().setTextContents(text)

    def read(self, name, role='text'):
        t = self.wait(role, name).queryText()
        return t.getText(0, t.characterCount)     # GTK 4.8: getText (0, -1) gives ''

    def value(self, name, role='slider'):
        return self.wait(role, name).queryValue().currentValue

    def hold_keys(self):
        """Without a window manager nobody gives the keys back when a window closes."""
        focus = subprocess.run(['xdotool', 'getwindowfocus', '-f'], text=True, stdout=subprocess.PIPE,
                               stderr=subprocess.DEVNULL).stdout.strip()
        windows = self.windows()
        if windows and focus not in windows:
            x('windowfocus', windows[-1])

    def keys(self, *keys):
        self.hold_keys()
        x('key', '--clearmodifiers', *keys)

    def tab_to(self, role):
        """Press Tab until a control of this role has the focus; each window has one of its own."""
        def there():                               # in a list, so that until() asks again only when a widget went
            return [any(n.getRoleName() == role and n.getState().contains(pyatspi.STATE_FOCUSED)
                        for n in self.walk(rows=True))]
        for _ in range(40):
            if until(there)[0]:
                return
            self.keys('Tab')
        raise AssertionError(f'Tab reaches no {role}')

    def type(self, text):
        self.hold_keys()
        x('type', '--delay', 5, text)

    def middle(self, role, name):
        """The middle of a widget, in the window's own coordinates."""
        e = extents(self.wait(role, name))
        return e.x + e.width // 2, e.y + e.height // 2

    def click(self, role, name):
        try:
            x('mousemove', '--window', self.id, *self.middle(role, name), 'click', 1)
        except Skip:
            self.act_by_tab(self.wait(role, name))

    def act_by_tab(self, node):
        """What a click would do, where it cannot be told where to click: the keys go there, a button is pressed."""
        if node.getRoleName() == 'list item':
            self.act_in_list(node)
            return
        is_button = node.getRoleName() in ('push button', 'check box', 'radio button', 'link', 'combo box')
        for _ in range(200):
            if any(n.getState().contains(pyatspi.STATE_FOCUSED) for n in self.walk(node)):
                if is_button:
                    self.keys('space')
                    self.wait_list(node)
                return
            self.keys('Tab')
        if not is_button:
            raise AssertionError(f'Tab does not reach {node.getRoleName()} {node.name!r}')
        node.queryAction().doAction(0)

    def act_in_list(self, node):
        """A list is one stop of Tab; arrows move in it."""
        rows = [n for n in map(node.parent.getChildAtIndex, range(node.parent.childCount))
                if n is not None and n.getState().contains(pyatspi.STATE_VISIBLE)]
        for _ in range(200):
            if self.has_keys(node.parent, 'list item'):
                break
            self.keys('Tab')
        self.keys('Home', *['Down'] * rows.index(node))
        until(lambda: self.has_keys(node, 'list item'))
        self.keys('Return')

    def click_at_once(self, *targets):
        """Click one after the other without a moment between: the program is held until all clicks wait for it."""
        places = [self.middle(role, name) for role, name in targets]
        self.process.send_signal(signal.SIGSTOP)
        try:
            for place in places:
                x('mousemove', '--window', self.id, *place, 'click', 1)
        finally:
            self.process.send_signal(signal.SIGCONT)

    def choose_file(self, title, path):
        """Give a path to the file chooser that GTK shows where there is no portal."""
        def top():
            return next((t for t in map(self.app.getChildAtIndex, range(self.app.childCount))
                         if t is not None and t.name == title), None)

        def there():
            return top() is not None

        def entry():
            return next((n for n in self.walk(until(top)) if n.getRoleName() == 'text'
                         and n.getState().contains(pyatspi.STATE_FOCUSED)), None)

        until(there)
        window = x('search', '--sync', '--name', title).split()[-1]
        x('windowfocus', '--sync', window)
        # A slash opens the entry.  What is typed key by key may meet what a newer GTK completes meanwhile.
        self.type('/')
        until(entry).queryEditableText().setTextContents(path)
        self.keys('Return')
        for _ in range(20):                        # the first Return may only end the completion
            # A second one too early would be pressed in the window that comes next.
            patience = time.monotonic() + 2
            while there() and time.monotonic() < patience:
                time.sleep(.05)
            if not there():
                break
            if subprocess.run(['xdotool', 'windowfocus', window], stderr=subprocess.DEVNULL).returncode != 0:
                break                              # it closed just now
            self.keys('Return')
        x('windowfocus', until(self.windows)[-1])

    def save_file(self, title, path):
        """Give a path to the file chooser that saves, in the entry where the name is proposed."""
        def chooser():
            return next((top for top in map(self.app.getChildAtIndex, range(self.app.childCount))
                         if top is not None and top.name == title), None)

        def part(role, names):
            return next((n for n in self.walk(until(chooser)) if n.getRoleName() == role and n.name in names), None)

        until(lambda: part('text', ('Name:',))).queryEditableText().setTextContents(path)
        until(lambda: part('push button', ('Save', 'Save Save'))).queryAction().doAction(0)
        until(lambda: chooser() is None)

    def wait_list(self, node):
        """Of a drop-down, or the button in it: until its list has the keys.

        In a long list they go to what looks in it first, or at once to a line, and from there in a newer GTK not
        to the same line each time: so they are put on the first one.
        """
        combo = next((n for n in (node, node.parent) if n is not None and n.getRoleName() == 'combo box'), None)
        if combo is None:
            return
        until(lambda: self.has_keys(combo, 'list item', 'entry'))
        if any(n.getRoleName() == 'entry' for n in self.walk(combo)):
            if self.has_keys(combo, 'entry'):
                self.keys('Down')
                until(lambda: self.has_keys(combo, 'list item'))
            self.keys('Home')
        until(lambda: self.has_keys(combo, 'list item'))

    def has_keys(self, node, *roles):
        """Whether a widget of one of these roles in the node has the keys."""
        return any(n.getRoleName() in roles and n.getState().contains(pyatspi.STATE_FOCUSED) for n in self.walk(node))

    def drag(self, role, name, dx, dy=0, steps=10):
        cx, cy = self.middle(role, name)
        x('mousemove', '--window', self.id, cx, cy, 'mousedown', 1)
        for i in range(1, steps + 1):
            x('mousemove', '--window', self.id, cx + dx * i // steps, cy + dy * i // steps)
            time.sleep(.02)
        x('mouseup', 1)

    def fits(self):
        """Whether the window is no larger than the screen; at less it would be cut off."""
        width, height = map(int, x('getdisplaygeometry').split())
        found = dict(re.findall(r'(WIDTH|HEIGHT)=(\d+)', x('getwindowgeometry', '--shell', self.id)))
        return int(found['WIDTH']) <= width and int(found['HEIGHT']) <= height

    def is_pressed(self, role, name):
        return any(n.getRoleName() == role and n.name.startswith(name)
                   and n.getState().contains(pyatspi.STATE_PRESSED) for n in self.walk())

    def posts(self):
        """The posts of the strip, left to right; found once, since a walk through all places takes long."""
        if self.strip is None:
            self.strip = until(lambda: next((n for n in self.walk() if n.name == 'Places'), None), 30)
        return [self.strip.getChildAtIndex(i) for i in range(self.strip.childCount)]

    def is_at(self, place):
        return any(post.name.split(',')[0] == place and post.getState().contains(pyatspi.STATE_PRESSED)
                   for post in self.posts())

    def place(self, name):
        """Go to a place by its key, whatever number it has, and wait until the strip says that we are there."""
        names = until(lambda: [post.name.split(',')[0] for post in self.posts()])
        self.keys(f'alt+{names.index(name) + 1}')
        until(lambda: self.is_at(name), 30)

    # Looking ------------------------------------------------------------------

    def fit(self):
        """Give the window the whole screen: there is no window manager to do it."""
        x('windowmove', self.id, 0, 0, 'windowsize', '--sync', self.id,
          *x('getdisplaygeometry').split())
        self.focus()

    def focus(self):
        """Keys go to the window; on a busy machine it may not be on the screen yet."""
        until(lambda: subprocess.run(['xdotool', 'windowfocus', '--sync', str(self.id)],
                                     stderr=subprocess.DEVNULL).returncode == 0)

    def shot(self, name):
        """Save the screen as it is once two looks at it are the same."""
        with tempfile.TemporaryDirectory() as folder:
            looks = [os.path.join(folder, n) for n in ('a.png', 'b.png')]

            def look(path):
                subprocess.check_call(['import', '-window', 'root', '-define',
                                       'png:exclude-chunks=date,time', path])

            look(looks[0])

            def still():
                time.sleep(.15)
                look(looks[1])
                same = filecmp.cmp(*looks, shallow=False)
                os.replace(looks[1], looks[0])
                return same

            until(still)
            subprocess.check_call(['cp', looks[0], name])

    def nameless(self, top=None):
        """Controls that a screen reader cannot tell apart, in all windows or in that one; this must be empty."""
        def controls(node):
            yield node
            role = node.getRoleName()
            if node != self.app and not node.getState().contains(pyatspi.STATE_VISIBLE):
                return
            if role == 'tree table':
                return
            # What a combo box shows is read as its value: its parts need no names.
            parts = range(node.childCount)
            if role == 'combo box':
                yield from filter(None, map(node.getChildAtIndex, parts))
                return
            for child in filter(None, map(node.getChildAtIndex, parts)):
                yield from controls(child)

        return [(n.getRoleName(), n.name) for n in controls(top or self.app) if n.getRoleName() in SPOKEN
                and n.getState().contains(pyatspi.STATE_VISIBLE)
                and re.match(r'^(\s*|_.*|(Gtk|Stead)[A-Z]\w*)$', n.name)]

    # Leaving ------------------------------------------------------------------

    def kill(self):
        """End the program without a word, as a power cut would."""
        self.process.kill()
        self.process.wait(30)

    def ask_to_close(self):
        act = self.wait('frame').queryAction()
        names = [act.getName(i) for i in range(act.nActions)]
        try:
            act.doAction(names.index('window.close'))
        except Exception:                          # it may be gone before it answers
            if self.process.poll() is None and 'window.close' not in names:
                raise

    def close(self, leaving=False):
        """Close the window as a person does; return the program's status.  @leaving what is typed and not saved."""
        self.ask_to_close()
        if leaving:
            self.wait_words('is not saved yet')
            self.ask_to_close()
        return self.process.wait(30)


def run_cases(*cases):
    """Run functions named test_…, in order, and report in TAP; exit with the outcome.

    What the toolkit warns of is a fault too.
    """
    print(f'1..{len(cases)}', flush=True)
    bad = 0
    for number, case in enumerate(cases, 1):
        name = '/gui/' + case.__name__.removeprefix('test_').replace('_', '-')
        try:
            case()
            warnings = [line for window in Window.open for line in window.said().splitlines()
                        if 'Gtk-WARNING' in line and ITS_OWN not in line]
            assert not warnings, '\n'.join(warnings)
            print(f'ok {number} {name}', flush=True)
        except Skip as reason:
            print(f'ok {number} {name} # SKIP {reason}', flush=True)
        except Exception:                          # report and go on: the rest still tells
            bad += 1
            print(f'not ok {number} {name}')
            print('# ' + traceback.format_exc().strip().replace('\n', '\n# '), flush=True)
        for window in Window.open:                 # a second start would wake the first one
            if window.process.poll() not in (None, 0, -9):
                print('# the program said: ' + window.said().strip().replace('\n', '\n# '), flush=True)
            window.kill()
        Window.open.clear()
    sys.exit(bad > 0)
