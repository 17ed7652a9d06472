"""What the tests of Sell share: the place opened, and a market planned for today."""
import time

from drive import Window, until
from farm import PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Sell')
    return w


def exact(w, role, name):
    """The control of just this name; others begin like it."""
    return until(lambda: next((n for n in w.walk() if n.getRoleName() == role and n.name == name), None))


def press(w, name):
    exact(w, 'push button', name).queryAction().doAction(0)


def ask(w, button, field):
    """A dialog opens; its first field is there when it can be filled in.

    A button that is not on screen yet does nothing: it is pressed again while there is no dialog."""
    def there():
        if len(w.windows()) < 2:
            press(w, button)
            time.sleep(1)
        return w.find('text', field)
    until(there, 60)


def choose(w, name, *keys):
    """Choose in a drop-down by its keys: it opens, they move, Return takes."""
    w.click('push button', name)
    w.keys(*keys, 'Return')


def number(farm, sql):
    return int(farm.rows(sql)[0])


def today(farm):
    return farm.rows("SELECT date('now')")[0]


def plan(w, farm):
    """A market today, with what the dialog proposes."""
    before = number(farm, 'SELECT count(*) FROM sale_day')
    ask(w, 'New sale' if before else 'Plan the first sale', 'Name of the sale')
    w.fill('Name of the sale', 'Test market')
    w.fill('Where', 'Town hall')
    w.fill('Day', today(farm))
    w.fill('Closes', '8:00')
    press(w, 'Save plan')
    w.wait_words('closes before it opens')
    w.fill('Closes', '1 pm')
    for face, pieces in (('$5.00 ×', '4'), ('$1.00 ×', '20')):
        w.fill(face, pieces)
    press(w, 'Save plan')
    until(lambda: number(farm, 'SELECT count(*) FROM sale_day') == before + 1)


SALE = "(SELECT id FROM sale_day WHERE name = 'Test market')"
LINES = f'(SELECT id FROM sale_line WHERE sale_id = {SALE})'
TAPS = f'SELECT count(*) FROM sale_tap WHERE line_id IN {LINES}'
