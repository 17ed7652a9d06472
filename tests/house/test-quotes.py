#!/usr/bin/env python3
"""What a text tells a student to press is really there to be pressed.

usage: test-quotes.py ROOT

A name in “quotes” within a longer text (a help text, a placeholder, a refusal)
must be a whole text of the window, mnemonic lines aside; "…" stands for a figure
that the program fills in.  A translation must quote the translated name.  What
is quoted as an example of typing, or as the ending of a file, is none of this.
The same holds for the pages of the help, data/help/LANGUAGE/PAGE.md.
"""
import ast
import os
import re
import subprocess
import sys
import tempfile

QUOTED = re.compile('“([^”]*)”')
EXAMPLE = re.compile(r'\d|[.-]\w')                            # “22 eggs”, “.copies”
BEFORE_EXAMPLE = re.compile(r'\b(for example|such as|say it:?|say) $')
EXAMPLES = {'yesterday, by Ana'}                              # others, as they stand in the texts


def read_po(text):
    """Yield (references, msgid, msgstr) of each message; plurals by their singular."""
    for block in re.split(r'\n\n+', text):
        references, fields, field = [], {}, None
        for line in block.splitlines():
            if line.startswith('#:'):
                references += line[2:].split()
            elif line.startswith('#'):
                continue
            else:
                word = re.match(r'(\w+(?:\[\d\])?) ', line)
                if word:
                    field = word.group(1)
                    line = line[word.end():]
                if field:
                    fields[field] = fields.get(field, '') + ast.literal_eval(line)
        if fields.get('msgid'):
            yield references, fields['msgid'], fields.get('msgstr', fields.get('msgstr[0]', ''))


def plain(label):
    """A label as it is read: no mnemonic line, and "…" for each figure."""
    return re.sub('%[0-9$]*[sdu]', '…', re.sub(r'_(?=\w)', '', label))


def quoted_names(text):
    """The names that a text quotes as things to find in the window."""
    for quote in QUOTED.finditer(text):
        name = quote.group(1)
        if re.search('%[0-9$]*[sdu]', name) or EXAMPLE.match(name) or name in EXAMPLES:
            continue
        if BEFORE_EXAMPLE.search(text[:quote.start()]):
            continue
        yield name


def borne(messages):
    """All that stands as a whole text in the window."""
    return {plain(msgid) for references, msgid, _ in messages
            if any(r.startswith(('ui/', 'src/app/')) for r in references)}


def missing(messages):
    names = borne(messages)
    return [f'{references[0]}: “{name}” is on no widget'
            for references, msgid, _ in messages for name in quoted_names(msgid) if name not in names]


def mistranslated(messages):
    """Texts whose translation quotes another name than the widget bears in that language."""
    translations = {}
    for _, msgid, msgstr in messages:
        translations.setdefault(plain(msgid), set()).add(plain(msgstr))
    faults = []
    for references, msgid, msgstr in messages:
        quotes = set(QUOTED.findall(msgstr))
        for name in quoted_names(msgid):
            if not quotes & translations.get(name, set()):
                faults.append(f'{references[0]}: “{name}” is {" or ".join(sorted(translations.get(name, set())))},'
                              f' but the translation quotes {", ".join(sorted(quotes))}')
    return faults


def in_help(root, language, messages):
    """Names that the pages of the help in one language quote, and that no widget bears in it.

    messages: merged with the translation; for the language of the sources as they are."""
    own = language == 'en'
    borne_names = borne(messages)
    here = {plain(msgstr) for _, msgid, msgstr in messages if plain(msgid) in borne_names}
    faults = []
    folder = os.path.join(root, 'data', 'help')
    for page in sorted(os.listdir(os.path.join(folder, 'en'))):
        if not page.endswith('.md'):
            continue
        with open(os.path.join(folder, language, page), encoding='utf-8') as text:
            words = ' '.join(text.read().split())
        faults += [f'data/help/{language}/{page}: “{name}” is on no widget' for name in quoted_names(words)
                   if name not in (borne_names if own else here)]
        if own:
            continue
        with open(os.path.join(folder, 'en', page), encoding='utf-8') as text:
            english = ' '.join(text.read().split())
        for name in quoted_names(english):
            known = {plain(msgstr) for _, msgid, msgstr in messages if plain(msgid) == name}
            if not known & set(QUOTED.findall(words)):
                faults.append(f'data/help/{language}/{page}: does not quote {" or ".join(sorted(known))}, as “{name}” is')
    return faults


