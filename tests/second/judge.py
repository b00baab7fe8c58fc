"""The plainest reading of a criteria set: three values, rule by rule, class by class."""
import itertools

from criteria import SPOKEN
from facts import Find
from held import held
from items import Item, gap_of, groups_in_line, merged, nearest_gap, pair_env
from language import MAYBE, NO, UNKNOWN, YES, Env, NotCovered, compare, exactly, known
from pieces import end_to_end, touching, touching_by_rule
from together import counted_once, over_several

ACCEPT, CANNOT_SAY, REJECT = "accept", "cannot say", "reject"


class Reason:
    def __init__(self, effect, kind, by, finds=(), measured=None, limit=None):
        self.effect, self.kind, self.by, self.finds = effect, kind, by, tuple(finds)
        self.measured, self.limit = measured, limit

    def __repr__(self):
        return f"{self.effect}/{self.kind}/{self.by}{list(self.finds)} {self.measured} {self.limit}"


class Judged:
    """One class under one way in which the finds may come together."""

    def __init__(self):
        self.reasons, self.kept = [], []
        self.free = set()      # rules that permit what they speak of
        self.several = False  # one of several ways in which the finds may come together, all of one verdict

    def add(self, *args):
        self.reasons.append(Reason(*args))

    @property
    def verdict(self):
        effects = {r.effect for r in self.reasons}
        return REJECT if REJECT in effects else CANNOT_SAY if effects else ACCEPT


def judge(criteria, coupon):
    """{class: Judged}, in the set's order. Raises NotCovered."""
    finds = [Find(given, exam, coupon, criteria.vocabulary) for exam in coupon.exams for given in exam.finds]
    out = {}
    ways = merged([Item([f]) for f in finds], criteria.merges, coupon)
    others = [way for together in (touching, touching_by_rule, end_to_end) for another in (False, True)
              if (way := as_one(criteria, coupon, finds, together, another))]
    named = names_say_linear(criteria, finds)
    for name in criteria.classes:
        base = decide(criteria, coupon, ways, name, set())
        common(criteria, coupon, finds, name, base)
        if base.verdict == ACCEPT:
            readings = [(other, set(), False) for other in others] + ([(ways, named, False)] if named else [])
            for reading in readings + [(ways, set(), True)]:
                under = decide(criteria, coupon, reading[0], name, *reading[1:])
                if under.verdict != ACCEPT:
                    base.add(CANNOT_SAY, "contradiction", under.reasons[0].by, under.reasons[0].finds)
        out[name] = base
    outside(criteria, coupon, out)
    return out


def outside(criteria, coupon, judged):
    """Of what the set does not cover it says nothing. Where nobody read that, it accepts no weld of which one does not
    know joint and metal."""
    if criteria.scope_not_read and not (coupon.words.get("joint") and coupon.words.get("material")):
        for one in judged.values():
            one.add(CANNOT_SAY, "scope unknown", "-")
    for part in criteria.scope:
        asked = part.asked(coupon.values, coupon.words)
        if asked == NO:
            continue
        holds = part.when(coupon.values, coupon.words)
        if holds == YES:
            continue
        kind = "outside scope" if asked == YES and holds == NO else "scope unknown"
        for one in judged.values():
            for reason in one.reasons:
                reason.effect = CANNOT_SAY
            one.add(CANNOT_SAY, kind, part.id)


def decide(criteria, coupon, ways, name, named, together=False):
    """Over all ways: what every one of them says."""
    all_ways = [judge_items(criteria, coupon, items, name, named, shapes, together)
                for items in ways for shapes in shapes_of(criteria, coupon, items, named)]
    if len(all_ways) == 1:
        # What came together with one of unknown length is known from below only.
        all_ways[0].several = any(len(item.finds) > 1 and not all(known(f.values["length"]) for f in item.finds)
                                  for item in ways[0])
        return all_ways[0]
    verdicts = {w.verdict for w in all_ways}
    if len(verdicts) == 1 and verdicts != {CANNOT_SAY}:
        best = all_ways[0]
        best.several = True
        return best
    out = Judged()
    out.several = True
    out.add(CANNOT_SAY, "missing data", "merge")
    return out


def shapes_of(criteria, coupon, items, named):
    """Every way in which the shapes that nobody told may turn out, where that can matter and is not too much."""
    for item in items:
        settle_shape(criteria, item, coupon, named)
    unknown = [item for item in items if item.shape is None]
    if not criteria.linear or len(unknown) > 3:
        return [{}]
    return [{id(i): s for i, s in zip(unknown, way)} for way in itertools.product(("linear", "rounded"),
                                                                                 repeat=len(unknown))]


def as_one(criteria, coupon, finds, together, another):
    """The ways in which the finds come together where those that may be pieces of one are one; nothing if that changes
    nothing. `another`: called as one of its pieces that is not the first."""
    items = together(criteria, coupon, [Item([f]) for f in finds])
    if not items:
        return None
    for item in items:
        types = [f.type for f in sorted(item.finds, key=lambda f: f.number)]
        item.type = next((t for t in types if another and t != types[0]), types[0])
    return merged(items, criteria.merges, coupon)


