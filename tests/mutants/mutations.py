# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
"""Finds the small changes that can be made to a C++ source. It reads tokens and not types: a change that makes no sense
to the compiler does not build, and is then not counted."""

import hashlib
import re
from dataclasses import dataclass

TOKEN = re.compile(r"""
    (?P<space>\s+)
  | (?P<comment>//[^\n]*|/\*.*?\*/)
  | (?P<directive>^[ \t]*\#(?:\\\n|[^\n])*)
  | (?P<text>(?:u8|u|U|L)?R"(?P<mark>[^()\s\\]{0,16})\(.*?\)(?P=mark)"
            |(?:u8|u|U|L)?"(?:\\.|[^"\\\n])*"
            |'(?:\\.|[^'\\\n])+')
  | (?P<number>\.?\d(?:'?[0-9a-zA-Z_.]|(?<=[eEpP])[+-])*)
  | (?P<name>[A-Za-z_]\w*)
  | (?P<sign><=>|->\*|<<=|>>=|\.\.\.|::|->|\+\+|--|<<|>>|<=|>=|==|!=|&&|\|\||[-+*/%&|^]=|.)
""", re.VERBOSE | re.DOTALL | re.MULTILINE)

OTHER_SIGN = {"<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", "+": "-", "-": "+", "*": "/",
              "/": "*", "%": "*", "&&": "||", "||": "&&", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*=", "++": "--", "--": "++",
              "&": "|", "|": "&", "<<": ">>", ">>": "<<"}
OTHER_NAME = {"true": "false", "false": "true", "min": "max", "max": "min", "floor": "ceil", "ceil": "floor",
              "front": "back", "back": "front", "any_of": "all_of", "all_of": "any_of", "none_of": "any_of",
              "begin": "end", "low": "high", "high": "low", "continue": "break", "break": "continue"}
KEYWORDS = set("""alignas auto bool break case catch char class concept const consteval constexpr continue decltype
default delete do double else enum explicit extern false float for friend if inline int long mutable namespace new noexcept
nullptr operator override private protected public requires return short signed sizeof static static_assert
static_cast std struct switch template this throw true try typename union unsigned using virtual void while""".split())
NOT_A_STATEMENT = {"return", "using", "namespace", "template", "struct", "class", "enum", "public", "private", "case",
                   "default", "if", "for", "while", "do", "else", "switch", "try", "catch", "const", "constexpr",
                   "auto", "static", "friend", "inline", "typedef", "static_assert", "goto", "extern", "explicit", "virtual"}
SYMMETRIC = {"min", "max", "all_above_zero", "none_below_zero", "all_finite", "finite"}   # the order does not matter
OPENS, CLOSES = {"(": ")", "[": "]", "{": "}"}, {")": "(", "]": "[", "}": "{"}


@dataclass(frozen=True)
class Token:
    kind: str
    text: str
    start: int

    @property
    def end(self):
        return self.start + len(self.text)


@dataclass(frozen=True)
class Mutant:
    """The bytes from `start` to `end` of `path` become `new`."""
    path: str
    start: int
    end: int
    new: str
    operator: str
    line: int
    before: str   # the lines that change, with single spaces
    after: str

    @property
    def key(self):
        return f"{self.path}: {self.before} => {self.after}"

    def applied(self, source):
        return source[:self.start] + self.new + source[self.end:]


def tokens_of(source):
    found = []
    for match in TOKEN.finditer(source):
        if match.lastgroup not in ("space", "comment", "directive"):
            kind = "text" if match.lastgroup == "mark" else match.lastgroup
            found.append(Token(kind, match.group(), match.start()))
    return found


def spaced(source, token):
    """Whether white space stands on both sides, as it does about an operator with two operands and not about the
    brackets of a template, a pointer or a sign."""
    return source[token.start - 1:token.start].isspace() and source[token.end:token.end + 1].isspace()


def other_number(text):
    plain = text.replace("'", "")
    if re.fullmatch(r"\d+[uUlLzZ]*", plain):
        digits, suffix = re.fullmatch(r"(\d+)(\D*)", plain).groups()
        return f"{int(digits) + 1}{suffix}"
    if re.fullmatch(r"0[xX][0-9a-fA-F]+[uUlL]*", plain):
        digits, suffix = re.fullmatch(r"0[xX]([0-9a-fA-F]+?)([uUlL]*)", plain).groups()
        return f"{hex(int(digits, 16) + 1)}{suffix}"
    try:
        value = float(plain)
    except ValueError:
        return None
    changed = repr(value * 1.1) if value else "1.0"
    return changed if re.search(r"[.e]", changed) else changed + ".0"


def partners(tokens):
    """For each bracket, the place of the one that closes or opens it."""
    out, open_ones = {}, []
    for i, token in enumerate(tokens):
        if token.kind != "sign":
            continue
        if token.text in OPENS:
            open_ones.append(i)
        elif token.text in CLOSES and open_ones:
            out[i] = open_ones.pop()
            out[out[i]] = i
    return out


def arguments_of(tokens, first, last, partner):
    """The arguments between two brackets as (first, last) tokens; none where one of them is empty."""
    out, start, i = [], first + 1, first + 1
    while i <= last:
        text = tokens[i].text
        if tokens[i].kind == "sign" and text in OPENS and i != last:
            i = partner.get(i, i)
        elif i == last or (tokens[i].kind == "sign" and text == ","):
            if start == i:
                return []
            out.append((start, i - 1))
            start = i + 1
        i += 1
    return out


