"""Random finds: at, just under and just over the limits of a rule and the edges of its conditions."""
import re
from fractions import Fraction

from criteria import SPOKEN
from language import MM, NO, Env, exactly, known

METHODS = ["VT", "MT", "PT", "RT"]
STEPS = [-1, 0, 1]


class Retry(Exception):
    """These choices do not go together."""


def to_nm(value):
    return Fraction(int(value))


def set_measure(one, measure, value, rng):
    """That measure, and the others so that they can be."""
    if measure in ("length", "size"):
        for key in ("size", "length"):
            one.pop(key, None)
        key = measure if measure == "length" or rng.random() < 0.5 else "length"
        one[key] = value
        if "width" in one:
            one["width"] = min(one["width"], value)
        if key == "size":
            one.pop("width", None)
    elif measure == "width":
        one.pop("size", None)
        one["width"] = value
        one["length"] = max(one.get("length", 0), value)
    else:
        one[measure] = value


class Finds:
    """Makes finds on the weld in hand: `seen`, of that `length`; `at` is where the last one ends."""

    # finds: (method, dict of fractions and words)

    def type_of(self, rule):
        if rule not in self.fitting:
            fit = [t for t in self.types if rule.of_type(t)]
            alike = [t for t in fit if rule.shape and self.criteria.vocabulary.shape(t) == rule.shape]
            self.fitting[rule] = alike * 20 + fit
        return self.rng.choice(self.fitting[rule])

    def limit_of(self, rule, name, env):
        text = rule.limits[name]
        if text in SPOKEN:
            return None
        value = self.criteria.reader.value(text, env)
        return value[0] if known(value) else None

    def step(self, limit):
        rng = self.rng
        far = [limit // 10, -limit // 10, limit] if limit else [MM]
        return max(to_nm(limit + rng.choice(STEPS * 3 + far)), 1)

    def some(self):
        """A length that somebody might have measured."""
        rng = self.rng
        if rng.random() < 0.4:
            value = self.criteria.reader.value(rng.choice(self.limits), self.seen.values) if self.limits else (1, 1)
            if known(value) and MM / 100 <= value[0] <= 100 * MM:
                return max(to_nm(value[0] + rng.choice(STEPS)), 1)
        return Fraction(rng.randint(1, 300)) * MM / 100 if rng.random() < 0.8 else rng.randint(3, 40) * MM

    def measures(self):
        """A bit of everything."""
        rng = self.rng
        out = {"length": self.some()}
        if rng.random() < 0.75:
            ratio = rng.choice([Fraction(1), Fraction(1, 2), Fraction(1, 3), Fraction(1, 5)])
            out["width"] = max(to_nm(out["length"] * ratio) + rng.choice([0, 0, 1, -1]), 1)
            out["width"] = min(out["width"], out["length"])
        if rng.random() < 0.7:
            out["depth"] = self.some()
        if rng.random() < 0.7:
            out["height"] = self.some()
        if rng.random() < 0.5:
            out["transition"] = rng.choice(["smooth", "smooth", "sharp"])
        if rng.random() < 0.2:
            out["side"] = rng.choice(["face", "root"])
        if rng.random() < 0.15:
            for key in ("length", "width"):
                out.pop(key, None)
            out["size"] = self.some()
        return out

    def env_of(self, one):
        values = {k: exactly(v) for k, v in one.items() if isinstance(v, (int, Fraction))}
        if "length" in one and "size" not in one:
            values["size"] = values["length"]
        if "size" in one and "length" not in one:
            values["length"] = values["size"]
        return Env({**self.seen.values, **values, "nearest gap": exactly(10 * MM),
                    "nearest like gap": exactly(10 * MM)})

    def fits(self, rule, one):
        words = {k: {one[k]} for k in ("side", "transition") if k in one}
        return rule.where(self.env_of(one), {**self.seen.words, **words}) != NO

    def place(self, one, gap):
        """Behind the last one."""
        extent = one.get("length", one.get("size", 0))
        one["at"] = self.at + gap
        self.at = one["at"] + extent
        if self.at > self.length:
            raise Retry()
        return one

    def base(self, rule):
        for _ in range(12):
            one = self.measures()
            one["type"] = self.type_of(rule)
            for text in self.edge_texts(rule):
                key, value = text
                one[key] = value
            if self.fits(rule, one):
                return one
        raise Retry()

    def edge_texts(self, rule):
        """Measures that a `where` turns on, set near that edge."""
        where = rule.raw.get("where") or []
        for text in [where] if isinstance(where, str) else where:
            found = re.match(r"(depth|size|length|width) (over|at most|at least) (.*)$", text)
            if not found or "depth" in found.group(3) or "width" in found.group(3):
                continue
            value = self.criteria.reader.value(found.group(3), self.seen.values)
            if known(value) and value[0] > 0:
                yield found.group(1), max(to_nm(value[0]) + self.rng.choice([-1, 0, 1, 1, int(value[0] // 2)]), 1)

    def aimed(self, rule, name):
        rng = self.rng
        self.at = Fraction(rng.randint(0, 10)) * MM
        method = rng.choice(rule.exams)
        if rule.measure == "gap":
            return self.aimed_gap(rule, name, method)
        if rule.measure == "count" or rule.summed:
            return self.aimed_many(rule, name, method)
        one = self.base(rule)
        limit = self.limit_of(rule, name, self.env_of(one)) if rule.measure else None
        if limit is not None:
            set_measure(one, rule.measure, self.step(limit), rng)
        return [(method, self.place(one, rng.randint(0, 5) * MM))]

    def aimed_gap(self, rule, name, method):
        rng, out = self.rng, []
        for _ in range(rng.choice([2, 2, 3])):
            one = self.base(rule)
            if out:
                larger = max(x.get("size", x.get("length", 0)) for x in (one, out[-1][1]))
                env = Env({**self.seen.values, "larger size": exactly(larger)})
                limit = self.limit_of(rule, name, env)
                self.place(one, self.step(limit) if limit is not None else MM)
            else:
                self.place(one, Fraction(0))
            out.append((method, one))
        return out

    def aimed_many(self, rule, name, method):
        rng, out = self.rng, []
        limit = self.limit_of(rule, name, self.seen.values)
        window = rule.windows[name]
        counting = rule.measure == "count"
        if limit is None:
            count = rng.randint(1, 3)
        elif counting:
            count = int(limit) + rng.choice([0, 1, 1, 2, 3])
        else:
            count = rng.choice([1, 2, 2, 3, 4])
        pieces = self.split(self.step(limit), count) if limit and not counting else [None] * count
        even = bool(limit) and not counting and rng.random() < 0.4
        if even:  # each small enough for itself, and not too near
            count = rng.choice([3, 4, 5, 6, 8])
            pieces = [to_nm(self.step(limit) / count) + 1] * count
        first = self.base(rule)
        for amount in pieces:
            one = dict(first) if counting or rng.random() < 0.7 else self.base(rule)
            if rng.random() < (0 if even else 0.3):
                one["type"] = self.type_of(rule)
            if counting:
                at_edge = "size" in dict(self.edge_texts(rule))
                small = one.get("size") if at_edge else rng.choice([2 * MM, 3 * MM, max(to_nm(self.some() // 4), 1)])
                one = {"type": one["type"], "size": small or MM}
                if not self.fits(rule, one):
                    raise Retry()
                if window and "longest" in window and rng.random() < 0.9:
                    one["across"] = Fraction(rng.randint(0, 12)) * MM
                    one["left"] = rng.random() < 0.5
            elif amount is not None and rule.summed in ("length", "size"):
                set_measure(one, rule.summed, amount, rng)
            elif amount is not None and rule.summed == "area":
                one = self.of_area(one, amount)
            self.place(one, (10 * MM if out else 0) if even else self.between(rule, out, window))
            out.append((method, one))
        return out

    def of_area(self, one, amount):
        side = to_nm(Fraction(int(float(amount * 4 / 3) ** 0.5)))
        one.pop("size", None)
        one["length"] = max(side, 1)
        one["width"] = max(side if self.rng.random() < 0.5 else side // 2, 1)
        if self.rng.random() < 0.6:
            one["area"] = max(int(amount), 1)
        return one

    def between(self, rule, out, window):
        rng = self.rng
        if not out:
            return Fraction(0)
        if rule.linked and rng.random() < 0.93:
            right = rule.linked.replace("gap at most ", "")
            longest = max((o[1].get("length", o[1].get("size", 0)) for o in out), default=0)
            value = self.criteria.reader.value(right, Env({**self.seen.values, "longest": exactly(longest)}))
            if known(value):
                return max(to_nm(value[0]) + rng.choice(STEPS), 0)
        if window and window not in ("whole weld",) and "longest" not in window and rng.random() < 0.4:
            value = self.criteria.reader.value(window, self.seen.values)
            if known(value):
                back = self.at - out[0][1]["at"]
                return max(to_nm(value[0] - back) + rng.choice(STEPS), 0)
        return rng.choice([0, 1, MM / 10, MM, 3 * MM, 10 * MM, 11 * MM])

    def split(self, total, count):
        cuts = sorted(self.rng.randint(1, max(int(total), 2)) for _ in range(count - 1))
        edges = [0] + cuts + [int(total)]
        return [Fraction(max(b - a, 1)) for a, b in zip(edges, edges[1:])]

    def neighbours(self):
        """Two or three about as near as the merging clauses ask, or a gap that speaks of neighbours."""
        rng = self.rng
        clause = rng.choice(self.near_clauses)
        method, out = rng.choice(clause.exams), []
        kind = self.type_of(clause)
        for _ in range(rng.choice([2, 2, 3])):
            one = self.measures()
            one["type"] = kind if rng.random() < 0.7 else self.type_of(clause)
            gap = Fraction(0)
            if out:
                sizes = sorted(x.get("length", x.get("size", 0)) for x in (one, out[-1][1]))
                gap = max(rng.choice([sizes[0], sizes[1], Fraction(0)]) + rng.choice(STEPS), 0)
            try:
                out.append((method, self.place(one, gap + (20 * MM if not out else 0))))
            except Retry:
                break
        if out and rng.random() < 0.2:  # nobody told where it ends
            for key in ("length", "size"):
                out[0][1].pop(key, None)
        return out

    def any_find(self):
        rng = self.rng
        one = self.measures()
        one["type"] = rng.choice(self.types)
        if rng.random() < 0.4:
            one["angle"] = rng.choice([90, 100, 110, 150]) * 1_000_000 + rng.choice(STEPS)
        room = self.length - one.get("length", one.get("size", 0))
        if room > 0 and rng.random() < 0.9:
            one["at"] = Fraction(rng.randint(0, int(room)))
        return (rng.choice(METHODS), one)

    def sensible(self, one):
        """What the program would refuse to enter is not entered."""
        vocabulary = self.criteria.vocabulary
        if "size" in one and not vocabulary.measured(one["type"]):
            one.pop("length", None)
            one.pop("width", None)
        if "width" in one and "length" in one:
            one["width"] = min(one["width"], one["length"])
        extent = one.get("length", one.get("size", 0))
        if extent > self.length:
            return False
        return "at" not in one or one["at"] + extent <= self.length