def names_say_linear(criteria, finds):
    if not criteria.linear:
        return set()
    return {f.number for f in finds if criteria.vocabulary.shape(f.type) == "linear" and
            known(f.values["length"]) and f.values["length"] == f.values["width"]}


def settle_shape(criteria, item, coupon, named):
    vocabulary = criteria.vocabulary

    def of(values, otherwise):
        """By the set's own words; where what was measured does not tell, otherwise."""
        truth = criteria.linear(Env({**coupon.values, **values}), {}) if criteria.linear else MAYBE
        return otherwise if truth == MAYBE else "linear" if truth == YES else "rounded"

    def by_name(find):
        """Of a round type one wants to know more than how long it is."""
        shape = vocabulary.shape(find.type)
        told = set(find.told)
        return None if shape == "rounded" and "width" not in told and ("length" in told or "size" not in told) else shape
    shapes = ["linear" if f.number in named else of(f.values, by_name(f)) for f in item.finds]
    item.shape = shapes[0]
    if len(item.finds) > 1:
        # Of what nobody measured the width is at most the length, which is the longer of the two.
        widths = [f.values["width"] if known(f.values["width"]) else (0, f.values["length"][1])
                  for f in item.finds]
        narrowest = Env(item.values, width=tuple(min(side) for side in zip(*widths)))
        alike = "rounded" if set(shapes) == {"rounded"} else None
        item.shape = "linear" if "linear" in shapes else of(narrowest, alike)


def both_env(coupon, item):
    return Env({**coupon.values, **item.values})


def settle_items(criteria, coupon, items, name, named, shapes):
    for item in items:
        item.counts, item.irrelevant = YES, None
        settle_shape(criteria, item, coupon, named)
        item.shape = shapes.get(id(item), item.shape)
        for clause in criteria.relevance:
            if clause.speaks_of(item.type, item.method) and name in clause.classes:
                ignored = clause.ignore(both_env(coupon, item), item.words)
                if ignored == YES:
                    item.irrelevant = clause.id
                item.counts = min(item.counts, 2 - ignored)
    for item in items:
        item.values["nearest gap"] = nearest_gap(item, items, coupon, criteria.vocabulary)
        item.values["nearest like gap"] = nearest_gap(item, items, coupon, criteria.vocabulary, alike=True)


def conditions_of(part, coupon, item):
    """Truth that the part speaks of the item, but for whether the item counts."""
    shape = YES if not part.shape or part.shape == item.shape else MAYBE if item.shape is None else NO
    words = {**coupon.words, **item.words}
    return min(part.when(coupon.values, coupon.words), part.where(both_env(coupon, item), words), shape)


def judge_together(criteria, coupon, items, name, out):
    """Rules over several finds, by whichever methods that the rule names they were found."""
    for rule in criteria.rules:
        limit = rule.limits[name]
        if limit in SPOKEN or not over_several(rule):
            continue
        chosen = [(item, min(truth, item.counts)) for item in items if rule.speaks_of_part(item)
                  if (truth := conditions_of(rule, coupon, item)) and item.counts]
        if len({item.method for item, _ in chosen}) > 1:
            apply(criteria, coupon, rule, limit, name, counted_once(criteria, coupon, rule, chosen), out)
    return out


def judge_items(criteria, coupon, items, name, named, shapes, together=False):
    out = Judged()
    settle_items(criteria, coupon, items, name, named, shapes)
    if together:
        return judge_together(criteria, coupon, items, name, out)
    covered, may_be = set(), set()
    for rule in criteria.rules:
        limit = rule.limits[name]
        if limit == "does not apply":
            continue
        for method in rule.exams:
            chosen = []
            for item in items:
                if item.method == method and rule.speaks_of_part(item):
                    truth = conditions_of(rule, coupon, item)
                    if truth and item.counts:
                        (covered if truth == YES else may_be).update(
                            f.number for f in item.finds if rule.speaks_of(f.type, method))
                        chosen.append((item, min(truth, item.counts)))
            if chosen:
                apply(criteria, coupon, rule, limit, name, chosen, out)
    for item in items:
        if item.counts == NO:
            continue
        for lone in set(item.numbers) - covered:
            out.add(CANNOT_SAY, "missing data" if lone in may_be else "not covered", "-", [lone])
        for gap in criteria.gaps:
            beside = any(k in gap.raw for k in ("when", "where", "shape", "classes"))
            if beside and name in gap.classes and gap.speaks_of_part(item) and \
                    conditions_of(gap, coupon, item):
                out.add(CANNOT_SAY, "gap", gap.id, item.numbers)
    return out


def numbers(chosen):
    return sorted(n for item, _ in chosen for n in item.numbers)


