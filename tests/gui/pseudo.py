"""A language that nobody speaks: each text of the program in [brackets], with strange
letters and two fifths longer, so that one sees what is not translated and what has no room.

    words = Pseudo(root, folder)      # makes folder/qps/LC_MESSAGES/steading.mo
    words('Step by step')             # what a widget of that text bears
"""
import os
import re
import subprocess

LETTERS = str.maketrans('AEIOUaeiouncysCNYS', 'ÀÉÎÖÛàéîöûñçýšÇÑÝŠ')
# What has to stay as it is: what is filled in, markup and its letters, an escaped letter, an address.
KEPT = re.compile(r'%[-0-9$.*+#\' ]*(?:l|ll|z)?[a-zA-Z%]|%|</?[a-z]+[^>]*>|&[a-z]+;|\\.|_')
# What is no text to be read: the folder of the help, the way that a day is written.
NO_TEXT = {('folder of the help', 'en')}


def pseudo(text):
    """The text in the language; what begins or ends a line stays there."""
    core = text.strip('\n')
    if not re.search('[A-Za-z]', KEPT.sub('', core)):
        return text
    out, at = '', 0
    for kept in KEPT.finditer(core):
        out += core[at:kept.start()].translate(LETTERS) + kept.group(0)
        at = kept.end()
    out += core[at:].translate(LETTERS)
    filler = ('~' * 5 + ' ') * 40
    return text.replace(core, '[' + out + ' ' + filler[:max(1, len(core) * 2 // 5)].rstrip() + ']')


class Pseudo:
    language = 'qps'

    def __init__(self, root, folder):
        home = os.path.join(folder, self.language, 'LC_MESSAGES')
        os.makedirs(home)
        pot = os.path.join(folder, 'fresh.pot')
        subprocess.check_call(['xgettext', '--directory', root, '--files-from', os.path.join(root, 'po', 'POTFILES'),
                               '--output', pot, '--from-code=UTF-8', '--keyword=_', '--keyword=N_',
                               '--keyword=C_:1c,2', '--keyword=NC_:1c,2', '--keyword=g_dcgettext:2',
                               '--keyword=g_dngettext:2,3', '--keyword=g_dpgettext2:2c,3'], stderr=subprocess.DEVNULL)
        text = subprocess.check_output(['msgcat', '--no-wrap', '--no-location', '--sort-output', pot], text=True)
        po = os.path.join(folder, 'qps.po')
        with open(po, 'w', encoding='utf-8') as out:
            out.write('\n\n'.join(map(self.translated, text.split('\n\n'))) + '\n')
        subprocess.check_call(['msgfmt', po, '-o', os.path.join(home, 'steading.mo')])

    def translated(self, entry):
        fields, field = {}, None
        for line in entry.splitlines():
            word = re.match(r'(msg\w+(?:\[\d\])?) ', line)
            if line.startswith('#'):
                continue
            if word:
                field, line = word.group(1), line[word.end():]
            fields[field] = fields.get(field, '') + line.strip()[1:-1]
        if not fields.get('msgid'):
            return 'msgid ""\nmsgstr "Content-Type: text/plain; charset=UTF-8\\n' \
                   'Plural-Forms: nplurals=2; plural=(n != 1);\\n"'
        kept = (fields.get('msgctxt'), fields['msgid']) in NO_TEXT
        turn = str if kept else lambda t: pseudo(t.replace('\\n', '\n')).replace('\n', '\\n')
        head = ''.join(f'{name} "{fields[name]}"\n' for name in ('msgctxt', 'msgid', 'msgid_plural') if name in fields)
        if 'msgid_plural' in fields:
            return head + f'msgstr[0] "{turn(fields["msgid"])}"\nmsgstr[1] "{turn(fields["msgid_plural"])}"'
        return head + f'msgstr "{turn(fields["msgid"])}"'

    def __call__(self, text):
        return pseudo(text)


def outside(text):
    """What of a text stands in no bracket."""
    out, depth = '', 0
    for letter in text:
        depth += letter == '['
        out += letter if depth == 0 else ''
        depth -= letter == ']' and depth > 0
    return out
