"""Fund: a pen is typed and drawn, its bill agrees with a worked case, and stays after closing."""
from drive import Window, run_cases
from farm import Farm, PROGRAM


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Fund')
    w.wait('push button', 'New build…')
    return w


def test_pen_is_planned():
    """48 by 24 ft with a 12 ft gate: 4 corners, 1152 sq ft, 144 ft round (build-and-records, CASE-01)."""
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'New build…')
    w.fill('Name of the build', 'Sheep pen')
    w.fill('Length', '48')
    w.fill('Width', '24')
    w.fill('Width of the gate', '12')
    w.press('push button', 'Save build')
    w.wait_words('1,152 sq ft')
    w.wait_words('144 ft round')
    w.press('push button', 'New pledge…')
    w.fill('Who promises', 'A neighbor')
    w.fill('How much', '100')
    w.fill('Due on', '2030-01-01')
    w.press('push button', 'Cancel')
    assert w.nameless() == []
    assert w.close() == 0
    w = opened(farm)
    w.wait_words('1,152 sq ft')
    assert w.close() == 0


run_cases(test_pen_is_planned)
