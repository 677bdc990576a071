"""Reading C sources for the lint scripts: comments and strings blanked, functions found."""
import os
import re
import sys

WIDTH = 100
TOKEN = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])*\'', re.S)


def code_of(text):
    """The text with comments and string contents blanked; line numbers stay."""
    def blank(match):
        token = match.group(0)
        if token[0] in '"\'':
            return token[0] * 2
        return re.sub(r'[^\n]', ' ', token)
    return TOKEN.sub(blank, text)


def without_comments(text):
    """The text with comments alone blanked; line numbers stay."""
    return TOKEN.sub(lambda m: m.group(0) if m.group(0)[0] in '"\'' else re.sub(r'[^\n]', ' ', m.group(0)), text)


def files(root, folder, endings=('.c', '.h')):
    """Paths below root/folder, sorted, relative to root."""
    found = []
    for where, _, names in os.walk(os.path.join(root, folder)):
        found += [os.path.relpath(os.path.join(where, n), root) for n in names if n.endswith(endings)]
    return sorted(found)


def read(root, path):
    with open(os.path.join(root, path), encoding='utf-8') as file:
        return file.read()


def is_table_row(line):
    """A row of a table or a text: its layout by hand reads better than a wrapped one."""
    return line.lstrip().startswith(('{', '"', '.')) or re.match(r'\s*[A-Z][A-Z0-9_]*\(', line) is not None


def wide_lines(text):
    """Numbers of the lines wider than WIDTH, tabs to stops of 8, table rows aside."""
    return [number for number, line in enumerate(text.split('\n'), 1)
            if len(line.expandtabs(8)) > WIDTH and not is_table_row(line)]


def functions(text):
    """(name, first line, number of lines) of each function body: braces in column 1 after a ')'."""
    lines = code_of(text).split('\n')
    found, start, head = [], None, ''
    for number, line in enumerate(lines, 1):
        if line.startswith('{') and head.rstrip().endswith(')'):
            start = number
        elif line.startswith('}') and start is not None:
            name = re.findall(r'([A-Za-z_]\w*)\s*\(', head)
            found.append((name[0] if name else '?', start, number - start + 1))
            start, head = None, ''
        elif start is None:
            stripped = line.strip()
            if not stripped or stripped.startswith('#') or stripped.endswith((';', '}')):
                head = ''
            else:
                head += ' ' + stripped
    return found


def root_argument():
    """The tree to look at: the first argument, or the current folder."""
    return sys.argv[1] if len(sys.argv) > 1 else '.'


def report(name, passed, faults):
    """Prints the faults and the summary line; the exit status."""
    for fault in faults:
        print(fault)
    print(f'{name}: {passed} passed, {len(faults)} failed')
    return 1 if faults or passed == 0 else 0
