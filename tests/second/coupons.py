"""Random coupons in the exchange format: each aims at one rule and class, with values just at, under and over."""
import random
import re
from fractions import Fraction

from beside import Beside
from criteria import SPOKEN
from facts import Coupon
from finds import METHODS, STEPS, Finds, Retry, to_nm
from language import INCH, MM, YES, NotCovered, read_number

FACTS = {"joint": ["groove", "groove", "fillet", "plug"], "joint-form": ["butt", "corner", "tee", "lap", "edge"],
         "form": ["sheet", "plate", "tube"], "magnetic": ["yes", "no"], "sides": ["one", "both"],
         "inside": ["accessible", "closed"], "stress": ["transverse", "parallel"], "operation": ["manual", "machine"],
         "purpose": ["test", "practice"],
         "process": ["GTAW", "GMAW", "SMAW", "GTAW", "FCAW", "OFW", "EBW", "GTAW + SMAW", "GTAW + EBW"],
         "material": ["carbon steel", "4130 steel", "titanium", "nickel alloy", "stainless steel", "aluminium"]}


def written(nm, units, rng):
    """The same length, as somebody would type it."""
    nm = int(nm)
    if units == "in" and nm % 254 == 0 and rng.random() < 0.8:
        return {"typed": decimal(nm, 25_400_000) + " in"}
    return {"typed": decimal(nm, 1_000_000) + " mm", "nm": nm}


def decimal(top, bottom):
    whole, rest = divmod(top, bottom)
    digits = ""
    while rest:
        digit, rest = divmod(rest * 10, bottom)
        digits += str(digit)
    return f"{whole}.{digits}" if digits else str(whole)


def edges_of(criteria):
    """Lengths at which some condition or table of the set turns."""
    text = [c for r in criteria.rules for c in ([r.raw.get("when")] if isinstance(r.raw.get("when"), str)
                                                else r.raw.get("when") or [])]
    text += [band for table in criteria.reader.tables.values() for band in table["rows"]]
    found = set()
    for piece in text:
        for number in re.finditer(r"(?<![\w.])\d[\d./-]*\s*(?:in|mm)(?![\w2])", piece):
            found.add(read_number(number.group())[0])
    return sorted(found) or [INCH / 8]


