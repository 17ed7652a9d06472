"""Every dialog that a button of the window opens, in the language that nobody speaks.

In each place and view each button is pressed whose label ends in an ellipsis.  What opens has
no text without a translation and no control without a name, is no larger than the screen, and
goes with Escape; since nothing was typed, nothing is offered to go on with.  Where nothing opens,
a row has to be chosen first, or it is shown in the window.
"""
import re

from drive import run_cases, until, x
from tongue import go_round, opened, pseudo, untranslated

FEWEST = 80                                        # dialogs in the demo farm: with less the walk is broken


def tops(w):
    return [top for top in map(w.app.getChildAtIndex, range(w.app.childCount)) if top is not None]


def openers(w):
    """The names of the buttons of what is shown that open something."""
    return [n.name for n in w.walk(tops(w)[0]) if n.getRoleName() == 'push button' and '…' in n.name]


def press(w, name):
    button = next((n for n in w.walk(tops(w)[0]) if n.getRoleName() == 'push button' and n.name == name), None)
    if button is not None:
        button.queryAction().doAction(0)
    return button is not None


def is_of_the_toolkit(w, top):
    """What chooses files is not ours to translate."""
    return any(n.name in ('On This Computer', 'Other Locations') for n in w.walk(top))


def size_faults(w, where):
    width, height = map(int, x('getdisplaygeometry').split())
    faults = []
    for window in w.windows():
        found = dict(re.findall(r'(WIDTH|HEIGHT)=(\d+)', x('getwindowgeometry', '--shell', window)))
        if int(found['WIDTH']) > width or int(found['HEIGHT']) > height:
            faults.append(f"{where}: {found['WIDTH']} × {found['HEIGHT']} is larger than the screen")
    return faults


def test_dialogs():
    w, own = opened('qps')
    seen, shown, faults = set(), set(), []

    def look(where):
        for name in openers(w):
            kind = where.split(',')[0], name.split(']')[0]      # “Change…” of one row stands for those of all
            if kind in seen:
                continue
            seen.add(kind)
            before = len(w.windows())
            if not press(w, name):
                continue
            try:
                until(lambda: len(w.windows()) > before, 2)
            except AssertionError:
                continue
            shown.add(kind)
            top = tops(w)[-1]
            if not is_of_the_toolkit(w, top):
                faults.extend(untranslated(w, f'{where}, {name}', own, top))
                faults.extend(f'{where}, {name}: no name: {control}' for control in w.nameless(top))
            faults.extend(size_faults(w, f'{where}, {name}'))
            w.keys('Escape')
            until(lambda: len(w.windows()) == before)
            if w.find('push button', pseudo('Go on with it')) is not None:
                faults.append(f'{where}, {name}: nothing was typed, and something to go on with is offered')

    go_round(w, look)
    assert not faults, '\n'.join(faults)
    assert len(shown) >= FEWEST, len(shown)
    assert w.close() == 0, w.said()


def test_menus_and_what_is_found():
    """Each line of a menu, and of what is found for a word, is translated and has a name."""
    w, own = opened('qps')
    faults = []

    def shown(role):
        return [n for n in w.walk() if n.getRoleName() == role]

    def look(where, role, fewest):
        until(lambda: len(shown(role)) >= fewest)
        faults.extend(untranslated(w, where, own))
        faults.extend(f'{where}: no name: {control}' for control in w.nameless())
        w.keys('Escape')
        until(lambda: not shown(role))

    w.keys('F10')
    look('the menu', 'menu item', 10)
    w.keys('ctrl+k')
    look('what can be done', 'list item', 5)
    w.keys('ctrl+k')
    w.type('o')
    look('what is found', 'list item', 2)
    w.keys('alt+5')
    w.press('push button', pseudo('More about the chart'))
    look('the menu of the chart', 'menu item', 4)
    w.keys('alt+8')
    w.press('push button', pseudo('Statements'))
    w.press('push button', pseudo('Print or save…'))
    w.press_for(pseudo('Save as…'), 'menu item', '')
    look('the menu of the statements', 'menu item', 1)
    w.keys('Escape')
    assert not faults, '\n'.join(faults)
    assert w.close() == 0, w.said()


run_cases(test_dialogs, test_menus_and_what_is_found)
