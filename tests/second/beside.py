"""Random finds that are well as each method saw them, or as each was called, and may not be well beside each other."""
from fractions import Fraction

from criteria import SPOKEN
from finds import STEPS, Retry, to_nm
from language import INCH, MM, Env, exactly
from together import over_several

SHAPES = ["linear indication", "rounded indication"]


class Beside:
    def over_methods(self):
        return [(r, c) for r, c in self.targets if over_several(r) and len(r.exams) > 1 and r.limits[c] not in SPOKEN]

    def long(self):
        return [(r, c) for r, c in self.targets if r.measure in ("length", "size") and
                r.compare in ("at most", "under") and r.limits[c] not in SPOKEN]

    def beside(self, rule, name):
        self.at = Fraction(self.rng.randint(0, 10)) * MM
        return self.by_turns(rule, name) if over_several(rule) else self.in_pieces(rule, name)

    def small(self, rule, name, most):
        """A find of the rule of which `most` in a sum would do."""
        rng = self.rng
        for _ in range(20):
            one = {"type": self.type_of(rule), "depth": MM / 10, "transition": "smooth"}
            if rng.random() < 0.7 and rule.of_type("gas pore"):
                one["type"] = "gas pore"
            limit = self.limit_of(rule, name, Env({**self.seen.values, "larger size": exactly(MM)}))
            size = rng.choice([MM / 5, MM / 2, MM, 2 * MM])
            if limit and rule.summed in ("length", "size"):
                size = max(to_nm(limit / most) + rng.choice(STEPS), 1)
            one["length"] = size
            one["width"] = max(to_nm(size * Fraction(1, rng.choice([1, 1, 1, 5]))), 1)
            if self.fits(rule, one):
                return one
        raise Retry()

    def by_turns(self, rule, name):
        """By one method and another; some of it seen by both, not quite at one place."""
        rng, out = self.rng, []
        count = rng.choice([2, 2, 3, 4, 5, 8, 12]) if rule.measure == "count" else rng.choice([2, 2, 3, 4])
        one = self.small(rule, name, rng.choice([1, 2, count]))
        for k in range(count):
            if rng.random() < 0.3:
                one = self.small(rule, name, count)
            edge = max(INCH // 128, one["length"] // 10)
            gap = rng.choice([edge, edge + rng.choice(STEPS), MM / 2, INCH / 16, 20 * MM, 60 * MM])
            mine = self.place(dict(one), gap if out else 0)
            method = rule.exams[k % len(rule.exams)] if rng.random() < 0.8 else rng.choice(rule.exams)
            if rule.windows[name] and "longest" in rule.windows[name] or rng.random() < 0.1:
                mine["across"], mine["left"] = Fraction(rng.choice([0, 0, 1, 5])) * MM, rng.random() < 0.5
            out.append((method, mine))
            if rng.random() < 0.3:
                off = rng.choice([0, one["length"] // 2, one["length"] + edge, one["length"] + edge + rng.choice(STEPS)])
                again = dict(mine, at=max(mine["at"] + rng.choice([1, -1]) * to_nm(off), Fraction(0)))
                if rng.random() < 0.2:
                    again["type"] = rng.choice(SHAPES + [self.type_of(rule)])
                if rng.random() < 0.2:
                    again["side"], mine["side"] = rng.choice(["face", "root"]), "face"
                out.append((rng.choice([m for m in rule.exams if m != method]), again))
        for _, one in out:
            if rng.random() < 0.1:
                one.pop("at")
        return out

    def in_pieces(self, rule, name):
        """Each short enough, by its name or another's, and touching or nearly so."""
        rng, out = self.rng, []
        method = rng.choice(rule.exams)
        for _ in range(rng.choice([2, 2, 3])):
            one = {"type": self.type_of(rule), "depth": MM / 10}
            limit = self.limit_of(rule, name, self.env_of({**one, "length": MM, "width": MM}))
            if not limit:
                raise Retry()
            one["length"] = max(to_nm(limit / rng.choice([1, 2, 2, 3])) + rng.choice(STEPS), 1)
            one["width"] = max(to_nm(one["length"] / rng.choice([1, 3, 5, 8])), 1)
            self.at = max(self.at - rng.choice([0, 0, 0, 0, 1, one["length"] // 3]), Fraction(0))
            out.append((method, self.place(one, rng.choice([0, 0, 0, 1]))))
        return out
