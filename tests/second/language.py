"""The words of a criteria file: numbers with units, formulas, conditions, bands.

Everything is a pair (low, high) of fractions in the base unit (nanometre, square nanometre, millionth of a degree,
plain number): what nobody told lies between nought and infinity.
"""
import re
from fractions import Fraction

INF = float("inf")
UNKNOWN = (0, INF)
BEYOND = (INF, INF)  # longer than any: the way from a lone find to its next neighbour
NO, MAYBE, YES = 0, 1, 2

INCH = Fraction(25_400_000)
MM = Fraction(1_000_000)
UNITS = {"in2": INCH * INCH, "mm2": MM * MM, "in": INCH, "mm": MM, "thou": INCH / 1000, "ft": 12 * INCH,
         "cm": 10 * MM, "%": Fraction(1, 100), "deg": Fraction(1_000_000)}


class NotCovered(Exception):
    """A construct of the language that this second opinion does not speak of."""


def known(pair):
    return pair[0] == pair[1]


def whole(value):
    """The same number; an int where it is one, which is reckoned with faster."""
    return value.numerator if value.denominator == 1 else value


def exactly(value):
    value = whole(value)
    return (value, value)


def compare(a, word, b):
    """Truth of `a word b` for two pairs."""
    if word in ("over", "at least"):
        if a == BEYOND:
            return YES
        return compare(b, {"over": "under", "at least": "at most"}[word], a)
    if a == BEYOND:
        return NO
    if b == BEYOND:
        return YES
    if word == "at most":
        return YES if a[1] <= b[0] else NO if a[0] > b[1] else MAYBE
    return YES if a[1] < b[0] else NO if a[0] >= b[1] else MAYBE


def times(x, y):
    return 0 if x == 0 or y == 0 else x * y


NUMBER = re.compile(r"(\d+)-(\d+)/(\d+)|(\d+)/(\d+)|(\d+(?:\.\d+)?)")
UNIT = re.compile(r"\s*(in2|mm2|in|mm|thou|ft|cm|%|deg)(?![\w-])")


def read_number(text, at=0):
    """The number with its unit that begins at `at`, and where it ends."""
    found = NUMBER.match(text, at)
    if not found:
        raise NotCovered(f"number: {text[at:]}")
    whole, up, down, top, bottom, plain = found.groups()
    if plain:
        value = Fraction(plain)
    elif top:
        value = Fraction(int(top), int(bottom))
    else:
        value = int(whole) + Fraction(int(up), int(down))
    unit = UNIT.match(text, found.end())
    if unit:
        return value * UNITS[unit.group(1)], unit.end()
    return value, found.end()