def apply(criteria, coupon, rule, limit, name, chosen, out):
    if limit in ("a person decides", "not said"):
        if rule.linked:
            groups = groups_in_line([i for i, _ in chosen], criteria.reader.condition(rule.linked), coupon, False)
            raise NotCovered(f"rule {rule.id}: groups that a person decides ({len(groups)})")
        out.add(CANNOT_SAY, limit, rule.id, numbers(chosen))
    elif limit == "none":
        for item, truth in chosen:
            out.add(REJECT if truth == YES else CANNOT_SAY, "not allowed" if truth == YES else "missing data", rule.id,
                    item.numbers)
    elif limit == "no limit":
        out.free.add(rule.id)
    else:
        if rule.measure == "gap":
            gaps_between(criteria, coupon, rule, limit, chosen, out)
        elif rule.measure == "count" or rule.summed:
            measured, allowed = held(criteria, coupon, rule, limit, name, chosen)
            weigh(rule, measured, allowed, YES, numbers(chosen), out)
        else:
            each(criteria, coupon, rule, limit, chosen, out)


def weigh(rule, measured, limit, truth, finds, out):
    """One measured value against its limit."""
    within = compare(measured, rule.compare, limit)
    if within == YES:
        out.kept.append((rule, measured, limit, truth, finds))
    elif within == NO and truth == YES:
        out.add(REJECT, "out of limit", rule.id, finds, measured, limit)
    else:
        out.add(CANNOT_SAY, "missing data", rule.id, finds, measured, limit)


def each(criteria, coupon, rule, limit, chosen, out):
    for item, truth in chosen:
        parts = [item]
        if rule.compare in ("at least", "over") and len(item.finds) > 1:
            parts = [Item([f]) for f in item.finds]
        for part in parts:
            env = both_env(coupon, part)
            for way in ("nearest gap", "nearest like gap"):
                if env[way] == UNKNOWN:
                    env[way] = item.values[way]
            measured = criteria.reader.value(rule.measure, env)
            weigh(rule, measured, criteria.reader.value(limit, env), truth, part.numbers, out)


def gaps_between(criteria, coupon, rule, limit, chosen, out):
    for i, (a, of_a) in enumerate(chosen):
        for b, of_b in chosen[i + 1:]:
            gap = gap_of(a, b, coupon)
            env = pair_env(a, b, coupon, gap)
            finds = sorted(a.numbers + b.numbers)
            weigh(rule, gap, criteria.reader.value(limit, env), min(of_a, of_b), finds, out)


# What lies at the root by what it is: ISO 6520-1, 4021, 5013, 504, 515 and 516.
OF_ROOT = {"incomplete root penetration", "shrinkage groove", "excess penetration", "root concavity", "root porosity"}


def common(criteria, coupon, finds, name, out):
    """What is asked of the coupon as a whole: exams, and dimensions that must be measured."""
    counting = {e.method for e in coupon.exams if e.counts and (e.method != "MT" or coupon.takes_powder)}
    if coupon.magnetic_in_spite:
        out.add(CANNOT_SAY, "contradiction", "magnetic")
    if coupon.seam_unknown and sum(f.span is not None for f in finds) > 1:
        out.add(CANNOT_SAY, "missing data", "seam")
    for part in criteria.required:
        one_of = part.raw["one of"]
        if name not in part.classes or counting & set([one_of] if isinstance(one_of, str) else one_of):
            continue
        if part.when(coupon.values, coupon.words) != NO:
            out.add(CANNOT_SAY, "exam missing", part.id)
    for method in coupon.called_for:
        if method not in counting:
            out.add(CANNOT_SAY, "exam missing", "called for " + method)
    if not counting:
        out.add(CANNOT_SAY, "exam missing", "any")
    for exam in coupon.exams:
        if exam.pending:
            out.add(CANNOT_SAY, "exam pending", exam.method)
        if exam.contradicts:
            out.add(CANNOT_SAY, "contradiction", exam.method)
    leg = coupon.values["longest leg"]
    for find in finds:
        told = find.told
        if "area" in told and not criteria.vocabulary.measured(find.type) and known(find.values["length"]) and \
                find.type not in ("uniformly distributed porosity", "clustered porosity", "linear porosity"):
            # Of a group it is the area of all pores.
            side = told.get("width", find.values["length"][0])
            if told["area"] > side * find.values["length"][0]:
                out.add(CANNOT_SAY, "contradiction", "area", [find.number])
        if find.words.get("side") == {"face"} and find.type in OF_ROOT:
            out.add(CANNOT_SAY, "contradiction", "side", [find.number])
        if find.type == "fillet size" and known(find.values["size"]) and find.values["size"][0] > leg[1]:
            out.add(CANNOT_SAY, "contradiction", "longest leg", [find.number])
    for rule in criteria.rules:
        if not rule.must_be_measured or rule.limits[name] in SPOKEN or rule.when(coupon.values, coupon.words) == NO:
            continue
        valid = {e.number for e in coupon.exams if e.counts}
        given = [f for f in finds if rule.speaks_of(f.type, f.method) and known(f.values[rule.measure])
                 and f.exam in valid]
        if not any(rule.where(Env({**coupon.values, **f.values}), {**coupon.words, **f.words}) == YES for f in given):
            out.add(CANNOT_SAY, "not measured", rule.id)

