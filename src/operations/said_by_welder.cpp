#include "operations/said_by_welder.hpp"

#include "facts/plausibility.hpp"
#include "operations/vouching.hpp"

#include <map>

namespace beadbook {

namespace {

/// Whether somebody is the welder, or may be taken for him; each is asked once, as few people enter much.
class Himself {
public:
    Himself(Office &office, const std::string &welder) : office_(office), welder_(welder) {}

    /// "who welded it", "who may be its welder, Joe Reef"; empty: somebody else.
    const std::string &of(const std::string &who) {
        const auto [at, fresh] = asked_.emplace(who, "");
        if (!fresh || who.empty()) return at->second;
        if (is_welder(office_, who, welder_))
            at->second = is_him;
        else if (const std::string name = taken_for_welder(office_, who, welder_); !name.empty())
            at->second = "who may be its welder, " + name + ",";
        return at->second;
    }
    static constexpr std::string_view is_him = "who welded it,";

private:
    Office &office_;
    const std::string &welder_;
    std::map<std::string, std::string> asked_;
};

} // namespace

std::vector<SaidByWelder> said_by_welder(Office &office, const CouponState &coupon,
                                         const std::string &welder) {
    std::vector<SaidByWelder> out;
    if (welder.empty()) return out;
    Himself himself(office, welder);
    const auto take = [&](const std::string &who, const std::string &what, bool also_known = true) {
        const std::string &is = himself.of(who);
        if (!is.empty() && (also_known || is != Himself::is_him)) out.push_back({who, is + " " + what});
    };
    for (const auto &exam : coupon.exams) {
        const std::string of = "exam " + std::to_string(exam.number);
        if (!is_meant(exam.sure, "examiner-like-welder")) take(exam.examiner, "made " + of, false);
        if (exam.finished) take(exam.finished->by, "finished " + of, false);
    }
    std::map<std::int64_t, const Entry *> standing;
    const auto history = office.book().history(coupon.record.id);
    for (const auto &e : history) {
        if (e.supersedes) standing.erase(*e.supersedes);
        if (e.kind == "indication") standing.emplace(e.seq, &e);
    }
    for (const auto &[seq, e] : standing)
        take(e->who, "entered what stands of #" + std::to_string(e->number.value_or(0)) + " (entry " +
                         std::to_string(seq) + ")");
    if (!coupon.record.get("mechanical").empty())
        take(coupon.mechanical_said.who, "said what its mechanical tests came to");
    if (coupon.grade) take(coupon.grade->stamp.who, "graded it", false);
    return out;
}

} // namespace beadbook
