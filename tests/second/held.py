"""Sums and counts, in a stretch or a rectangle of weld or in a group in line."""
from fractions import Fraction

from items import groups_in_line, in_rectangle, in_stretch, placed
from language import INF, UNKNOWN, YES, NotCovered, known, read_number


def held(criteria, coupon, rule, limit, name, chosen):
    """What is certain and the worst that may be, and what is allowed."""
    window, area, longest = window_of(criteria, rule, name, coupon)
    allowed = criteria.reader.value(limit, coupon.values)
    if rule.in_proportion:
        allowed = in_proportion(allowed, window, coupon)
    sure = [i for i, truth in chosen if truth == YES]
    every = [i for i, _ in chosen]
    if rule.linked:
        near = criteria.reader.condition(rule.linked)
        low_groups = groups_in_line(sure, near, coupon, True)
        high_groups = groups_in_line(every, near, coupon, False)
        lacking = len(high_groups) > 1 and any(not placed(i) for i in every)
        if rule.raw.get("least group"):
            raise NotCovered(f"rule {rule.id}: least group")
        high_groups = [every] if lacking else high_groups
    else:
        low_groups, high_groups = [sure], [every]
    low = max((least(rule, g, window, area, longest, coupon) for g in low_groups), default=0)
    high = max((most(rule, g, window, area, longest, coupon) for g in high_groups), default=0)
    measured = (low, max(high, low))
    return measured, allowed


def window_of(criteria, rule, name, coupon):
    text = rule.windows[name]
    if text is None or text == "whole weld":
        return None, None, None
    if "longest side" in text:
        area, longest = (t.replace("longest side", "").strip() for t in text.split(","))
        return None, read_number(area)[0], read_number(longest)[0]
    return criteria.reader.value(text, coupon.values), None, None


def in_proportion(allowed, window, coupon):
    if window is None or not known(window):
        return UNKNOWN
    if coupon.length is None:
        return UNKNOWN
    share = min(1, Fraction(coupon.length) / window[0])
    return tuple(INF if side == INF else side * share for side in allowed)


def amount(rule, item, side):
    if rule.measure == "count":
        return 1
    return item.values["rectangle" if rule.as_rectangles else rule.summed][side]


def least(rule, items, window, area, longest, coupon):
    """What is certainly together somewhere."""
    if not items:
        return 0
    if area is not None:
        surely = [i for i in items if i.across is not None and i.span is not None]  # it is there where it begins
        return (max(in_rectangle(surely, area, longest, coupon) if surely else 0, 1))
    if window is None:
        return sum(amount(rule, i, 0) for i in items)
    # A stretch of unknown length is none; of a lone one the part inside counts.
    reach = window[0]
    cut = rule.summed == "length"
    fixed = [i for i in items if i.span is not None and (placed(i) or not cut)]
    best = in_stretch(fixed, [amount(rule, i, 0) for i in fixed], reach, coupon, cut) if fixed else 0
    for item in items:
        alone = amount(rule, item, 0)
        best = max(best, min(alone, reach) if cut else alone)
    if coupon.length is not None and reach >= coupon.length:
        best = max(best, sum(amount(rule, i, 0) for i in items))
    return best


def most(rule, items, window, area, longest, coupon):
    """The worst that may be."""
    total = sum(amount(rule, i, 1) for i in items)
    loose = [i for i in items if not placed(i)]
    fixed = [i for i in items if placed(i)]
    if area is not None:
        open_across = [i for i in fixed if i.across is None]
        fixed = [i for i in fixed if i.across is not None]
        if open_across or loose or (coupon.closed and coupon.length is None):
            return (count_anywhere(fixed, open_across, area, longest, coupon) + len(loose))
        return (in_rectangle(fixed, area, longest, coupon) if fixed else 0)
    if window is None or total == INF or (coupon.closed and coupon.length is None) or window[1] == INF:
        return total
    cut = rule.summed == "length"
    best = in_stretch(fixed, [amount(rule, i, 1) for i in fixed], window[1], coupon, cut) if fixed else 0
    return best + sum((min(amount(rule, i, 1), window[1]) if cut else amount(rule, i, 1) for i in loose), 0)


def count_anywhere(fixed, open_across, area, longest, coupon):
    """Nobody told how far across some lie: they may lie in one line with any."""
    if coupon.closed and coupon.length is None:
        return len(fixed) + len(open_across)
    return int(in_stretch(fixed + open_across, [1] * len(fixed + open_across), longest, coupon, False))