class Maker(Finds, Beside):
    def __init__(self, criteria, seed):
        self.criteria, self.rng = criteria, random.Random(f"{seed} {criteria.name}")
        self.inches = criteria.units == "in"
        self.edges = edges_of(criteria)
        self.targets = [(r, c) for r in criteria.rules for c in criteria.classes if r.limits[c] != "does not apply"]
        self.types = list(criteria.vocabulary.types)
        self.fitting = {}
        self.near_clauses = criteria.merges + [g for g in criteria.gaps if "nearest gap" in str(g.raw.get("where"))]
        self.shared = [part for part in (self.over_methods(), self.long()) if part]
        self.limits = [t for r in criteria.rules for t in r.limits.values() if t not in SPOKEN]

    def coupon(self, number):
        rng = self.rng
        rule, name = self.targets[number % len(self.targets)]
        beside = bool(self.shared) and rng.random() < 0.35
        if beside:
            rule, name = rng.choice(rng.choice(self.shared))
        for _ in range(60):
            fields = self.fields(rule)
            if beside:
                fields.update(material="carbon steel", magnetic="yes")
            seen = Coupon({"id": "x", "fields": fields, "exams": []})
            if rule.when(seen.values, seen.words) == YES and not self.outside(seen):
                break
        self.seen, self.at = seen, Fraction(0)
        self.length = seen.length or 300 * MM
        finds = []
        for _ in range(5):
            try:
                finds = self.beside(rule, name) if beside else self.aimed(rule, name)
                break
            except (Retry, NotCovered):
                continue
        if self.near_clauses and not beside and rng.random() < 0.3:
            finds += self.neighbours()
        if not beside and rng.random() < 0.35:
            for _ in range(rng.choice([1, 1, 2, 3])):
                finds.append(self.any_find())
        finds = [f for f in finds if self.sensible(f[1])][:24]
        for _, one in finds:
            if "at" in one and rng.random() < (0.01 if beside else 0.05):  # nobody told where it ends
                for key in ("length", "size"):
                    one.pop(key, None)
        if not beside and rng.random() < 0.1:
            finds = self.without_places(finds)
        given = {"id": f"R-{number + 1}", "fields": fields, "exams": self.exams(finds)}
        if not beside or rng.random() < 0.1:
            self.take_away(given)
        return given

    def without_places(self, finds):
        """What is not round, of which nobody said where it is: in two pieces, or one and another beside it."""
        vocabulary, out = self.criteria.vocabulary, []
        for method, one in finds:
            out.append((method, one))
            long = vocabulary.shape(one["type"]) != "rounded" and not vocabulary.measured(one["type"])
            if not long or "length" not in one or self.rng.random() < 0.3:
                continue
            for key in ("at", "end", "middle", "across", "left"):
                one.pop(key, None)
            piece = to_nm(one["length"] * Fraction(self.rng.randint(1, 9), 10))
            if piece > 0 and one.get("width", 0) <= min(piece, one["length"] - piece):
                one["length"] -= piece
                out.append((method, {**one, "length": piece}))
        return out

    def outside(self, seen):
        return self.rng.random() < 0.95 and any(
            p.asked(seen.values, seen.words) == YES and p.when(seen.values, seen.words) != YES
            for p in self.criteria.scope)

    def near_edge(self):
        rng = self.rng
        if rng.random() < 0.5:
            return max(rng.choice(self.edges) + rng.choice(STEPS + [5 * MM / 10, -MM / 10]), MM / 2)
        top = 700 if self.inches else 60000
        return Fraction(rng.randint(10, top)) * (INCH / 1000 if self.inches else MM / 1000)

    def fields(self, rule):
        rng, put = self.rng, lambda nm: written(nm, self.criteria.units, self.rng)
        out = {"criteria": self.criteria.name}
        for field, words in FACTS.items():
            if rng.random() < 0.93:
                out[field] = rng.choice(words)
        thin = self.near_edge()
        thick = thin if rng.random() < 0.7 else thin + rng.randint(1, 5) * MM
        pair = [thin, thick]
        rng.shuffle(pair)
        out["thickness"] = put(pair[0])
        if thick != thin:
            out["thickness-2"] = put(pair[1])
        out["weld-thickness"] = put(thin if rng.random() < 0.6 else to_nm(thin * Fraction(rng.randint(60, 100), 100)))
        out["throat"] = put(to_nm(thin * Fraction(rng.randint(50, 120), 100)))
        size = to_nm(thin * Fraction(rng.randint(60, 150), 100))
        out["fillet-size"] = put(size)
        out["leg"] = put(size * 4)
        out["weld-width"] = put(to_nm(thin * Fraction(rng.randint(100, 300), 100)))
        out["layers"] = str(rng.choice([1, 1, 2, 3]))
        seam = rng.choice(["straight", "longitudinal", "girth"] if out.get("form") == "tube" else ["straight"])
        out["seam"] = seam
        if seam == "girth":
            out["diameter"] = put(max(to_nm(2 * thick + rng.randint(10, 150) * MM), 1))
        else:
            out["weld-length"] = put(rng.choice([30, 50, 76, 100, 120, 200, 300, 400]) * MM + rng.choice(STEPS))
        if rng.random() < 0.03:
            out["also"] = rng.choice(METHODS)
        if rng.random() < 0.2:
            out["units"] = self.criteria.units
        return out

    def exams(self, finds):
        rng, out = self.rng, []
        for method in METHODS:
            mine = [one for m, one in finds if m == method]
            if not mine and rng.random() < 0.12:
                continue
            rng.shuffle(mine)
            exam = {"number": len(out) + 1, "method": method, "date": "2026-03-02", "examiner": "A. Field",
                    "level": rng.choice(["II", "III"]), "found": len(mine), "indications": []}
            luck = rng.random()
            if luck < 0.01:
                del exam["found"]
            elif luck < 0.02:
                exam["found"] += 1
            elif luck < 0.03:
                exam["incomplete"] = "the root was hidden"
            elif luck < 0.035:
                del exam["examiner"]
                exam["finished by"] = "A. Field"
            elif luck < 0.04:
                exam["level"] = "I"
            # What shows at the surface tells no depth (common practice, no source).
            unseen = ("depth", "height") if method in ("MT", "PT") else ()
            for one in mine:
                exam["indications"].append({k: self.text_of(k, v) for k, v in one.items() if k not in unseen})
            out.append(exam)
        count = 0
        for exam in out:
            for one in exam["indications"]:
                count += 1
                one["number"], one["exam"] = count, exam["number"]
        return out

    def text_of(self, key, value):
        if isinstance(value, (str, bool)):
            return value
        if key == "angle":
            return {"typed": decimal(int(value), 1_000_000) + " deg"}
        if key == "area":
            return {"typed": decimal(int(value), 10 ** 12) + " mm2"}
        return written(value, self.criteria.units, self.rng)

    def take_away(self, given):
        """What nobody told: of the coupon, of a find."""
        rng, fields = self.rng, given["fields"]
        if rng.random() < 0.25:
            for _ in range(rng.choice([1, 1, 2])):
                fields.pop(rng.choice([f for f in fields if f != "criteria"]), None)
            if fields.get("seam") != "girth" and "seam" not in fields:
                fields.pop("diameter", None)
        if rng.random() < 0.2:
            finds = [one for exam in given["exams"] for one in exam["indications"]]
            for one in finds:
                keys = [k for k in one if k not in ("type", "number", "exam", "left")]
                if keys and rng.random() < 0.5:
                    gone = rng.choice(keys)
                    one.pop(gone)
                    if gone == "across":
                        one.pop("left", None)