def test_help_finder():
    with tempfile.TemporaryDirectory() as root:
        for language, words in (('en', 'Press “Keep\nthis”.'), ('es', 'Presiona “Guardar esto”.')):
            os.makedirs(os.path.join(root, 'data', 'help', language))
            with open(os.path.join(root, 'data', 'help', language, 'a.md'), 'w', encoding='utf-8') as page:
                page.write(words)
        window = [(['ui/a.ui:1'], '_Keep this', 'Guardar _esto')]
        assert not in_help(root, 'en', window) and not in_help(root, 'es', window)
        assert len(in_help(root, 'en', [(['ui/a.ui:1'], 'Keep that', 'x')])) == 1
        assert len(in_help(root, 'es', [(['ui/a.ui:1'], 'Keep this', 'Guárdalo')])) == 2


def test_finder():
    """It finds what is not there, in either language, and lets examples be."""
    window = (['ui/a.ui:1'], '_Keep this', 'Guardar _esto')
    good = (['ui/help.ui:1'], 'Press “Keep this”. Say for example “two hens”.', 'Presiona “Guardar esto”.')
    use = (['src/app/b.c:1'], 'Use %s now', 'Usar %s ya')
    said = (['src/answer/b.c:1'], 'Press “Use … now”, not “%s”.', 'Presiona “Usar … ya”, no “%s”.')
    assert not missing([window, good, use, said]) and not mistranslated([window, good, use, said])
    assert len(missing([use, good])) == 1
    assert len(missing([(['src/store/a.c:1'], 'Keep this', ''), good])) == 1     # known, but no widget's
    assert len(mistranslated([window, good[:2] + ('Presiona “Guárdalo”.',)])) == 1


def extract(root, folder):
    pot = os.path.join(folder, 'fresh.pot')
    subprocess.run(['xgettext', '--directory', root, '--files-from', os.path.join(root, 'po', 'POTFILES'),
                    '--output', pot, '--from-code=UTF-8', '--keyword=_', '--keyword=N_',
                    '--keyword=C_:1c,2', '--keyword=NC_:1c,2', '--keyword=g_dngettext:2,3'],
                   check=True, stderr=subprocess.DEVNULL)
    return pot


def po_text(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def main(root):
    cases = [('finder', [])]
    test_finder()
    test_help_finder()
    with tempfile.TemporaryDirectory() as folder:
        pot = extract(root, folder)
        messages = list(read_po(po_text('msgcat', '--no-wrap', pot)))
        assert len(messages) > 500, 'the texts were not found'
        cases.append(('names-are-borne', missing(messages)))
        cases.append(('names-in-the-help', in_help(root, 'en', messages)))
        with open(os.path.join(root, 'po', 'LINGUAS')) as linguas:
            languages = [line.strip() for line in linguas if line.strip() and not line.startswith('#')]
        for language in languages:
            merged = po_text('msgmerge', '--quiet', '--no-wrap', '--no-fuzzy-matching',
                             os.path.join(root, 'po', language + '.po'), pot)
            translated = list(read_po(merged))
            cases.append((f'names-in-{language}', mistranslated(translated)))
            cases.append((f'names-in-the-help-{language}', in_help(root, language, translated)))
    failed = False
    for number, (name, faults) in enumerate(cases, 1):
        failed |= bool(faults)
        print(f'{"not ok" if faults else "ok"} {number} /house/quotes/{name}')
        for fault in faults:
            print('#', fault)
    print(f'1..{len(cases)}')
    return 1 if failed else 0


if __name__ == '__main__':
    os.environ['LC_ALL'] = 'C.UTF-8'
    sys.exit(main(sys.argv[1]))
