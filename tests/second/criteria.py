"""A criteria file as it stands, read by nothing but a YAML reader: every scalar is a text."""
import yaml

from language import NotCovered, Reader

COUPON = ["thinner member", "thicker member", "weld thickness", "bead thickness", "throat", "weld length",
          "outside diameter", "specified fillet size", "longest leg", "weld width", "design temperature", "layers"]
FIND = ["length", "width", "depth", "height", "size", "angle", "area", "nearest gap", "nearest like gap", "gap", "smaller size",
        "larger size", "shorter length", "longer length", "longest"]

HEAD = {"set", "title", "edition", "source", "notes", "units", "classes", "ordered", "quantities", "scope", "formulas",
        "required exams", "linear", "relevance", "merge", "rules", "tables", "gaps", "silence", "blanks"}
RULE = {"id", "title", "types", "except", "exams", "when", "where", "shape", "measure", "at most", "at least", "under",
        "over", "allowed", "window", "short weld", "linked", "must be measured", "clause", "standing", "standing of",
        "reading", "says", "area"}
SPOKEN = {"none", "no limit", "a person decides", "not said", "does not apply"}


def listed(value):
    return [value] if isinstance(value, str) else list(value or [])


class Vocabulary:
    def __init__(self, path):
        with open(path, encoding="utf-8") as file:
            types = yaml.load(file, yaml.BaseLoader)["types"]
        self.types = {t["name"]: t for t in types}

    def wider(self, name):
        """The type and those it belongs to, from the narrowest."""
        while name:
            yield name
            name = self.types[name].get("under")

    def shape(self, name):
        return next((s for s in (self.types[n].get("shape") for n in self.wider(name)) if s), None)

    def is_volume(self, name):
        """A hollow or an inclusion, by its number in ISO 6520-1."""
        code = str(self.types[name].get("iso", {}).get("code", ""))
        return code[:2] in ("20", "30") or code == "516"

    def measured(self, name):
        return self.types[name].get("measured") == "yes"


# Several finds under one name: ISO 6520-1, 2012, 2013 and 2014.
GROUPS = {"uniformly distributed porosity", "clustered porosity", "linear porosity"}


def check_keys(what, given, allowed):
    unknown = set(given) - allowed
    if unknown:
        raise NotCovered(f"{what}: {sorted(unknown)}")


class Part:
    """A rule, a clause or a gap: which finds it speaks of, and its conditions."""

    def __init__(self, raw, criteria):
        self.raw, self.id = raw, raw.get("id") or raw.get("text")
        self.criteria, self.known_types = criteria, {}
        self.of_finds = "types" in raw
        self.types, self.but = listed(raw.get("types")), listed(raw.get("except"))
        self.exams = listed(raw.get("exams"))
        self.when = criteria.reader.conditions(raw.get("when"))
        self.where = criteria.reader.conditions(raw.get("where"))
        self.shape = raw.get("shape")
        self.classes = listed(raw.get("classes")) or criteria.classes

    def of_type(self, name):
        if name not in self.known_types:
            self.known_types[name] = self.holds_type(name)
        return self.known_types[name]

    def holds_type(self, name):
        vocabulary = self.criteria.vocabulary
        wider = set(vocabulary.wider(name))
        wanted = wider & set(self.types) or ("any" in self.types and not vocabulary.measured(name))
        return bool(wanted) and not wider & set(self.but)

    def speaks_of(self, name, method):
        return self.of_finds and (not self.exams or method in self.exams) and self.of_type(name)

    def speaks_of_part(self, item):
        """Of what came together it speaks where it speaks of any of them."""
        return any(self.speaks_of(f.type, f.method) for f in item.finds)


class Rule(Part):
    def __init__(self, raw, criteria):
        check_keys(f"rule {raw['id']}", raw, RULE)
        super().__init__(raw, criteria)
        self.compare = next((w for w in ("at most", "at least", "under", "over") if w in raw), None)
        limits = raw.get(self.compare) if self.compare else raw["allowed"]
        self.limits = {c: (limits if isinstance(limits, str) else limits[c]) for c in criteria.classes}
        for text in self.limits.values():
            if text not in SPOKEN:
                criteria.reader.formula(text)
        self.measure = raw.get("measure")
        self.summed = self.measure[7:] if self.measure and self.measure.startswith("sum of ") else None
        self.as_rectangles = raw.get("area") == "rectangle"
        window = raw.get("window")
        self.windows = {c: (window if window is None or isinstance(window, str) else window[c])
                        for c in criteria.classes}
        self.in_proportion = raw.get("short weld") == "in proportion"
        self.linked = raw.get("linked")
        self.must_be_measured = raw.get("must be measured") == "yes"
        if not self.of_finds:
            raise NotCovered(f"rule {self.id} of the coupon itself")


class Criteria:
    def __init__(self, path, vocabulary, careful=True):
        with open(path, encoding="utf-8") as file:
            raw = yaml.load(file, yaml.BaseLoader)
        self.vocabulary = vocabulary
        self.not_covered = []  # constructs, each with its reason
        self.name, self.units = raw["set"], raw["units"]
        if set(raw) - HEAD:
            raise NotCovered(f"{self.name}: {sorted(set(raw) - HEAD)}")
        self.classes = [c if isinstance(c, str) else c["id"] for c in raw["classes"]]
        names = {n: n for n in COUPON + FIND}
        names.update(raw.get("quantities", {}))
        self.reader = Reader(names, raw.get("formulas", {}), raw.get("tables", {}), careful,
                             [b["id"] for b in raw.get("blanks", [])])
        self.rules = self.read_each(raw.get("rules", []), lambda r: Rule(r, self))
        self.gaps = self.read_each(raw.get("gaps", []), lambda g: Part(g, self))
        self.relevance = self.read_each(raw.get("relevance", []), self.relevance_part)
        self.merges = self.read_each(raw.get("merge", []), self.merge_part)
        self.required = self.read_each(raw.get("required exams", []), lambda e: Part(e, self))
        scope = raw.get("scope", [])
        self.scope_not_read = scope == "not read"
        self.scope = [] if scope == "not read" else self.read_each(scope, self.scope_part)
        bold = Reader(names, raw.get("formulas", {}), raw.get("tables", {}), False)
        self.linear = bold.condition(raw["linear"]["when"]) if "linear" in raw else None

    def read_each(self, parts, read):
        out = []
        for part in parts:
            try:
                out.append(read(part))
            except NotCovered as why:
                self.not_covered.append(f"{self.name}: {why}")
        return out

    def relevance_part(self, raw):
        part = Part(raw, self)
        part.ignore = self.reader.conditions(raw["ignore"])
        # What looks at single finds does not reach a group, unless it names it.
        speaks_of = part.speaks_of
        part.speaks_of = lambda name, method: speaks_of(name, method) and (name not in GROUPS or name in part.types)
        return part

    def merge_part(self, raw):
        part = Part(dict(raw, when=None), self)
        part.near = self.reader.condition(raw["when"])
        part.takes = lambda a, b: all(part.speaks_of(f.type, f.method) for f in a.finds + b.finds)
        return part

    def scope_part(self, raw):
        part = Part(raw, self)
        part.asked = self.reader.conditions(raw.get("if"))
        return part
