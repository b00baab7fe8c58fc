#pragma once

#include "operations/standing.hpp"
#include "operations/yard.hpp"

#include <functional>
#include <map>

namespace beadbook::test {

/// What histories came to, so that a test can tell whether they went everywhere.
struct HistoryTally {
    std::map<std::string, int> done, seen;
    std::map<std::string, std::string> refused; ///< the last refusal of each sort of step
};

/// A record, what people do with it as chance has it, and what must hold after each step: no qualification
/// shown valid rests on a coupon that a fresh judge would not accept, unless what was set aside is printed
/// with it.
class History {
public:
    /// Chance: a number from the first to the second, both among them.
    using Pick = std::function<int(int, int)>;
    History(Pick pick, HistoryTally &tally);

    /// Something is done, or refused. Throws a Refusal only where the record itself is at fault.
    void step();
    /// What does not hold and must, each with what led to it.
    std::vector<std::string> faults();
    /// Coupons of which lists say what does not follow. Each is judged for it, so not after each step.
    std::vector<std::string> false_lines_now() { return false_lines(yard_.office); }

private:
    int pick(int from, int to) { return pick_(from, to); }
    bool one_in(int n) { return pick(1, n) == 1; }
    std::string mark();
    std::string welder() { return one_in(5) ? "L2" : "L1"; }
    std::string day();
    std::string rules();
    int exam_of(const std::string &coupon);
    int find_of(const std::string &coupon);
    std::string find();
    int held_number(const std::string &who);
    /// One that stands so, and whose way knows an extension if it is to.
    int held_number(const std::string &who, Validity::State state, bool extension = false);
    void weld();
    void weld_only();
    void examine();
    void log_more();
    void correct_find();
    void withdraw_find();
    void withdraw_one_exam();
    void reopen();
    void finish();
    void change();
    void grade() { yard_.grade(mark(), !one_in(4)); }
    void qualify_with(const std::string &override_why);
    void qualify() { qualify_with(""); }
    void qualify_by_override() { qualify_with(why_aside); }
    void renew_with(const std::string &override_why);
    void renew_one() { renew_with(""); }
    void renew_by_override() { renew_with(why_aside); }
    void extend_one();
    void use();
    void train();
    void revoke_one();
    void retract_one();
    /// Why the coupon proves nothing now, asked afresh and not of what the library keeps; empty if it does.
    std::string against(const std::string &coupon, const std::string &welder);
    void look_at(const WelderStanding &standing, const HeldQualification &held,
                 std::vector<std::string> &faults);

    static constexpr const char *why_aside = "the contract allows it";
    Pick pick_;
    HistoryTally &tally_;
    Yard yard_;
    int coupons_ = 0;
    std::string trail_;
};

} // namespace beadbook::test
