"""Common practice: what several methods found, taken together, and each imperfection counted once."""
from language import INCH, YES, known
from pieces import SHAPE_ALONE, family

FINEST = INCH // 128  # half of the finest lines of a rule


def over_several(rule):
    return rule.measure in ("gap", "count") or bool(rule.summed)


def counted_once(criteria, coupon, rule, chosen):
    """From the largest on: what another method may have seen too of one that is kept is left out."""
    amount = rule.summed or "size"
    kept = [pair for pair in chosen if not known(pair[0].values[amount])]
    asked = [pair for pair in chosen if known(pair[0].values[amount])]
    asked.sort(key=lambda pair: (-pair[0].values[amount][0], min(pair[0].numbers)))
    sure, taken = [], set()
    for item, truth in asked:
        alike = [k for k in sure if may_be_the_same(criteria, coupon, k, item)]
        placed = [k for k in alike if k.span and item.span]
        # Where a place is not known it is one of each other method, rather one without a place as well.
        free = [k for k in alike if not (k.span and item.span) and (id(k), item.method, bool(k.span)) not in taken]
        free.sort(key=lambda k: k.span is not None)
        if placed:
            continue
        if free:
            taken.add((id(free[0]), item.method, bool(free[0].span)))
            continue
        kept.append((item, truth))
        if truth == YES:
            sure.append(item)
    return [pair for pair in chosen if any(pair[0] is k[0] for k in kept)]


def may_be_the_same(criteria, coupon, a, b):
    if a.method == b.method or side(a) and side(b) and not side(a) & side(b):
        return False
    spans = [i.span for i in (a, b)]
    near = max([FINEST] + [(s[1] - s[0]) // 10 for s in spans if s])
    if all(spans) and apart(*spans, coupon.length if coupon.closed else None) > near:
        return False
    beside = [across(i) for i in (a, b)]
    if all(beside) and apart(*beside, None) > near:
        return False
    return any(alike(criteria.vocabulary, f.type, g.type) for f in a.finds for g in b.finds)


def side(item):
    """The sides that are told, if they are of all."""
    told = [f.words.get("side") for f in item.finds]
    return set().union(*told) if all(told) else None


def across(item):
    told = [f.across for f in item.finds]
    return (min(a for a, _ in told), max(b for _, b in told)) if all(told) else None


def apart(a, b, around):
    """The free way, over the datum too."""
    turns = [0] if not around else [t * around for t in (-2, -1, 0, 1, 2)]
    return min(max(b[0] + t - a[1], a[0] - b[1] - t) for t in turns)


def alike(vocabulary, a, b):
    if family(vocabulary, a) == family(vocabulary, b):
        return True
    shapes = {vocabulary.shape(a), vocabulary.shape(b)}
    return bool({a, b} & SHAPE_ALONE) and shapes != {"linear", "rounded"}