def statements(tokens, partner):
    """Pairs of first token and semicolon, for what ends with a semicolon outside the brackets of a loop's head."""
    for end, token in enumerate(tokens):
        if token.text != ";" or token.kind != "sign":
            continue
        i = end - 1
        while i >= 0:
            text = tokens[i].text if tokens[i].kind == "sign" else ""
            if text in (")", "]") or (text == "}" and tokens[i + 1].text in (")", ",", ".", ";", "]")):
                after = i
                i = partner.get(i, -1)
                if i < 0 or (text == ")" and i > 0 and tokens[i - 1].text in ("if", "for", "while")
                             and tokens[after + 1].text != ";"):
                    i = after
                    break
                i -= 1
                continue
            if text in (";", "{", "}", "(") or tokens[i].text == "else" or text == ":" and tokens[i - 1].text in (
                    "public", "private", "default"):
                break
            i -= 1
        if i >= 0 and tokens[i].text != "(" and i + 1 < end:
            yield i + 1, end


def swappable(tokens, i):
    """A name of a value: not a keyword, function, type, scope or the name that a declaration gives."""
    token = tokens[i]
    after = tokens[i + 1].text if i + 1 < len(tokens) else ""
    before = tokens[i - 1] if i else None
    if token.kind != "name" or token.text in KEYWORDS or not token.text[0].islower():
        return False
    if after in ("(", "::", "<", "{") or (before and before.text in ("::", "~")):
        return False
    declared = before and (before.kind == "name" and before.text != "return" or before.text in ("&", "*", ">"))
    return not declared and not (i + 1 < len(tokens) and tokens[i + 1].kind == "name")


def use_of(tokens, i):
    """What is done with a name: whether it is a member, and whether a member or an element of it is taken. Names that
    are used alike may well be of one type."""
    after = tokens[i + 1].text
    return tokens[i - 1].text in (".", "->"), "." if after in (".", "->") else after if after == "[" else ""


def declared(source, tokens, i):
    """Whether a type stands before the name, so that it is a declaration's own."""
    if i == 0:
        return False
    before = tokens[i - 1]
    if before.kind == "name":
        return before.text not in ("return", "else", "throw", "co_return")
    return before.text in (">", "&", "*") and source[before.end:before.end + 1].isspace() and not spaced(source, before)


def changes(source):
    """Every change as (start, end, new text, name of the operator)."""
    tokens = tokens_of(source)
    partner = partners(tokens)
    for i, token in enumerate(tokens):
        before = tokens[i - 1].text if i else ""
        if token.kind == "sign" and token.text in OTHER_SIGN:
            step = token.text in ("++", "--")
            beside_text = "text" in (tokens[i - 1].kind, tokens[min(i + 1, len(tokens) - 1)].kind)
            if beside_text and token.text in ("+", "+="):
                continue   # texts are joined and never subtracted
            if step or (spaced(source, token) and before not in ("operator", "return", "=", "(", ",")):
                yield token.start, token.end, OTHER_SIGN[token.text], "operator"
        elif token.kind == "sign" and token.text == "!":
            yield token.start, token.end, "", "negation removed"
        elif token.kind == "name" and token.text in OTHER_NAME and not declared(source, tokens, i):
            yield token.start, token.end, OTHER_NAME[token.text], "word"
        elif token.kind == "number":
            new = other_number(token.text)
            if new:
                yield token.start, token.end, new, "constant"
        if (token.text == "(" and i and tokens[i - 1].kind == "name" and before not in KEYWORDS | SYMMETRIC
                and i in partner and not declared(source, tokens, i - 1)):
            parts = arguments_of(tokens, i, partner[i], partner)
            for (a, b), (c, d) in zip(parts, parts[1:]):
                first, second = source[tokens[a].start:tokens[b].end], source[tokens[c].start:tokens[d].end]
                if first != second:
                    between = source[tokens[b].end:tokens[c].start]
                    yield tokens[a].start, tokens[d].end, second + between + first, "arguments swapped"
    for first, end in statements(tokens, partner):
        if any(tokens[i].text == "reserve" for i in range(first, end)):
            continue   # which asks for room ahead of time, and does nothing else
        names = {}
        for i in range(first, end):
            if swappable(tokens, i):
                names.setdefault((use_of(tokens, i), tokens[i].text), []).append(i)
        for (use, name), places in names.items():
            others = sorted({other for use_there, other in names if use_there == use and other != name})
            if others:
                digest = hashlib.sha256(f"{name} {others}".encode()).digest()
                other, i = others[digest[0] % len(others)], places[digest[1] % len(places)]
                yield tokens[i].start, tokens[i].end, other, "name of a neighbour"
        head, second = tokens[first], tokens[first + 1]
        removable = head.text in ("return", "continue", "break", "throw") and tokens[first - 1].text == ")"
        expression = (head.kind == "name" and head.text not in NOT_A_STATEMENT and second.kind == "sign"
                      and second.text not in ("&", "*", "<", ";", ">", ":"))
        if expression and second.text == "::":
            expression = any(tokens[i].text == "(" for i in range(first, end))
        if removable or expression or head.text in ("++", "--"):
            yield head.start, tokens[end].start, "", "statement removed"


def squeezed(text):
    return " ".join(text.split())


def mutants_of(path, source):
    out, seen = [], set()
    for start, end, new, operator in changes(source):
        if (start, end, new) in seen:
            continue
        seen.add((start, end, new))
        line_start = source.rfind("\n", 0, start) + 1
        line_end = source.find("\n", end)
        line_end = len(source) if line_end < 0 else line_end
        before = squeezed(source[line_start:line_end])
        after = squeezed(source[line_start:start] + new + source[end:line_end])
        if before != after:
            out.append(Mutant(path, start, end, new, operator, source.count("\n", 0, start) + 1, before, after))
    return out


def in_order(mutants, seed):
    """In an order that the seed alone makes, and that stays much the same while the sources change."""
    return sorted(mutants, key=lambda m: (hashlib.sha256(f"{seed} {m.key}".encode()).hexdigest(), m.start))
