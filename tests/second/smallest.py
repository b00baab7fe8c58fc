"""The smallest coupon on which the two still say the same two things."""
import copy

from facts import Coupon
from judge import judge
from language import NotCovered


def steps(coupon):
    """Every coupon with one thing less."""
    for field in coupon["fields"]:
        if field != "criteria":
            less = copy.deepcopy(coupon)
            del less["fields"][field]
            yield less
    for e, exam in enumerate(coupon["exams"]):
        less = copy.deepcopy(coupon)
        del less["exams"][e]
        yield numbered(less)
        for i, one in enumerate(exam["indications"]):
            less = copy.deepcopy(coupon)
            del less["exams"][e]["indications"][i]
            if exam.get("found"):
                less["exams"][e]["found"] -= 1
            yield numbered(less)
            for key in one:
                if key not in ("type", "number", "exam"):
                    less = copy.deepcopy(coupon)
                    del less["exams"][e]["indications"][i][key]
                    yield less


def numbered(coupon):
    count = 0
    for at, exam in enumerate(coupon["exams"]):
        exam["number"] = at + 1
        for one in exam["indications"]:
            count += 1
            one["number"], one["exam"] = count, exam["number"]
    return coupon


def smallest(coupon, name, criteria, verdicts):
    """`verdicts` asks the program: coupons -> answers by id; nothing where they were refused."""
    def of_mine(one):
        try:
            return judge(criteria, Coupon(one))[name].verdict
        except (NotCovered, KeyError, TypeError):
            return None

    wanted = (of_mine(coupon), verdict_of(verdicts([coupon])[coupon["id"]], name))
    while True:
        for less in steps(coupon):
            if of_mine(less) != wanted[0]:
                continue
            answers = verdicts([less])
            if answers and verdict_of(answers[less["id"]], name) == wanted[1]:
                coupon = less
                break
        else:
            return coupon


def verdict_of(answer, name):
    return next(c["verdict"] for c in answer["classes"] if c["class"] == name)


def told(coupon):
    """On a few lines."""
    def text(value):
        return value["typed"] if isinstance(value, dict) else str(value)
    lines = ["coupon: " + ", ".join(f"{k} {text(v)}" for k, v in coupon["fields"].items())]
    for exam in coupon["exams"]:
        lines.append(f"  {exam['method']} found {exam.get('found', 'not said')}")
        for one in exam["indications"]:
            rest = " ".join(f"{k} {text(v)}" for k, v in one.items() if k not in ("type", "number", "exam"))
            lines.append(f"    #{one['number']} {one['type']} {rest}")
    return "\n".join(lines)
