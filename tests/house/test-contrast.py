#!/usr/bin/env python3
"""Every pair of colours in the style sheets can be told apart.

usage: test-contrast.py SOURCE_ROOT

The bar is WCAG 2.2 (W3C): text 4.5:1 (1.4.3), what a control is known by 3:1
(1.4.11); the ratio is that of its glossary (from memory).  The sheets are read rule by
rule in four variants: light and dark, each also with the sheet for more contrast.  A
rule with a colour and no ground of its own is held against the grounds that it may
stand on; one with a ground and no colour, against the text that may stand on it.
What is disabled is exempt, as it is there.
"""
import pathlib
import re
import sys

UI = pathlib.Path(sys.argv[1]) / 'ui'
TEXT, MARK = 4.5, 3.0
VARIANTS = {
    'light': ['steading.css'],
    'dark': ['steading.css', 'steading-dark.css'],
    'light, more contrast': ['steading.css', 'steading-contrast.css'],
    'dark, more contrast': ['steading.css', 'steading-dark.css', 'steading-contrast.css'],
}
# Where text without a ground of its own stands; elsewhere on the page or on a card.
GROUNDS = [
    (r'post:checked .*\.live', ['@ink']),
    (r'^tooltip label|\bsaid (button|\*)', ['@ink']),
    (r'row:selected', ['@shell']),
    (r'scale\.handle', ['@shell']),
    (r'^button\.tile', ['@card']),
]
# What stands on a ground whose rule names no text; elsewhere ink.
TEXTS = [
    (r'\.primary', ['@card']),
    (r'^said|said button', ['@card']),
    (r'check:checked|radio:checked', ['@card']),
]
# No text: troughs, sliders, lines, sheets of paper.  A box that is not ticked shows no tick.
BARE = r'separator|trough|highlight|slider|progress|paperpage|switch|checkbutton (check|radio)$|popover > arrow'


def strip(css):
    return re.sub(r'/\*.*?\*/', '', css, flags=re.S)


def split(text):
    """At the commas that stand in no bracket."""
    parts, depth = [''], 0
    for letter in text:
        depth += (letter == '(') - (letter == ')')
        if letter == ',' and depth == 0:
            parts.append('')
        else:
            parts[-1] += letter
    return [part.strip() for part in parts]


class Sheet:
    def __init__(self, names):
        text = '\n'.join(strip((UI / name).read_text()) for name in names)
        self.colors = dict(re.findall(r'@define-color\s+(\w+)\s+([^;]+);', text))
        text = re.sub(r'@define-color[^;]+;', '', text)
        self.rules = []
        for selectors, body in re.findall(r'([^{}]+)\{([^{}]*)\}', text):
            facts = dict(part.split(':', 1) for part in body.split(';') if ':' in part)
            facts = {key.strip(): value.strip() for key, value in facts.items()}
            self.rules += [(' '.join(one.split()), facts) for one in split(selectors)]

    def rgb(self, value, under):
        """Three parts from 0 to 1, or None: not a colour, or nothing to be seen."""
        value = value.strip()
        if value.startswith('#'):
            return [int(value[i:i + 2], 16) / 255 for i in (1, 3, 5)]
        if value in ('white', 'black'):
            return [float(value == 'white')] * 3
        if value.startswith('@'):
            return self.rgb(self.colors[value[1:]], under)
        kind, _, inner = value.rstrip(')').partition('(')
        if kind == 'mix':
            one, two, share = split(inner)
            return [a + (b - a) * float(share) for a, b in zip(self.rgb(one, under), self.rgb(two, under))]
        if kind == 'alpha':
            one, share = split(inner)
            return [b + (a - b) * float(share) for a, b in zip(self.rgb(one, under), under)]
        return None


def light(rgb):
    parts = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in rgb]
    return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2]


def contrast(one, two):
    a, b = sorted((light(one), light(two)))
    return (b + 0.05) / (a + 0.05)


def chosen(table, selector, otherwise):
    return next((values for pattern, values in table if re.search(pattern, selector)), otherwise)


def text_pairs(sheet, selector, facts):
    """Colour and ground of a rule, as text on the screen."""
    ground = facts.get('background', facts.get('background-color', '')).split(' url')[0]
    has_ground = ground not in ('', 'none', 'transparent')
    if (not has_ground and 'color' not in facts) or ':disabled' in selector or re.search(BARE, selector):
        return
    under = chosen(GROUNDS, selector, ['@page', '@card'])
    for base in under if not has_ground or 'alpha' in ground else ['@card']:
        base_rgb = sheet.rgb(base, None)
        ground_rgb = sheet.rgb(ground, base_rgb) if has_ground else base_rgb
        if ground_rgb is None:
            continue
        for color in [facts['color']] if 'color' in facts else chosen(TEXTS, selector, ['@ink']):
            yield f'{color} on {ground if has_ground else base}', contrast(sheet.rgb(color, ground_rgb), ground_rgb)


count = failures = 0


def report(good, name, notes=()):
    global count, failures
    count += 1
    failures += not good
    print(f"{'ok' if good else 'not ok'} {count} /house/contrast/{name}")
    for note in notes:
        print(f'# {note}')


# #767676 on white is the lightest gray that passes for text (found in many texts on the
# criterion; from memory), and black on white is 21:1.
report(abs(contrast([0x76 / 255] * 3, [1] * 3) - 4.54) < 0.005 and abs(contrast([0] * 3, [1] * 3) - 21) < 1e-9,
       'the-ratio')
for name, files in VARIANTS.items():
    sheet = Sheet(files)
    found = [(f'{selector}: {pair}', ratio) for selector, facts in sheet.rules
             for pair, ratio in text_pairs(sheet, selector, facts)]
    low = [f'{what}: {ratio:.2f}' for what, ratio in found if ratio < TEXT]
    report(len(found) > 80 and not low, f'text-{name.replace(", ", "-").replace(" ", "-")}', low)
    edges = [(f'@{edge} on @{ground}', contrast(sheet.rgb('@' + edge, None), sheet.rgb('@' + ground, None)))
             for edge in ('edge', 'ink', 'tomato', 'water') for ground in ('page', 'card')]
    low = [f'{what}: {ratio:.2f}' for what, ratio in edges if ratio < MARK]
    report(not low, f'edges-{name.replace(", ", "-").replace(" ", "-")}', low)
print(f'1..{count}')
sys.exit(failures > 0)
