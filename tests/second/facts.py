"""A coupon of an exchange file as the judge sees it."""
from fractions import Fraction

from language import Env, exactly, known, read_number, whole

SIZES = {"weld-thickness": "weld thickness", "bead-thickness": "bead thickness", "throat": "throat",
         "fillet-size": "specified fillet size", "leg": "longest leg", "weld-length": "weld length",
         "weld-width": "weld width", "diameter": "outside diameter", "layers": "layers"}
WORDS = {"joint": "joint", "joint-form": "joint form", "form": "form", "seam": "seam", "magnetic": "magnetic",
         "sides": "sides", "inside": "inside", "stress": "stress", "mechanical": "mechanical", "purpose": "purpose",
         "operation": "operation"}
METALS = ["steel", "iron", "nickel", "cobalt", "titanium", "aluminium", "magnesium", "copper", "zirconium"]
MEASURES = ["length", "width", "depth", "height", "size", "angle", "area"]
# Of the metals that the random coupons name: what a yoke cannot hold powder to (common practice, no source).
NOT_MAGNETIC = ["titanium", "aluminium", "nickel alloy"]
MAGNETIC = ["carbon steel", "4130"]
PI = Fraction(314159265358979323846264338327950288419716939937510, 10 ** 50)


def number(given):
    return whole(read_number(given["typed"] if isinstance(given, dict) else given)[0])


def to_whole(value):
    return (value + Fraction(1, 2)) // 1


class Coupon:
    def __init__(self, given):
        fields = given["fields"]
        self.id, self.values, self.words = given["id"], Env(), {}
        for field, quantity in SIZES.items():
            if field in fields:
                self.values[quantity] = exactly(number(fields[field]))
        members = [number(fields[f]) for f in ("thickness", "thickness-2") if f in fields]
        if members:
            self.values["thinner member"] = exactly(min(members))
            self.values["thicker member"] = exactly(max(members))
        for field, fact in WORDS.items():
            if field in fields:
                self.words[fact] = {fields[field]}
        if "process" in fields:
            self.words["process"] = {part.split()[0] for part in fields["process"].split("+")}
        if "material" in fields:
            self.words["material"] = {m for m in METALS if m in fields["material"].split()}
        magnetic = fields.get("magnetic")
        self.takes_powder = magnetic == "yes"
        material = fields.get("material", "")
        self.magnetic_in_spite = magnetic == "yes" and any(m in material for m in NOT_MAGNETIC) or \
            magnetic == "no" and any(m in material for m in MAGNETIC)
        # Nobody knows what lies beside what over the datum.
        tube = fields["form"] == "tube" if "form" in fields else "diameter" in fields
        self.seam_unknown = tube and "seam" not in fields
        self.closed = fields.get("seam") == "girth"
        if self.closed and "weld-length" not in fields and "diameter" in fields:
            self.values["weld length"] = exactly(to_whole(PI * number(fields["diameter"])))
        length = self.values["weld length"]
        self.length = length[0] if known(length) else None
        self.called_for = fields.get("also", "").replace(",", " ").split()
        self.exams = [Exam(e) for e in given["exams"]]
        self.welded = fields.get("welded")


class Exam:
    """Counts only if it is finished with what is on record, by a named examiner who may judge alone."""

    def __init__(self, given):
        self.method, self.number = given["method"], given["number"]
        finds = given.get("indications", [])
        self.found = given.get("found")
        self.on_record = len(finds)
        self.pending = self.found is None or self.found > len(finds)
        self.contradicts = self.found is not None and self.found < len(finds)
        self.counts = (not self.pending and not self.contradicts and not given.get("incomplete")
                       and bool(given.get("examiner")) and given.get("level") in ("II", "III"))
        self.finds = finds


class Find:
    """One indication; what was not measured and does not follow lies between nought and infinity."""

    def __init__(self, given, exam, coupon, vocabulary):
        self.number, self.type, self.method, self.exam = given["number"], given["type"], exam.method, exam.number
        self.words = {k: {given[k]} for k in ("side", "transition") if k in given}
        told = {m: number(given[m]) for m in MEASURES if m in given}
        self.told = dict(told)
        dimension = vocabulary.measured(self.type)
        at = number(given["at"]) if "at" in given else None
        end = number(given["end"]) if "end" in given else None
        if end is not None and end < at:
            end += coupon.length
        if end is not None and "length" not in told:
            told["length"] = end - at
        if not dimension:
            follow(told, vocabulary.shape(self.type))
            if "size" in told and vocabulary.is_volume(self.type):
                told["size"] = max(told[m] for m in ("size", "depth", "height") if m in told)
        self.values = Env({m: exactly(v) for m, v in told.items()})
        length = told.get("length")
        self.span = None
        if at is not None:
            self.span = (at, at + length if length is not None else at)
        if "middle" in given:
            begin = number(given["middle"]) - (length or 0) // 2
            if begin < 0 and coupon.closed and coupon.length:
                begin += coupon.length
            self.span = (begin, begin + (length or 0))
        self.across = None
        if "across" in given:
            half = (told["width"] if "width" in told else (length or 0)) // 2
            centre = -number(given["across"]) if given.get("left") else number(given["across"])
            self.across = (centre - half, centre + half)


def follow(told, shape):
    """What follows from what was measured."""
    alone = "size" in told and "length" not in told and "width" not in told
    if "size" not in told and "length" in told:
        told["size"] = max(told["length"], told.get("width", 0))
    if "length" not in told and "size" in told:
        told["length"] = told["size"]  # the length is the longer of the two, and the size the largest
    if "area" in told:
        told["rectangle"] = told["area"]
    else:
        if "length" in told and "width" in told:
            rectangle = told["length"] * told["width"]
            is_long = told["length"] > 3 * told["width"]
            told["rectangle"] = rectangle
            told["area"] = rectangle if is_long else to_whole(PI * rectangle / 4)
        elif alone and shape != "linear":
            told["rectangle"] = told["size"] ** 2
            told["area"] = to_whole(PI * told["size"] ** 2 / 4)

