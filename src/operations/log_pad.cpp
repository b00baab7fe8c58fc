#include "operations/log_pad.hpp"

#include "operations/told_class.hpp"
#include "technique/finds.hpp"

#include <algorithm>
#include <tuple>

namespace beadbook {
namespace {

constexpr std::size_t most_first = 14;

/// What exams of test coupons find most. Common practice, no source; only an order of buttons goes by it.
constexpr std::string_view usual[] = {"gas pore",
                                      "undercut",
                                      "incomplete fusion",
                                      "slag inclusion",
                                      "incomplete penetration",
                                      "overlap",
                                      "crack",
                                      "crater crack",
                                      "excess weld metal",
                                      "linear indication",
                                      "rounded indication",
                                      "tungsten inclusion",
                                      "stray arc"};

std::size_t usual_rank(const std::string &name) {
    return static_cast<std::size_t>(std::find(std::begin(usual), std::end(usual), name) - std::begin(usual));
}

Finds::Grade grade_by(Exam method, const Vocabulary &vocabulary, TypeId type, const Coupon &facts) {
    for (const auto &one : finds(vocabulary, type, facts))
        if (one.method == method) return one.grade;
    return Finds::Grade::no;
}

/// A dimension is measured where the weld's shape is seen well: a method that shows some of it measures none.
bool may_be_logged(Finds::Grade grade, const ImperfectionType &type) {
    return type.measured ? grade == Finds::Grade::well : grade != Finds::Grade::no;
}

} // namespace

LogPad log_pad(const CouponRecord &coupon, Exam method) {
    const Vocabulary &vocabulary = Vocabulary::shipped();
    const Coupon facts = coupon.facts();
    struct Ranked {
        TypeId type;
        int grade;
        std::size_t rank;
    };
    std::vector<Ranked> types;
    for (std::size_t i = 0; i < vocabulary.size(); ++i) {
        const auto type = static_cast<TypeId>(i);
        const Finds::Grade grade = grade_by(method, vocabulary, type, facts);
        if (!vocabulary[type].measured)
            types.push_back({type, static_cast<int>(grade), usual_rank(vocabulary[type].name)});
        else if (may_be_logged(grade, vocabulary[type]))
            types.push_back({type, 0, std::size(usual)});
    }
    // What is usual and is seen by the method at all, what it sees well first, then the rest in the same way.
    const auto order = [](const Ranked &one) {
        const bool is_usual = one.rank < std::size(usual) && one.grade > 0;
        return std::tuple(!is_usual, -one.grade, one.rank);
    };
    std::stable_sort(types.begin(), types.end(),
                     [&](const Ranked &a, const Ranked &b) { return order(a) < order(b); });
    LogPad out;
    for (const auto &one : types)
        (out.first.size() < most_first && one.grade > 0 ? out.first : out.more).push_back(one.type);
    const auto unit = coupon.fixed_unit();
    out.unit_is_fixed = unit.has_value();
    out.unit = unit && *unit != Unit::inch ? "mm" : "in";
    out.sizes = out.unit == "in"
                    ? std::vector<std::string>{"0.01", "0.02", "1/32", "0.04", "0.05", "1/16", "0.08",
                                               "3/32", "1/8",  "5/32", "3/16", "1/4",  "3/8",  "1/2"}
                    : std::vector<std::string>{"0.2", "0.5", "0.8", "1", "1.5", "2",  "2.5",
                                               "3",   "4",   "5",   "6", "8",   "10", "12"};
    out.sides = info(Attribute::side).words;
    if (is_fillet(facts)) std::erase(out.sides, "root");
    out.toes = info(Attribute::transition).words;
    if (facts.line.closed)
        for (int hour = 1; hour <= 12; ++hour) out.places.push_back(std::to_string(hour) + ":00");
    return out;
}

std::vector<TypeId> still_to_measure(const Judged &judged, Exam method) {
    const Vocabulary &vocabulary = Vocabulary::shipped();
    std::vector<TypeId> out;
    for (const auto &f : judged.judgement.classes[told_class(judged)].findings) {
        if (f.kind != Finding::Kind::not_measured) continue;
        const Subject &of = judged.set->rules[static_cast<std::size_t>(f.rule)].subject;
        for (std::size_t i = 0; i < vocabulary.size(); ++i) {
            const auto type = static_cast<TypeId>(i);
            const auto wider = vocabulary[type].under;
            // A set may ask for it of any method, and mean the ones that show it.
            const Finds::Grade grade = grade_by(method, vocabulary, type, judged.coupon);
            if (!may_be_logged(grade, vocabulary[type])) continue;
            // A rule for a type speaks of all its kinds; the type itself is what is measured.
            if (of.covers(type, method) && !(wider && of.types[*wider]) &&
                std::find(out.begin(), out.end(), type) == out.end())
                out.push_back(type);
        }
    }
    return out;
}

} // namespace beadbook
