"""Check: a list of what is made, its readings, a failed one, a pot that cools, the signature, a correction."""
import time

import pyatspi
from drive import Window, is_newer, run_cases, until
from farm import Farm, PROGRAM

MENU = 'Egg-and-potato breakfast bowls, Roasted tomato sauce'


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Check')
    return w


def is_shown(node):
    return node is not None and node.getState().contains(pyatspi.STATE_VISIBLE)


def choose_menu(w):
    """The menu stands last in the choice of what is checked."""
    if is_shown(w.find('text', 'Menu')):
        return
    w.click('push button', 'What is to be checked')
    w.keys('End', 'Return')
    until(lambda: is_shown(w.find('text', 'Menu')))


def make_list(w, farm):
    n = int(farm.rows('SELECT count (*) FROM checklist')[0])
    w.press('push button', 'New checklist')
    until(lambda: w.find('text', 'On'), 40)             # it plans the batch at once
    choose_menu(w)
    w.fill('Menu', MENU)
    w.wait_words('2 foods')
    w.press('push button', 'people of all kinds')       # a question is answered with a button
    w.press('push button', 'Make the list')
    until(lambda: farm.rows('SELECT count (*) FROM checklist') == [str(n + 1)])
    w.wait_words('27 are still to be read')


def number_of(w, words):
    """The number that a check bears, by the words of its sentence."""
    def found():
        before = None
        for node in w.walk():
            if node.getRoleName() == 'label':
                if words in node.name and before is not None and before.isdigit():
                    return int(before)
                before = node.name
        return None
    return until(found)


def read(w, number, value, held=None):
    w.fill(f'Reading of check {number}', value)
    if held is not None:
        w.fill(f'Check {number} held for', held)
    w.press('push button', f'Record the reading of check {number}')


def cook_and_hold(w, farm):
    """Pooled eggs: too cool, something is done, hot enough; then an odd reading is asked about."""
    n = number_of(w, 'Cook the pooled eggs')
    read(w, n, '140')
    w.wait_words('Not met')
    w.wait_words('Cook it on')
    assert farm.rows("SELECT count (*) FROM reading WHERE kind = 'food_temp' AND round (value, 1) = 60.0") >= ['1']
    w.press('push button', f'I did what check {n} says')
    w.wait_words('What was done: Cook it on')
    read(w, n, '156')                                   # hot enough, but for how long?
    until(lambda: 'How long' in (w.find('text', f'Check {n} held for').description or ''))
    read(w, n, '156', '20')
    w.wait_words('Met by')
    return n


def scale_is_asked(w, n):
    read(w, n, '63')                                    # 63 °F of food that is held hot: it was Celsius
    w.wait_words('Which scale')
    w.press('push button', 'It is 63 °C')
    w.wait_words('63 °C')


POTS = 'SELECT name FROM check_pot ORDER BY id DESC'


def odd_pot(w, farm):
    """A pot added by mistake goes and comes back by Undo; one with readings stays."""
    w.fill('Name of the pot', 'Odd pot')
    w.press('push button', 'Add the pot')
    w.press('push button', 'Delete the pot “Odd pot”')
    until(lambda: 'Odd pot' not in farm.rows(POTS))
    until(lambda: not w.find('text', 'Reading of Odd pot'))
    w.press('push button', 'Undo: deleting the pot “Odd pot”')
    w.wait('text', 'Reading of Odd pot')
    w.press('push button', 'Delete the pot “Odd pot”')
    until(lambda: 'Odd pot' not in farm.rows(POTS))
    w.press('push button', 'Delete the pot “Big pot”')
    w.wait_words('This pot has readings, so it stays')
    assert 'Big pot' in farm.rows(POTS)


