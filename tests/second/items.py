"""Finds that count as one, the way between finds, and what fits into a stretch or a rectangle of weld."""
from fractions import Fraction

from language import BEYOND, INF, MAYBE, NO, UNKNOWN, YES, Env, NotCovered, exactly, known


class Item:
    """A find, or several that count as one."""

    def __init__(self, finds, span=None, values=None):
        self.finds = finds
        first = finds[0]
        self.type, self.method = first.type, first.method
        self.span = first.span if values is None else span
        self.across = first.across if len(finds) == 1 else None
        self.values = Env(first.values if values is None else values)
        self.words = first.words
        if len(finds) > 1:
            self.words = {k: set().union(*(f.words.get(k, set()) for f in finds))
                          for k in ("side", "transition") if all(k in f.words for f in finds)}
        self.numbers = sorted(f.number for f in finds)
        self.counts, self.shape, self.irrelevant = YES, None, None


def way(a, b, coupon):
    """Between two spans, as a pair; nothing between what touches."""
    if a is None or b is None:
        return UNKNOWN
    direct = max(0, max(a[0], b[0]) - min(a[1], b[1]))
    if not coupon.closed:
        return exactly(direct)
    if coupon.length is None:
        return exactly(0) if direct == 0 else (0, direct)
    return exactly(min(both_ways(a, b, coupon.length)))


def both_ways(a, b, around):
    """From the end of each to the begin of the other; nothing where they overlap."""
    if (b[0] - a[0]) % around > a[1] - a[0] and (a[0] - b[0]) % around <= b[1] - b[0]:
        a, b = b, a
    off = (b[0] - a[0]) % around
    ahead = off - (a[1] - a[0])
    behind = around - max(off + b[1] - b[0], a[1] - a[0])
    return (max(ahead, 0), max(behind, 0))


def gap_of(a, b, coupon):
    """Between two items; what has no known length ends nobody knows where."""
    gap = way(a.span, b.span, coupon)
    if gap[0] > 0 and not (known(a.values["length"]) and known(b.values["length"])):
        return (0, gap[1])
    return gap


def pair_env(a, b, coupon, gap):
    env = Env(coupon.values)
    sizes, lengths = (a.values["size"], b.values["size"]), (a.values["length"], b.values["length"])
    env["gap"] = gap
    for pick, size, length in ((min, "smaller size", "shorter length"), (max, "larger size", "longer length")):
        env[size] = tuple(pick(side) for side in zip(*sizes))
        env[length] = tuple(pick(side) for side in zip(*lengths))
    return env


def joined(a, b, coupon):
    """Both as one: from end to end, the rest the largest, areas together."""
    values = Env({q: tuple(max(side) for side in zip(a.values[q], b.values[q]))
                  for q in ("length", "width", "depth", "height", "size", "angle")})
    for area in ("area", "rectangle"):
        values[area] = tuple(x + y for x, y in zip(a.values[area], b.values[area]))
    span = None
    if a.span and b.span and not (coupon.closed and coupon.length is None):
        span = from_end_to_end(a.span, b.span, coupon)
        whole = known(a.values["length"]) and known(b.values["length"])
        extent = span[1] - span[0]
        values["length"] = exactly(extent) if whole else (max(extent, values["length"][0]), INF)
    else:
        # What touches is as long as both, however long the turn: neither lies past its own datum.
        touch = a.span and b.span and max(a.span[0], b.span[0]) <= min(a.span[1], b.span[1])
        least = max(a.span[1], b.span[1]) - min(a.span[0], b.span[0]) if touch else 0
        values["length"] = (max(least, values["length"][0]), INF)
    values["size"] = tuple(max(x, y) for x, y in zip(values["size"], values["length"]))
    return Item(a.finds + b.finds, span, values)


def from_end_to_end(a, b, coupon):
    if not coupon.closed:
        return (min(a[0], b[0]), max(a[1], b[1]))
    around = coupon.length
    tries = []
    for x, y in ((a, b), (b, a)):
        tries.append((x[0], x[0] + max(x[1] - x[0], (y[0] - x[0]) % around + y[1] - y[0])))
    best = min(tries, key=lambda s: s[1] - s[0])
    return (best[0], min(best[1], best[0] + around))


def ring(item, near, coupon):
    """A joined one whose parts hold two that are near each other over both gaps goes all round."""
    if not coupon.closed or coupon.length is None:
        return item
    parts = [Item([f]) for f in item.finds]
    if any(not p.span for p in parts):
        return item
    arcs = arcs_of(parts, near, coupon)
    for i, a in enumerate(arcs):
        for b in arcs[i + 1:]:
            if set(a.numbers) & set(b.numbers):
                continue
            gaps = both_ways(a.span, b.span, coupon.length)
            if all(near(pair_env(a, b, coupon, exactly(g)), {}) == YES for g in gaps):
                values = Env(item.values, length=exactly(coupon.length))
                values["size"] = tuple(max(x, coupon.length) for x in values["size"])
                return Item(item.finds, (item.span[0], item.span[0] + coupon.length), values)
    return item


