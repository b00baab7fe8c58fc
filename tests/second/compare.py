"""One set: random coupons, judged by both, held against each other."""
import collections
import json
import os
import subprocess
import tempfile
from fractions import Fraction
from pathlib import Path

from coupons import Maker
from criteria import Criteria, Vocabulary
from facts import Coupon
from judge import judge
from language import NotCovered, known
from smallest import smallest, told

ROOT = Path(__file__).resolve().parent.parent.parent
FEWEST = 95  # of a hundred class verdicts must be compared
AT_ONCE = 2000  # coupons in one record
OPEN = {"a person decides", "not said"}  # what a rule leaves open by intent


class Refused(Exception):
    """The program takes no such coupons."""


def judged_by(program, coupons):
    """{coupon: answer} of the program, from a record of its own."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "coupons.json"
        file.write_text(json.dumps({"format": "beadbook exchange", "version": 1, "coupons": coupons}), encoding="utf-8")
        env = dict(os.environ, BEADBOOK_BOOK=str(Path(folder) / "book.db"), BEADBOOK_USER="second opinion")
        done = subprocess.run([program, "import", "json", "--sure", "-q", "--file", str(file)], env=env,
                              capture_output=True, text=True, check=False)
        if done.returncode != 0:
            raise Refused(done.stderr[:3000])
        done = subprocess.run([program, "judge", "--all", "--no-record", "--json"], env=env, capture_output=True,
                              text=True, check=False)
    return {a["coupon"]: a for a in json.loads(done.stdout)}


def number(exact):
    return Fraction(exact["exact"])


def rejects_of_program(findings):
    """Rules whose limit is passed; what is not allowed, with the rule that says so; and the numbers."""
    rejects = [f for f in findings if f["effect"] == "reject"]
    return ({f["rule"] for f in rejects if f["kind"] == "out of limit"},
            {(f["rule"], n) for f in rejects if f["kind"] == "not allowed" for n in f["indications"]},
            {(f["rule"], number(f["measured"]), number(f["limit"])) for f in rejects if "measured" in f})


def rejects_of_mine(reasons):
    rejects = [r for r in reasons if r.effect == "reject"]
    return ({r.by for r in rejects if r.kind == "out of limit"},
            {(r.by, n) for r in rejects if r.kind == "not allowed" for n in r.finds},
            {(r.by, r.measured[0], r.limit[0]) for r in rejects
             if r.measured and known(r.measured) and known(r.limit)})


class Tally:
    def __init__(self, criteria):
        self.criteria, self.rules = criteria, {r.id: r for r in criteria.rules}
        self.pairs, self.lacking, self.kinds = collections.Counter(), collections.Counter(), collections.Counter()
        self.first, self.decisive, self.numbers = {}, collections.Counter(), 0
        # What the program leaves open although every way in which the missing may turn out says the same.
        self.careful = collections.Counter()

    def differ(self, kind, coupon, name):
        self.kinds[kind] += 1
        size = len(json.dumps(coupon))
        if kind not in self.first or size < self.first[kind][0]:
            self.first[kind] = (size, coupon, name)

    def coupon(self, coupon, answer):
        """All classes of one."""
        try:
            mine = judge(self.criteria, Coupon(coupon))
        except NotCovered as why:
            self.lacking[str(why)] += len(self.criteria.classes)
            return
        for theirs in answer["classes"]:
            self.hold(coupon, theirs["class"], mine[theirs["class"]], theirs)

    def told(self, mine, its):
        """Whether the program says that number. Of distances it tells those of neighbours, here all are held; it ends a
        count once it is over the limit; its pi has 15 digits."""
        rule = self.rules[mine[0]]
        if rule.measure == "gap" or mine in its:
            return True
        same = [i for i in its if i[0] == mine[0]]
        if rule.measure == "count":
            return any(i[2] == mine[2] and i[2] < i[1] <= mine[1] for i in same)
        return rule.summed == "area" and any(abs(i[1] - mine[1]) <= 2 + mine[1] / 10 ** 15 for i in same)

    def hold(self, coupon, name, ours, theirs):
        """One class."""
        criteria = self.criteria
        self.pairs[ours.verdict, theirs["verdict"]] += 1
        if ours.several and ours.verdict != "cannot say" and theirs["verdict"] == "cannot say":
            self.careful[ours.verdict] += 1
            return None
        if ours.verdict != theirs["verdict"]:
            mine = sorted({(r.kind, r.by) for r in ours.reasons if r.effect == ours.verdict})[:1]
            its = sorted({(f["kind"], str(f.get("rule"))) for f in theirs["findings"]
                          if f["effect"] == theirs["verdict"]})[:1]
            return self.differ(("verdict", f"second opinion {ours.verdict} {mine}",
                                f"program {theirs['verdict']} {its}"), coupon, name)
        # A rule decides where it alone rejects, or alone keeps open, or permits what is accepted.
        alone = {r.by for r in ours.reasons if r.effect == ours.verdict}
        if len(alone) == 1:
            self.decisive.update((by, name) for by in alone)
        if ours.verdict == "reject":
            mine, its = rejects_of_mine(ours.reasons), rejects_of_program(theirs["findings"])
            if ours.several:
                return None
            if mine[0] != its[0]:
                return self.differ(("rules", f"only the second opinion {sorted(mine[0] - its[0])}",
                                    f"only the program {sorted(its[0] - mine[0])}"), coupon, name)
            # Of what several rules do not allow, the program names one.
            if not its[1] <= mine[1] or {n for _, n in its[1]} != {n for _, n in mine[1]}:
                return self.differ(("not allowed", str(sorted(mine[1])), str(sorted(its[1]))), coupon, name)
            missed = {m[0] for m in mine[2] if not self.told(m, its[2])}
            if missed:
                return self.differ(("numbers", str(sorted(missed))), coupon, name)
            self.numbers += len(mine[2])
        elif ours.verdict == "accept":
            self.decisive.update((rule, name) for rule in ours.free)
        elif not ours.several and not any("scope" in r.kind for r in ours.reasons):
            mine = {(r.kind, r.by) for r in ours.reasons if r.kind in OPEN and r.by in self.rules}
            kept_open = [f for f in theirs["findings"] if f["kind"] in OPEN and f.get("rule")]
            its = {(f["kind"], f["rule"]) for f in kept_open}
            # Of a distance that is not known the program says no least one, so it asks a person more often.
            sure = {(f["kind"], f["rule"]) for f in kept_open if not f.get("missing")}
            if not sure <= mine <= its:
                return self.differ(("open", f"only the second opinion {sorted(mine - its)}",
                                    f"only the program {sorted(its - mine)}"), coupon, name)
        return None


def compare(name, program, count, seed, show):
    """(what is to be told, whether the two agree)."""
    criteria = Criteria(ROOT / "criteria" / f"{name}.yaml", Vocabulary(ROOT / "criteria" / "vocabulary.yaml"))
    maker, tally = Maker(criteria, seed), Tally(criteria)
    for start in range(0, count, AT_ONCE):
        coupons = [maker.coupon(i) for i in range(start, min(count, start + AT_ONCE))]
        try:
            answers = judged_by(program, coupons)
        except Refused as why:
            return f"{name}: the import was refused:\n{why}", False
        for coupon in coupons:
            tally.coupon(coupon, answers[coupon["id"]])
    return told_of(tally, program, show, count)


def told_of(tally, program, show, count):
    criteria = tally.criteria
    compared = sum(tally.pairs.values())
    share = Fraction(100 * compared, count * len(criteria.classes))
    lines = [f"{criteria.name}: {compared} class verdicts compared ({float(share):.1f} %), "
             f"{sum(tally.kinds.values())} differ; {tally.numbers} numbers compared"]
    for (ours, theirs), number_of in sorted(tally.pairs.items()):
        if ours == theirs:
            lines.append(f"  both {ours}: {number_of}")
    for verdict, number_of in sorted(tally.careful.items()):
        lines.append(f"  left open by the program, {verdict} whatever the missing turns out to be: {number_of}")
    for what in criteria.not_covered:
        lines.append(f"  NOT COVERED at all: {what}")
    for what, number_of in tally.lacking.items():
        lines.append(f"  NOT COVERED: {number_of} class verdicts: {what}")
    for kind, number_of in tally.kinds.most_common():
        lines.append(f"  DIFFERS {number_of} times: {': '.join(kind)}")
    never = [f"{r.id} {c}" for r in criteria.rules for c in criteria.classes
             if r.limits[c] != "does not apply" and (r.id, c) not in tally.decisive]
    if never:
        lines.append(f"  never decided alone: {', '.join(never)}")
    for kind, (_, coupon, name) in list(sorted(tally.first.items()))[:show]:
        lines += shown(kind, coupon, name, criteria, program)
    return "\n".join(lines), not tally.kinds and not criteria.not_covered and share >= FEWEST


def shown(kind, coupon, name, criteria, program):
    def asked(coupons):
        try:
            return judged_by(program, coupons)
        except Refused:
            return None
    small = smallest(coupon, name, criteria, asked) if kind[0] == "verdict" else coupon
    answer = next(c for c in asked([small])[small["id"]]["classes"] if c["class"] == name)
    lines = [f"--- {criteria.name}, class {name}: {': '.join(kind)}", told(small)]
    lines += [f"  program: {f['effect']} {f['sentence']}" for f in answer["findings"]]
    lines += [f"  second:  {r}" for r in judge(criteria, Coupon(small))[name].reasons]
    return lines
