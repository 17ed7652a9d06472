"""No text of the window is without a translation, and none makes the window wider than the screen.

Every place and every view of it in a language that nobody speaks: two fifths longer, in
brackets (pseudo.py); once more from right to left.  What stands outside of brackets must
be something that the farm's people wrote.
"""
import pyatspi

from drive import Skip, is_newer, run_cases
from pseudo import outside
from tongue import LOCALES, go_round, left_over, opened, unfold, untranslated

FEWEST = 15                                        # views of the demo farm that tell how a figure was worked out


def test_nothing_is_untranslated_or_too_long():
    w, own = opened('qps')
    faults, unfolded = [], []

    def look(where):
        unfolded.append(unfold(w))
        faults.extend([] if w.fits() else [f'{where}: the window is larger than the screen'])
        faults.extend(untranslated(w, where, own))

    go_round(w, look)
    assert not faults, '\n'.join(faults)
    assert sum(map(bool, unfolded)) >= FEWEST, unfolded
    assert w.close() == 0, w.said()


def test_from_right_to_left():
    """The toolkit's words of a language that is written so decide the direction; in a newer one the locale does."""
    w, _ = opened('qps:he', 'he_IL')
    if is_newer(w.app) and 'he_IL.utf8' not in LOCALES:
        raise Skip('this GTK needs a locale that is written from right to left, and there is none')
    today, following = (post.queryComponent().getExtents(pyatspi.WINDOW_COORDS).x for post in w.posts()[:2])
    assert today > following, 'the strip is not mirrored'
    faults = []
    go_round(w, lambda where: faults.extend([] if w.fits() else [where]), views=False)
    assert not faults, faults
    assert w.close() == 0, w.said()


def test_the_finder():
    assert left_over('[Dôñé ~] Maya R.', ['Maya R.']) == ''
    assert left_over('Done by Maya R.', ['Maya R.']).strip() == 'Done by'
    assert outside('[a [b] c] d [e]') == ' d '


run_cases(test_the_finder, test_nothing_is_untranslated_or_too_long, test_from_right_to_left)
