"""The keyboard alone: Tab from control to control, and each one on the way must tell what it is.

    k = Keyboard(w)
    k.tab_to('slider', 'Price, $')
    k.press('Right')
"""
import re
import time

import pyatspi
from gi.repository import GLib

# What a screen reader can say and a person can do something with.
ROLES = ('push button', 'toggle button', 'check box', 'radio button', 'text', 'entry', 'spin button', 'slider', 'combo box',
         'image', 'link', 'label', 'tree table', 'table row', 'table cell', 'list item', 'list box', 'page tab', 'menu item',
         'column header', 'calendar', 'scroll pane', 'table column header', 'heading')
NAMELESS = re.compile(r'^(\s*|_.*|(Gtk|Stead)[A-Z]\w*)$')


class Keyboard:
    """Follows where the focus goes by the events that a screen reader listens to."""

    def __init__(self, window):
        self.window = window
        self.came = []
        self.passed = []           # (role, name) of all that had the focus
        self.faults = []
        pyatspi.Registry.registerEventListener(self.focused_cb, 'object:state-changed:focused')

    def close(self):
        pyatspi.Registry.deregisterEventListener(self.focused_cb, 'object:state-changed:focused')

    def focused_cb(self, event):
        if event.detail1:
            self.came.append(event.source)

    def pump(self):
        while GLib.MainContext.default().iteration(False):
            pass

    def press(self, key, seconds=2):
        """Press a key; return what has the focus then, None if it stayed where it was."""
        self.pump()
        self.came.clear()
        self.window.keys(key)
        end = time.monotonic() + seconds
        while not self.came and time.monotonic() < end:
            self.pump()
            time.sleep(.01)
        if not self.came:
            return None
        node = self.came[-1]
        self.judge(node)
        return node

    def judge(self, node):
        role, name = node.getRoleName(), node.name
        if role == 'list item' and not name:                # of a drop-down: what is in it is read
            name = next((n.name for n in self.window.walk(node) if n != node and n.name), '')
        self.passed.append((role, name))
        if role not in ROLES or NAMELESS.match(name):
            self.faults.append((role, name, 'cannot be told apart'))
        elif role == 'image' and not node.description:
            self.faults.append((role, name, 'has no sentence'))
        elif role in ('slider', 'spin button') and 'Value' not in pyatspi.utils.listInterfaces(node):
            self.faults.append((role, name, 'tells no value'))

    def tab_to(self, role, name, key='Tab', most=60):
        """Press Tab until a control of this role and beginning of its name has the focus."""
        for _ in range(most):
            node = self.press(key)
            if node is not None and node.getRoleName() == role and node.name.startswith(name):
                return node
        raise AssertionError(f'no {role} named {name!r} is reached; passed {self.passed[-most:]}')