class Reader:
    """Reads formulas and conditions over the names of one set."""

    def __init__(self, names, formulas, tables, careful=False, blanks=()):
        self.blanks = blanks      # ids of numbers that the file leaves blank
        self.names = names        # what the author wrote: the quantity's own name
        self.formulas = formulas  # by name: text
        self.tables = tables      # by name: {by, rounded to, rows}
        self.careful = careful    # a formula with an unknown part is unknown as a whole
        self.read = {}

    def formula(self, text):
        """A function of an environment: name -> pair."""
        if text not in self.read:
            parser = FormulaParser(self, text)
            evaluate = parser.sum()
            if parser.rest():
                raise NotCovered(f"formula: {text}")
            self.read[text] = evaluate
        return self.read[text]

    def value(self, text, env):
        if not self.careful or text in self.names:
            return self.formula(text)(env)
        asked = Asked(env)
        value = self.formula(text)(asked)
        return UNKNOWN if asked.unknown else value

    def band(self, text):
        """[(word, formula)]: `over 1/8 in to 3/16 in`."""
        parts = re.split(r"(?:^|\s)(from|at least|up to|at most|to|over|under|below)\s+", text)
        if parts[0].strip() or len(parts) < 3:
            raise NotCovered(f"band: {text}")
        words = {"from": "at least", "up to": "at most", "to": "at most", "below": "under"}
        return [(words.get(w, w), right.strip()) for w, right in zip(parts[1::2], parts[2::2])]

    def condition(self, text):
        """A function of (environment, words): truth. Words of a fact are a set, empty if nobody told."""
        asked = re.match(r"(.+?) is (not )?(.+)$", text)
        if asked:
            fact, denied, words = asked.groups()
            fitting = {w.strip() for w in re.split(r"\s+or\s+|,\s*", words)}

            def of_word(env, facts):
                said = facts.get(fact, set())
                if not said:
                    return MAYBE
                fit = [(w in fitting) != bool(denied) for w in said]
                return YES if all(fit) else MAYBE if any(fit) else NO
            return of_word
        first = re.search(r"\s(from|at least|up to|at most|over|under|below)\s", text)
        if not first:
            raise NotCovered(f"condition: {text}")
        left, edges = text[:first.start()].strip(), self.band(text[first.start():].strip())

        def of_numbers(env, facts):
            value = self.value(left, env)
            return min(compare(value, word, self.value(right, env)) for word, right in edges)
        self.formula(left)
        for _, right in edges:
            self.formula(right)
        return of_numbers

    def conditions(self, texts):
        read = [self.condition(t) for t in ([texts] if isinstance(texts, str) else texts or [])]
        return lambda env, facts: min([c(env, facts) for c in read], default=YES)

    def table(self, name):
        table = self.tables[name]
        if set(table) - {"by", "rounded to", "rows"}:
            raise NotCovered(f"table {name}: {sorted(table)}")
        by = self.formula(table["by"])
        rows = [(self.band(band), self.formula(value)) for band, value in table["rows"].items()]
        step = read_number(table["rounded to"])[0] if "rounded to" in table else None

        def look_up(env):
            value = by(env)
            if not known(value):
                return UNKNOWN
            if step:
                value = exactly(step * ((value[0] / step + Fraction(1, 2)) // 1))
            for band, of_row in rows:
                if all(compare(value, w, self.formula(e)(env)) == YES for w, e in band):
                    return of_row(env)
            env.hole = True
            return UNKNOWN
        return look_up


class Env(dict):
    """Values by quantity. What nobody told is unknown."""
    hole = False

    def __missing__(self, key):
        return UNKNOWN


class Asked(dict):
    """Remembers whether something unknown was asked for."""

    def __init__(self, env):
        super().__init__()
        self.env, self.unknown, self.hole_ = env, False, False

    @property
    def hole(self):
        return self.hole_

    @hole.setter
    def hole(self, value):
        self.hole_ = self.unknown = value

    def __missing__(self, key):
        value = self.env[key]
        self.unknown |= not known(value)
        return value


class FormulaParser:
    """sum := product {(+|-) product}; product := one {(x|/) one}; one := (sum) | lesser of ... and ... | number |
    table NAME | name."""

    def __init__(self, reader, text):
        self.reader, self.text, self.at = reader, text, 0

    def rest(self):
        return self.text[self.at:].strip()

    def take(self, pattern):
        found = re.compile(r"\s*(" + pattern + ")").match(self.text, self.at)
        if found:
            self.at = found.end()
        return found and found.group(1)

    def sum(self):
        left = self.product()
        while sign := self.take(r"\+|-(?=\s)"):
            right, a = self.product(), left
            if sign == "+":
                left = lambda env, a=a, b=right: tuple(x + y for x, y in zip(a(env), b(env)))
            else:
                left = lambda env, a=a, b=right: (a(env)[0] - b(env)[1], a(env)[1] - b(env)[0])
        return left

    def product(self):
        left = self.one()
        while sign := self.take(r"x(?=[\s(])|/"):
            right, a = self.one(), left
            if sign == "x":
                left = lambda env, a=a, b=right: tuple(times(x, y) for x, y in zip(a(env), b(env)))
            else:
                left = lambda env, a=a, b=right: quotient(a(env), b(env))
        return left

    def one(self):
        if self.take(r"\("):
            inner = self.sum()
            if not self.take(r"\)"):
                raise NotCovered(f"formula: {self.text}")
            return inner
        if which := self.take("lesser of|greater of"):
            parts = [self.sum()]
            while self.take("and(?=\\s)"):
                parts.append(self.sum())
            pick = min if which == "lesser of" else max
            return lambda env: tuple(pick(side) for side in zip(*(p(env) for p in parts)))
        if self.take("table(?=\\s)"):
            return self.reader.table(self.take(r"[\w-]+"))
        if self.take("blank(?=\\s)"):
            # What nobody filled is a limit that nobody knows.
            blank = "blank " + self.take(r"[a-z0-9-]+")
            if blank[6:] not in self.reader.blanks:
                raise NotCovered(f"formula: {self.text}")
            return lambda env: env[blank]
        if self.take("limit of"):
            raise NotCovered(f"formula: {self.text}")
        start = re.compile(r"\s*").match(self.text, self.at).end()
        if self.text[start:start + 1].isdigit():
            value, self.at = read_number(self.text, start)
            if self.take("or(?=\\s)"):
                raise NotCovered(f"a value in both units: {self.text}")
            return lambda env, v=exactly(value): v
        names = list(self.reader.names) + list(self.reader.formulas)
        for name in sorted(names, key=len, reverse=True):
            if self.take(re.escape(name) + r"(?![\w-])"):
                if name in self.reader.formulas:
                    return self.reader.formula(self.reader.formulas[name])
                quantity = self.reader.names[name]
                return lambda env: env[quantity]
        raise NotCovered(f"formula: {self.text[start:]}")


def quotient(a, b):
    if b == BEYOND or not known(b) or b[0] == 0:
        return (0 if b[1] == INF else Fraction(a[0]) / b[1], INF if b[0] == 0 or a[1] == INF else Fraction(a[1]) / b[0])
    return tuple(INF if side == INF else whole(Fraction(side) / b[0]) for side in a)
