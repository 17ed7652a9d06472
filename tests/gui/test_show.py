"""Show: a class list comes in, hours for a whole group, refusals at the field, the advisor's check, the day of keeping."""
import os

from drive import Window, run_cases, until
from farm import Farm, PROGRAM

# Names in any script; one comes twice, one role is none.
LIST = '''Name,Class of,Role,Group
Zuri K.,2028,student,Test crew
محمد س.,2029,,Test crew
Zuri K.,2028,student,
Otto B.,2028,captain,
'''


def opened(farm):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Show')
    return w


def test_class_list_hours_check():
    farm = Farm()
    w = opened(farm)
    path = os.path.join(farm.folder.name, 'class.csv')
    with open(path, 'w', encoding='utf-8') as out:
        out.write(LIST)
    w.press('push button', 'Import a class list')
    w.choose_file('Import a class list', path)
    w.wait_words('captain', rows=True)
    w.press('push button', 'Take 2 rows')
    until(lambda: farm.rows("SELECT count (*) FROM group_member m JOIN person_group g ON g.id = m.group_id"
                            " WHERE g.name = 'Test crew'") == ['2'])
    w.keys('Escape')
    # A second person of one name is refused at the field.
    w.press('push button', 'New person')
    w.fill('Name', 'zuri k.')
    w.press('push button', 'Save')
    w.wait_words('There is a Zuri K. already')
    w.press('push button', 'Cancel')
    # Hours for everyone of the group, with a slip first.
    w.press('push button', 'Hours')
    w.press('push button', 'Enter hours')
    w.click('push button', 'Who worked')
    w.keys('End', 'Return')
    w.fill('From', '15:30')
    w.fill('Until', '15:00')
    w.fill('What was done', 'Weed the beds')
    w.press('push button', 'Record hours')
    w.wait_words('later than the start')
    w.fill('Until', '17:00')
    w.press('push button', 'Record hours')
    until(lambda: farm.rows("SELECT count (*) FROM work_span WHERE duty = 'Weed the beds' AND minutes = 90") == ['2'])
    # Nobody is in two places at once, and no stretch of work lasts longer than a person does.
    w.press('push button', 'Enter hours')
    w.click('push button', 'Who worked')
    w.keys('End', 'Return')
    w.fill('Or minutes in all', '1500')
    w.fill('What was done', 'Sleep in the barn')
    w.press('push button', 'Record hours')
    w.wait_words('More than 16 hours at one go')
    w.fill('Or minutes in all', '')
    w.fill('From', '16:00')
    w.fill('Until', '16:30')
    w.press('push button', 'Record hours')
    w.wait_words('Nobody is in two places')
    w.press('push button', 'Cancel')
    assert farm.rows("SELECT count (*) FROM work_span WHERE duty = 'Sleep in the barn'") == ['0']
    # The advisor's check freezes them.
    w.press('push button', 'Check the week')
    w.press('push button', 'Check them all')
    until(lambda: farm.rows("SELECT count (*) FROM work_span WHERE duty = 'Weed the beds' AND checked_on IS NULL") == ['0'])
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


def test_packets_and_the_day_of_keeping():
    farm = Farm()
    w = opened(farm)
    # How much of each packet is there comes by itself, as words of the chart too.
    w.wait('image', 'How much of each packet is there')
    w.wait_words(' of 16', rows=True)
    w.press('push button', 'New person')
    w.fill('Name', 'Leaves Soon')
    w.fill('Keep what names this person until', 'June 30, 2029')
    w.press('push button', 'Save')
    until(lambda: farm.rows("SELECT date (keep_until * 86400, 'unixepoch') FROM person WHERE name = 'Leaves Soon'")
          == ['2029-06-30'])
    # From the hours of one person there is a way back to those of all.
    w.press('push button', 'Hours')
    w.wait('combo box', 'Whose hours')
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


run_cases(test_class_list_hours_check, test_packets_and_the_day_of_keeping)
