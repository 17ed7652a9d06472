"""What the tests of Fund share: the place opened, its dialogs, and a build begun."""
import time

from drive import Window, until
from farm import PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Fund')
    return w


def ask(w, button, field):
    """A dialog opens; its first field is there when it can be filled in.

    A button that is not on screen yet does nothing: it is pressed again while there is no dialog."""
    def there():
        if len(w.windows()) < 2:
            w.press('push button', button)
            time.sleep(1)
        return w.find('text', field)
    until(there, 60)


def begin(w, name, first=False):
    """A new build of 48 by 24 ft; the dialog stays open."""
    ask(w, 'Begin a build' if first else 'New build…', 'Name of the build')
    w.fill('Name of the build', name)
    w.fill('Length', '48')
    w.fill('Width', '24')