def cool(w, farm):
    """Three readings of a slow pot: it will miss its mark, and an ice bath is pressed."""
    n = number_of(w, 'Cool it to 70')
    w.press('push button', f'Pots of check {n}')
    w.fill('Name of the pot', 'Big pot')
    w.press('push button', 'Add the pot')
    now = time.gmtime()
    step = min(20, (now.tm_hour * 60 + now.tm_min) // 5)
    for i, temp in enumerate(('134', '130', '127')):
        then = time.gmtime(time.time() - 60 * step * (3 - i))
        w.wait('text', 'Reading of Big pot')
        w.fill('Reading of Big pot', temp)
        w.fill('Time of the reading of Big pot', time.strftime('%H:%M', then))
        w.press('push button', 'Record the reading of Big pot')
        until(lambda: farm.rows('SELECT count (*) FROM reading WHERE pot_id IS NOT NULL') == [str(i + 1)])
    w.wait_words('How Big pot cools')
    w.fill('Reading of Big pot', '500')                 # no pot is so hot, in either scale
    w.press('push button', 'Record the reading of Big pot')
    until(lambda: 'Nothing here can be so hot' in (w.find('text', 'Reading of Big pot').description or ''))
    w.fill('Reading of Big pot', '')
    assert farm.rows('SELECT count (*) FROM reading WHERE pot_id IS NOT NULL') == ['3']
    w.press('push button', 'Set it in an ice bath and stir it: done with Big pot')
    w.wait_words('What was done: Set it in an ice bath')
    odd_pot(w, farm)
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Back to the list')


OPEN = ('SELECT count (*) FROM check_line c WHERE c.list_id = (SELECT max (id) FROM checklist) AND c.left_out IS NULL'
        ' AND NOT EXISTS (SELECT 1 FROM reading r WHERE r.line_id = c.id)')


def exact(w, role, name):
    """What comes up when it is asked for; check 4 is not check 40."""
    return until(lambda: next((n for n in w.walk() if n.getRoleName() == role and n.name == name), None))


def finish(w, farm):
    """What is left: the lines are ticked, or left out with a reason.  A walk takes long: one finds all."""
    before = int(farm.rows(OPEN)[0])
    assert before > 8, before
    for _ in range(3):                                  # a node may be missed while the rows are shown anew
        nodes = {n.name: n for n in w.walk() if n.getRoleName() in ('push button', 'text')}
        for name in [name for name in nodes if name.startswith('Leave out check ') and name.endswith('…')]:
            number = name.split()[3][:-1]
            if not is_shown(nodes[name]):               # it was read
                continue
            if is_shown(nodes.get(f'Check {number} is done')):
                nodes[f'Check {number} is done'].queryAction().doAction(0)
                continue
            nodes[name].queryAction().doAction(0)
            exact(w, 'text', f'Why check {number} need not be done').queryEditableText().setTextContents(
                'It was read on paper.')
            exact(w, 'push button', f'Leave out check {number}').queryAction().doAction(0)
        try:
            until(lambda: farm.rows(OPEN) == ['0'], 20)
            return
        except AssertionError:
            pass
    raise AssertionError(f'{farm.rows(OPEN)} of {before} lines are still open')


LAST = ' FROM checklist WHERE id = (SELECT max (id) FROM checklist)'


def has_focus(w, role, name):
    return until(lambda: any(n.getRoleName() == role and n.name == name
                             and n.getState().contains(pyatspi.STATE_FOCUSED) for n in w.walk()))


def sign(w, farm, steps, name):
    """By the keys: a screen reader's way of giving the focus is not there in GTK 4.8.  The one who is
    asked for has it already, and what has it is scrolled to."""
    w.hold_keys()                                       # in a newer GTK nothing has them in a window without
    w.press('push button', 'Sign the list')             # nobody was chosen
    w.wait_words('Choose who signs')
    has_focus(w, 'push button', 'Signed by')
    w.keys('space')
    if is_newer(w.app):
        w.wait_list(w.wait('push button', 'Signed by'))
    w.keys(*['Down'] * steps, 'Return')
    w.press('push button', 'Sign the list')
    until(lambda: farm.rows('SELECT (SELECT name FROM person WHERE id = signed_by)' + LAST) == [name])
    w.wait_words(f'Signed by {name}')


def is_frozen(w, farm, n):
    """A signed list has nothing to write in, and its signature is not taken back."""
    before = farm.rows('SELECT seal, name, day' + LAST)
    shown = [node for node in w.walk() if is_shown(node)]
    for name in ('Sign the list', 'Delete the list', 'Make it anew…', f'Leave out check {n}…',
                 f'Record the reading of check {n}', f'Another reading of check {n}'):
        assert not any(node.name == name for node in shown), name
    w.press('push button', 'Undo: the signature')       # it is refused before the press returns
    assert farm.rows('SELECT seal, name, day' + LAST) == before
    w.wait('push button', 'Undo: the signature')


def correct(w, farm, n):
    """A signed list keeps the wrong reading; the right one stands beside it."""
    before = farm.rows('SELECT count (*) FROM reading')
    w.press('push button', f'Correct the last reading of check {n}')
    read(w, n, '158', '20')
    w.wait_words('wrong, corrected')
    w.wait_words('after signing')
    assert int(farm.rows('SELECT count (*) FROM reading')[0]) == int(before[0]) + 1


def test_bowls_and_sauce():
    farm = Farm()
    w = opened(farm)
    make_list(w, farm)
    assert w.nameless() == [], w.nameless()
    w.press('push button', 'Sign the list')             # what is missing is named
    w.wait_words('Wash hands')
    n = cook_and_hold(w, farm)
    scale_is_asked(w, number_of(w, 'Hold it hot'))
    cool(w, farm)
    finish(w, farm)
    sign(w, farm, 2, 'Devon K.')
    is_frozen(w, farm, n)
    correct(w, farm, n)
    assert w.close() == 0, w.said()
    farm.verify()
    assert farm.rows('SELECT count (*) FROM check_action') >= ['2']
    w = opened(farm)
    w.click('list item', MENU)                          # the newest that is signed
    w.wait_words('Signed by Devon K.')                  # all of it is there again
    w.wait_words('wrong, corrected')
    w.wait_words('after signing')
    assert w.close() == 0, w.said()


def test_from_paper():
    """A sheet that was filled in by hand is typed in later, row by row, with the keys alone."""
    farm = Farm()
    farm.rows("UPDATE checklist SET day = CAST (julianday ('now') - 2440587.5 AS INTEGER) - 2 WHERE signed_at IS NULL")
    read_so_far = ("SELECT count (*), count (DISTINCT at), count (noted_at), group_concat (DISTINCT p.name) FROM reading r"
                   ' JOIN person p ON p.id = r.person_id WHERE line_id IN (SELECT id FROM check_line WHERE list_id ='
                   ' (SELECT id FROM checklist WHERE signed_at IS NULL))')
    w = opened(farm)
    w.press('push button', 'Check 1 is done')           # when it was read stands on the sheet
    until(lambda: 'at what time' in (w.find('text', 'Time of check 1').description or ''))
    w.keys('7', 'colon', '1', '0', 'Tab', 'z', 'z', 'Return')
    until(lambda: 'Nobody here' in (w.find('text', 'Initials at check 1').description or ''))
    w.fill('Initials at check 1', 'dk')
    w.keys('Return')
    until(lambda: farm.rows(read_so_far) == ['1|1|1|Devon K.'])
    until(lambda: w.read('Time of check 2') == '7:10' and w.read('Initials at check 2') == 'dk')
    for n in (2, 3):                                    # both are ticked with one key each
        w.keys('Return')
        until(lambda: farm.rows(read_so_far) == [f'{n}|1|{n}|Devon K.'])
    w.keys('3', '2', 'Return')                          # what the thermometer shows in ice
    until(lambda: farm.rows(read_so_far) == ['4|1|4|Devon K.'])
    assert w.close() == 0, w.said()
    farm.verify()


NEWEST_AIR = 'SELECT round (value, 1) FROM reading WHERE place_id IS NOT NULL ORDER BY id DESC LIMIT 1'


def too_warm(w, farm):
    """A cooler above its limit says what to do and asks what was done; 5 in a cooler was Celsius."""
    w.fill('Air of Market refrigerator', '150')         # in neither scale
    w.press('push button', 'Record the reading of Market refrigerator')
    until(lambda: 'Nothing here can be so hot' in (w.find('text', 'Air of Market refrigerator').description or ''))
    w.fill('Air of Market refrigerator', '44')
    w.press('push button', 'Record the reading of Market refrigerator')
    until(lambda: farm.rows(NEWEST_AIR) == ['6.7'])
    w.wait_words('Too warm on')
    w.press('push button', 'Save what was done about Market refrigerator')
    until(lambda: w.find('text', 'What was done about Market refrigerator').description)
    w.fill('What was done about Market refrigerator', 'Shut the door.')
    w.press('push button', 'Save what was done about Market refrigerator')
    w.wait_words('What was done: Shut the door.')
    assert farm.rows("SELECT count (*) FROM check_action WHERE text = 'Shut the door.'") == ['1']


def correct_air(w, farm):
    """38 was a slip for 39: both stand there, and the right one counts."""
    w.press('push button', 'What was read of Kitchen refrigerator')
    w.press('push button', 'Correct 38 °F on')
    w.wait_words('Enter what it should be instead of 38 °F')
    w.fill('Air of Kitchen refrigerator', '39')
    w.press('push button', 'Record the reading of Kitchen refrigerator')
    until(lambda: farm.rows(NEWEST_AIR) == ['3.9'])
    w.wait_words('wrong, corrected to 39 °F')
    assert farm.rows('SELECT count (*) FROM reading WHERE place_id IS NOT NULL AND corrects_id IS NOT NULL') == ['1']


INSTRUMENT = "SELECT count (*) FROM instrument WHERE name = '{}'{}"


def instruments(w, farm):
    """One entered by mistake is deleted and comes back by Undo; one that was tried is taken out of use instead."""
    tried = farm.rows('SELECT i.name FROM instrument i JOIN reading r ON r.instrument_id = i.id LIMIT 1')[0]
    w.fill('Name of the instrument', 'Odd probe')
    w.fill('Smallest step that it shows', '0.1')
    w.act_by_tab(w.wait('push button', 'Where it hangs'))
    w.keys('Home', 'Down', 'Return')                    # the first place
    w.press('push button', 'Save the instrument')
    until(lambda: farm.rows("SELECT p.name FROM instrument i JOIN place p ON p.id = i.place_id WHERE i.name = 'Odd probe'")
          == farm.rows('SELECT min (name) FROM place'))
    w.wait_words('Odd probe, Probe thermometer')
    w.press_for('Change… Odd probe', 'push button', 'Delete the instrument')
    until(lambda: '0.1' in [n.queryText().getText(0, 9) for n in w.walk()
                            if n.getRoleName() == 'text' and n.name == 'Smallest step that it shows'])
    w.press('push button', 'Delete the instrument')
    until(lambda: farm.rows(INSTRUMENT.format('Odd probe', '')) == ['0'])
    until(lambda: not w.find('push button', 'Change… Odd probe'))
    w.press('push button', 'Undo: deleting the instrument “Odd probe”')
    w.wait('push button', 'Change… Odd probe')
    w.press_for('Change… ' + tried, 'push button', 'Delete the instrument')
    w.press('push button', 'Delete the instrument')
    w.wait_words('Take it out of use instead')
    w.click('check box', 'No longer in use; keep its history')
    w.press('push button', 'Save changes')
    until(lambda: farm.rows(INSTRUMENT.format(tried, ' AND retired_on IS NOT NULL')) == ['1'])
    w.wait_words(tried + ', no longer in use')
    w.press_for('Change… ' + tried, 'check box', 'No longer in use; keep its history')
    w.click('check box', 'No longer in use; keep its history')
    w.press('push button', 'Save changes')
    until(lambda: farm.rows(INSTRUMENT.format(tried, ' AND retired_on IS NULL')) == ['1'])


DRILLS = 'SELECT count (*) FROM drill WHERE ended_at IS {}NULL'


def drills(w, farm):
    """One is held and kept; one that was started by mistake, and one that was kept by mistake, go again."""
    before = int(farm.rows(DRILLS.format('NOT '))[0])
    w.press('push button', 'Start the clock')
    until(lambda: farm.rows(DRILLS.format('')) == ['1'])
    w.wait('push button', 'Stop the clock')
    w.press('push button', 'Delete the drill')
    until(lambda: farm.rows(DRILLS.format('')) == ['0'])
    w.press('push button', 'Start the clock')
    w.fill('What was learned', 'The labels help.')
    w.press('push button', 'Stop the clock')
    w.wait_words('The labels help.')
    until(lambda: farm.rows(DRILLS.format('NOT ')) == [str(before + 1)])
    w.press('push button', 'Delete the drill')
    until(lambda: farm.rows(DRILLS.format('NOT ')) == [str(before)])
    until(lambda: not any('The labels help.' in n.name for n in w.walk()))
    w.press('push button', 'Undo: deleting a recall drill')
    w.wait_words('The labels help.')
    assert farm.rows(DRILLS.format('NOT ')) == [str(before + 1)]


def test_own_limit_and_drill():
    farm = Farm()
    w = opened(farm)
    w.press('push button', 'Limits of your own')
    w.fill('Your limit', '130')                         # looser than 135 °F for hot food
    w.fill('Who asks for it', 'County health department')
    w.press('push button', 'Save the limit')
    until(lambda: w.find('text', 'Your limit').description)
    assert farm.rows('SELECT count (*) FROM local_limit') == ['0']
    w.fill('Your limit', '140')
    w.press('push button', 'Save the limit')
    w.wait_words('Hot holding: 140 °F')
    w.press('push button', 'Instruments')
    w.fill('What it shows', '36')
    w.press('push button', 'Record the try')
    w.wait_words('4 °F off')
    instruments(w, farm)
    w.press('push button', 'Coolers')
    w.fill('Air of Kitchen refrigerator', '38')
    w.press('push button', 'Record the reading of Kitchen refrigerator')
    until(lambda: farm.rows(NEWEST_AIR) == ['3.3'])
    correct_air(w, farm)
    too_warm(w, farm)
    w.press('push button', 'Recall drill')
    drills(w, farm)
    w.press('push button', 'Month')
    w.wait_words('signed, all met')                     # the key of the calendar
    assert w.close() == 0, w.said()
    farm.verify()


run_cases(test_bowls_and_sauce, test_from_paper, test_own_limit_and_drill)