def arcs_of(parts, near, coupon, most=8):
    """Each by itself, and all neighbours in a row that come together without the rest; of very many only the first."""
    parts = sorted(parts, key=lambda p: p.span)
    arcs = list(parts)
    if len(parts) > most:
        return arcs
    for start in range(len(parts)):
        for count in range(2, len(parts)):
            row = [parts[(start + k) % len(parts)] for k in range(count)]
            together = True
            while together and len(row) > 1:
                together = False
                for i, a in enumerate(row):
                    b = next((b for b in row[i + 1:] if near(pair_env(
                        a, b, coupon, gap_of(a, b, coupon)), {}) == YES), None)
                    if b:
                        row = [r for r in row if r is not a and r is not b] + [joined(a, b, coupon)]
                        together = True
                        break
            if len(row) == 1:
                arcs.append(row[0])
    return arcs


def merged(items, clauses, coupon, most=64):
    """Every way in which the finds may come together: a list of lists of items."""
    leaves, stack = [], [(list(items), frozenset())]
    while stack:
        now, apart = stack.pop()
        step = next_step(now, apart, clauses, coupon)
        if step is None:
            leaves.append(now)
        else:
            a, b, truth, near = step
            one = ring(joined(a, b, coupon), near, coupon)
            stack.append(([i for i in now if i is not a and i is not b] + [one], apart))
            if truth == MAYBE:
                stack.append((now, apart | {(id(a), id(b))}))
        if len(leaves) + len(stack) > most:
            raise NotCovered("finds that may come together in very many ways")
    return leaves


def next_step(items, apart, clauses, coupon):
    maybe = None
    for i, a in enumerate(items):
        for b in items[i + 1:]:
            for clause in clauses:
                if a.method != b.method or not clause.takes(a, b):
                    continue
                truth = clause.near(pair_env(a, b, coupon, gap_of(a, b, coupon)), {})
                if truth == YES:
                    return (a, b, YES, clause.near)
                if truth == MAYBE and (id(a), id(b)) not in apart and maybe is None:
                    maybe = (a, b, MAYBE, clause.near)
    return maybe


def tops(item, vocabulary):
    return {list(vocabulary.wider(f.type))[-1] for f in item.finds}


def nearest_gap(item, items, coupon, vocabulary, alike=False):
    """To the next imperfection of the same exam that counts, or to the next of its wider type."""
    low = high = None
    for other in items:
        if other is item or other.method != item.method or other.counts == NO or vocabulary.measured(other.type):
            continue
        if alike and not tops(item, vocabulary) & tops(other, vocabulary):
            continue
        gap = gap_of(item, other, coupon)
        low = gap[0] if low is None else min(low, gap[0])
        if other.counts == YES:
            high = gap[1] if high is None else min(high, gap[1])
    if low is None:
        return BEYOND
    return (low, INF if high is None else high)


def placed(item):
    return item.span is not None and known(item.values["length"])


def in_stretch(chosen, amounts, window, coupon, cut):
    """The most of the amounts that lies in any stretch: of what is placed. `cut`: only the part inside; else what lies
    in it by more than a point counts in full."""
    if window is None or (coupon.length is not None and window >= coupon.length):
        return sum(amounts, 0)
    around = coupon.length if coupon.closed else None
    turns = (-around, 0, around) if around else (0,)
    ends = [i.span for i in chosen]
    starts = {s for a, b in ends for s in ((a, b - window) if cut else (b,))}
    best = 0
    for start in starts:
        total = 0
        for (a, b), amount in zip(ends, amounts):
            if cut:
                total += sum(max(0, min(b + t, start + window) - max(a + t, start)) for t in turns)
            elif any(b + t >= start and a + t < start + window for t in turns):
                total += amount
        best = max(best, total)
    return best


def in_rectangle(chosen, area, longest, coupon):
    """The most items that lie by more than a point in any rectangle with sides along and across the weld."""
    around = coupon.length if coupon.closed and coupon.length else None
    spans = [(i.span, i.across, i) for i in chosen]
    if around:
        spans += [((s[0] + around, s[1] + around), c, i) for s, c, i in spans]
    best = 0
    for end, _, _ in spans:
        for begin, _, _ in spans:
            along = max(0, begin[0] - end[1])
            if along >= longest:
                continue
            tall = longest if along == 0 else min(longest, Fraction(area) / along)
            met = [(c, i) for s, c, i in spans if s[0] <= begin[0] and s[1] >= end[1]]
            for base, _ in met:
                best = max(best, len({id(i) for c, i in met if c[0] < base[1] + tall and c[1] >= base[1]}))
    return best


def groups_in_line(chosen, near, coupon, certain):
    """Neighbours that are linked, as lists; `certain`: only what is surely linked."""
    groups = [[i] for i in chosen]
    again = True
    while again:
        again = False
        for x, a in enumerate(groups):
            for b in groups[x + 1:]:
                longest = tuple(max(side) for side in zip(*(i.values["length"] for i in a + b)))
                truths = []
                for i in a:
                    for j in b:
                        env = Env(coupon.values, longest=longest)
                        env["gap"] = gap_of(i, j, coupon)
                        truths.append(near(env, {}))
                if max(truths) == YES or (not certain and max(truths) == MAYBE):
                    groups = [g for g in groups if g is not a and g is not b] + [a + b]
                    again = True
                    break
            if again:
                break
    return groups
