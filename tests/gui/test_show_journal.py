"""Show, Journal and Skills: a goal and a thought are written, changed and removed where they stand; so is what shows a
skill."""
from drive import Window, run_cases, until
from farm import Farm, PROGRAM


def opened(farm, view):
    w = Window(PROGRAM, farm.path)
    w.fit()
    w.place('Show')
    w.press('push button', view)
    return w


def last_writer(farm):
    return farm.rows("""SELECT name FROM person JOIN (
      SELECT person_id, day FROM reflection UNION ALL SELECT person_id, day FROM skill_try UNION ALL SELECT person_id, set_on FROM goal
    ) ON person_id = person.id ORDER BY day DESC, person.id LIMIT 1""")[0]


def open_row(w, *keys):
    """Go into the table and choose a row by its place."""
    until(lambda: len(w.windows()) == 1)
    w.focus()
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up', *keys)
    w.press('push button', 'Change the entry…')


def test_goal_and_thought():
    farm = Farm()
    w = opened(farm, 'Journal')
    w.wait_words(last_writer(farm))                    # whoever wrote last is looked for first
    w.click('combo box', 'Person')
    w.wait_list(w.wait('combo box', 'Person'))
    w.keys('Home', 'Return')                           # the first of a long list, which hung once
    w.wait_words('has no goals')
    w.press('push button', 'Goal…')
    w.fill('What is to be reached', 'Read the meter daily')
    w.press('push button', 'Save goal')
    until(lambda: farm.rows("SELECT reached_on IS NULL FROM goal WHERE words = 'Read the meter daily'") == ['1'])
    w.press('push button', 'Write a thought…')
    w.wait('push button', 'Save thought')
    w.press('push button', 'Save thought')
    w.wait_words('Write what you think about it.')
    w.type('The hens eat more when it is cold.')
    w.press('push button', 'Save thought')
    until(lambda: farm.rows("SELECT is_shown FROM reflection WHERE text LIKE 'The hens eat more%'") == ['1'])
    # What is there already is changed and removed where it stands.
    open_row(w)                                        # of one day, a goal comes before a thought
    w.fill('Reached on (may be left out)', farm.rows("SELECT date ('now')")[0])
    w.press('push button', 'Save goal')
    until(lambda: farm.rows("SELECT reached_on IS NULL FROM goal WHERE words = 'Read the meter daily'") == ['0'])
    assert w.close() == 0
    w = opened(farm, 'Journal')                        # and now that is who wrote the thought
    w.wait_words('The hens eat more', rows=True)
    open_row(w, 'Down')
    w.wait('push button', 'Remove thought')
    w.press('push button', 'Remove thought')
    until(lambda: farm.rows("SELECT count (*) FROM reflection WHERE text LIKE 'The hens eat more%'") == ['0'])
    assert w.nameless() == []
    assert w.close() == 0
    farm.verify()


def test_a_proof_is_taken_off_a_try():
    """A row of the log that does not show the skill is unticked; the try and what else shows it stay."""
    farm = Farm()
    person, attempt = farm.rows('SELECT p.name, t.id FROM skill_try t JOIN person p ON p.id = t.person_id'
                                ' WHERE t.checked_on IS NULL AND 1 < (SELECT count (*) FROM skill_evidence WHERE try_id = t.id)'
                                ' ORDER BY t.id LIMIT 1')[0].split('|')
    skill = farm.rows(f'SELECT skill_id FROM skill_try WHERE id = {attempt}')
    place = farm.rows('SELECT id FROM skill ORDER BY area IS NULL, area, code IS NULL, code, words, id').index(skill[0])
    proofs = f'SELECT count (*) FROM skill_evidence WHERE try_id = {attempt}'
    before = int(farm.rows(proofs)[0])
    names = farm.rows('SELECT name FROM person WHERE left_on IS NULL ORDER BY name, id')
    w = opened(farm, 'Skills')
    w.click('combo box', 'Person')
    w.wait_list(w.wait('combo box', 'Person'))
    w.keys('Home', *['Down'] * names.index(person), 'Return')
    until(lambda: len(w.windows()) == 1)
    w.focus()
    w.tab_to('table row')
    w.keys('Home', 'Down', 'Up', *['Down'] * place)
    w.press('push button', 'Change the last try…')
    w.click('check box', 'Shown by: ')
    w.press('push button', 'Save try')
    until(lambda: farm.rows(proofs) == [str(before - 1)])
    w.press('push button', 'Undo: a try of a skill')
    until(lambda: farm.rows(proofs) == [str(before)])
    assert w.close() == 0
    farm.verify()


run_cases(test_goal_and_thought, test_a_proof_is_taken_off_a_try)
