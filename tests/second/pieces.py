"""Common practice: what may be one imperfection, though it was logged as several."""
from criteria import SPOKEN
from items import Item, joined, merged, way
from language import INF, NO, YES, Env, exactly, known

SHAPE_ALONE = {"linear indication", "rounded indication"}


def family(vocabulary, name):
    return "called by its shape" if name in SHAPE_ALONE else list(vocabulary.wider(name))[-1]


def unlike(a, b):
    """Their words speak against each other."""
    return any(k in a.words and k in b.words and a.words[k] != b.words[k] for k in ("side", "transition"))


def decided(criteria, one):
    """By a merging clause, or it is a dimension."""
    return criteria.vocabulary.measured(one.type) or any(m.speaks_of(one.type, one.method) for m in criteria.merges)


class Touching:
    """Pieces of one family, side and exam that touch or overlap may be one imperfection."""

    def __init__(self, criteria):
        self.criteria = criteria

    def takes(self, a, b):
        across = a.across and b.across and (a.across[1] < b.across[0] or b.across[1] < a.across[0])
        vocabulary = self.criteria.vocabulary
        alike = family(vocabulary, a.type) == family(vocabulary, b.type)
        return alike and not (decided(self.criteria, a) or unlike(a, b) or across)

    @staticmethod
    def near(env, words):
        return YES if env["gap"] == exactly(0) else NO


class TouchingByRule(Touching):
    """So may be those of unlike families where one rule limits how long or how large each of them may be, but for round
    ones."""

    def __init__(self, criteria, coupon):
        super().__init__(criteria)
        self.coupon = coupon
        self.rules = [r for r in criteria.rules if r.measure in ("length", "size") and r.compare in ("at most", "under")
                      and set(r.limits.values()) - SPOKEN and r.when(coupon.values, coupon.words) != NO]

    def takes(self, a, b):
        return any(self.takes_piece(f, g) for f in a.finds for g in b.finds)

    def takes_piece(self, a, b):
        if super().takes(a, b):
            return way(a.span, b.span, self.coupon)[1] == 0
        across = a.across and b.across and (a.across[1] < b.across[0] or b.across[1] < a.across[0])
        if decided(self.criteria, a) or decided(self.criteria, b) or unlike(a, b) or across or self.round(a) or self.round(b):
            return False
        limited = any(r.speaks_of(a.type, a.method) and r.speaks_of(b.type, b.method) for r in self.rules)
        return limited and way(a.span, b.span, self.coupon)[1] == 0

    def round(self, find):
        if self.criteria.vocabulary.shape(find.type) != "rounded":
            return False
        length, width = find.values["length"], find.values["width"]
        if known(length) and known(width):
            return length[0] <= 3 * width[0]
        return "length" not in find.told


def touching_by_rule(criteria, coupon, items):
    together = merged(items, [TouchingByRule(criteria, coupon)], coupon)[0]
    return together if len(together) < len(items) else None


def touching(criteria, coupon, items):
    """Those that touch as one item; nothing if none do."""
    together = merged(items, [Touching(criteria)], coupon)[0]
    return together if len(together) < len(items) else None


def end_to_end(criteria, coupon, items):
    """Those without a place may lie end to end, and beside or between those that have one: each such group as one item,
    as long as it can be made. Nothing if there is no such group."""
    vocabulary = criteria.vocabulary
    asked = [i for i in items if vocabulary.shape(i.type) != "rounded" and not decided(criteria, i)]
    out, left = [], list(items)
    while asked:
        group, rest = [asked[0]], asked[1:]
        grown = True
        while grown:
            more = [i for i in rest if any(i.method == g.method and not unlike(i, g) and family(vocabulary, i.type) ==
                                           family(vocabulary, g.type) for g in group)]
            grown = bool(more)
            group += more
            rest = [i for i in rest if i not in more]
        asked = rest
        free = [i for i in group if not i.span]
        if not free or len(group) < 2:
            continue
        parts, extent = longest(coupon, free, [i for i in group if i.span])
        one = parts[0]
        for part in parts[1:]:
            one = joined(one, part, coupon)
        values = Env(one.values)
        whole = all(known(p.values["length"]) for p in parts)
        values["length"] = exactly(extent) if whole else (extent, INF)
        sizes = list(zip(*(p.values["size"] for p in parts)))
        values["size"] = (max(max(sizes[0]), extent), max(max(sizes[1]), values["length"][1]))
        out.append(Item(sorted(one.finds, key=lambda f: f.number), None, values))
        left = [i for i in left if i not in parts]
    return left + out if out else None


def longest(coupon, free, placed):
    """Over every choice of a first and a last of those with a place: (parts, how long they are together)."""
    fill = sum(i.values["length"][0] for i in free)
    around = coupon.length if coupon.closed and coupon.length else None
    best = (free, fill)
    for first in placed:
        begin = first.span[0]
        shifted = []
        for i in placed:
            at = begin + (i.span[0] - begin) % around if around else i.span[0]
            if at >= begin:
                shifted.append((at, at + i.span[1] - i.span[0], i))
        shifted.sort(key=lambda s: s[:2])
        end, gaps, chosen = begin, 0, []
        for at, to, i in shifted:
            gaps += max(0, at - end)
            if gaps > fill:
                break
            end = max(end, to)
            chosen.append(i)
            length = end - begin - gaps + fill
            if length > best[1] or len(chosen) > len(best[0]) - len(free) and length >= best[1]:
                best = (free + chosen, length)
    return best[0], min(best[1], around) if around else best[1]
