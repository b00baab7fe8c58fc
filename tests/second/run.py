#!/usr/bin/env python3
"""Judges random coupons twice: by the program, and by the second opinion in this folder, which shares no code with it.

    tests/second/run.py PROGRAM [--coupons 2000] [--seed 1] [--set NAME ...] [--show 5] [--rules]
"""
import argparse
import collections
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parent.parent
sys.path.insert(0, str(HERE))
sys.dont_write_bytecode = True

from coupons import Maker  # noqa: E402
from criteria import Criteria, Vocabulary  # noqa: E402
from facts import Coupon  # noqa: E402
from judge import judge  # noqa: E402
from language import NotCovered  # noqa: E402

SETS = ["aws-d17.1", "mil-std-2219a", "ufgs-15216n", "iso-5817", "ship-hull", "ship-hull-levels"]
FEWEST = 95  # of a hundred class verdicts must be compared


def judged_by(program, coupons, folder):
    """{coupon: {class: (verdict, findings)}} as the program says it."""
    book, file = folder / "book.db", folder / "coupons.json"
    for old in folder.glob("book.db*"):
        old.unlink()
    file.write_text(json.dumps({"format": "beadbook exchange", "version": 1, "coupons": coupons}), encoding="utf-8")
    env = dict(os.environ, BEADBOOK_BOOK=str(book), BEADBOOK_USER="second opinion")
    done = subprocess.run([program, "import", "json", "--sure", "-q", "--file", file], env=env, capture_output=True, text=True)
    if done.returncode != 0:
        raise SystemExit("the import was refused:\n" + done.stderr[:4000])
    done = subprocess.run([program, "judge", "--all", "--no-record", "--json"], env=env, capture_output=True, text=True)
    try:
        answers = json.loads(done.stdout)
    except ValueError:
        raise SystemExit(f"judge ended with {done.returncode}:\n{done.stdout[:400]}{done.stderr[:4000]}") from None
    return {a["coupon"]: a for a in answers}


def main():
    options = argparse.ArgumentParser()
    options.add_argument("program")
    options.add_argument("--coupons", type=int, default=2000)
    options.add_argument("--seed", default="1")
    options.add_argument("--set", action="append")
    options.add_argument("--show", type=int, default=3)
    options.add_argument("--rules", action="store_true")
    given = options.parse_args()
    vocabulary = Vocabulary(ROOT / "criteria" / "vocabulary.yaml")
    bad = False
    print(f"second opinion: seed {given.seed}, {given.coupons} coupons a set")
    with tempfile.TemporaryDirectory() as folder:
        for name in given.set or SETS:
            criteria = Criteria(ROOT / "criteria" / f"{name}.yaml", vocabulary)
            bad |= not compare(criteria, given, Path(folder))
    raise SystemExit(1 if bad else 0)


def compare(criteria, given, folder):
    maker = Maker(criteria, given.seed)
    coupons = [maker.coupon(i) for i in range(given.coupons)]
    answers = judged_by(given.program, coupons, folder)
    tally, lacking, differ = collections.Counter(), collections.Counter(), []
    for coupon in coupons:
        answer = answers[coupon["id"]]
        try:
            mine = judge(criteria, Coupon(coupon))
        except NotCovered as why:
            lacking[str(why)] += len(criteria.classes)
            continue
        for theirs in answer["classes"]:
            ours = mine[theirs["class"]]
            tally[ours.verdict, theirs["verdict"]] += 1
            if ours.verdict != theirs["verdict"]:
                differ.append((coupon, theirs, ours))
    print(criteria.name, dict(tally), dict(lacking), criteria.not_covered)
    kinds = collections.Counter()
    for coupon, theirs, ours in differ:
        key = (ours.verdict, theirs["verdict"], str(sorted({(r.kind, r.by) for r in ours.reasons})[:2]),
               str(sorted({(f["kind"], f.get("rule"), ) for f in theirs["findings"]}, key=str)[:2]))
        kinds[key] += 1
        if kinds[key] == 1 and len(kinds) <= given.show:
            print("---", key, theirs["class"])
            print(json.dumps(coupon))
            for f in theirs["findings"]:
                print("   program:", f["kind"], f.get("rule"), f["sentence"])
            for r in ours.reasons:
                print("   second:", r)
    for key, count in kinds.most_common(15):
        print(count, key)
    return not differ


if __name__ == "__main__":
    main()
