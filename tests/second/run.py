#!/usr/bin/env python3
"""Judges random coupons twice: by the program, and by the second opinion in this folder, which shares no code with it.

    tests/second/run.py PROGRAM [--coupons 2000] [--seed 1] [--set NAME ...] [--show 3]

Each set is a test: it fails if a verdict, a rule that rejects or a number differs, if a part of the set is not covered,
or if too little could be compared. The last line is "test cases: N | N passed | N failed".
"""
import argparse
import sys
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).resolve().parent))

from concurrent.futures import ProcessPoolExecutor  # noqa: E402

from compare import compare  # noqa: E402

SETS = ["aws-d17.1", "mil-std-2219a", "ufgs-15216n", "iso-5817", "ship-hull", "ship-hull-levels"]


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("program", nargs="?")
    options.add_argument("--list", action="store_true", help="print the names of the sets, and do nothing")
    options.add_argument("--coupons", type=int, default=2000)
    options.add_argument("--seed", default="1")
    options.add_argument("--set", action="append")
    options.add_argument("--show", type=int, default=3)
    given = options.parse_args()
    names = given.set or SETS
    if given.list:
        print("\n".join(names))
        return 0
    if not given.program:
        options.error("which program is to be tried?")
    print(f"second opinion: seed {given.seed}, {given.coupons} coupons a set", flush=True)
    with ProcessPoolExecutor() as pool:
        done = pool.map(compare, names, *([value] * len(names) for value in (
            given.program, given.coupons, given.seed, given.show)))
        passed = 0
        for text, agreed in done:
            print(text, flush=True)
            passed += agreed
    print(f"test cases: {len(names)} | {passed} passed | {len(names) - passed} failed")
    return 0 if passed == len(names) else 1


if __name__ == "__main__":
    sys.exit(main())
