#include "operations/told_class.hpp"

#include "catch.hpp"

using namespace beadbook;

namespace {

Judged judged(const std::vector<std::pair<Verdict, std::size_t>> &classes) {
    Judged out;
    for (const auto &[verdict, reasons] : classes) {
        ClassJudgement one;
        one.verdict = verdict;
        one.findings.resize(reasons);
        out.judgement.classes.push_back(std::move(one));
    }
    return out;
}

} // namespace

TEST_CASE("without a class sought a coupon is told by the first that it makes, else by the fewest reasons") {
    constexpr Verdict yes = Verdict::accept, no = Verdict::reject, open = Verdict::cannot_say;
    CHECK(told_class(judged({{no, 1}, {yes, 0}, {yes, 0}})) == 1);
    CHECK(told_class(judged({{no, 1}, {open, 2}, {open, 3}})) == 1);
    CHECK(told_class(judged({{no, 4}, {no, 2}, {no, 3}})) == 1);
    CHECK(told_class(judged({{no, 3}, {no, 2}, {no, 2}})) == 2); // of equal ones the last
    CHECK(told_class(judged({{no, 3}})) == 0);
    Judged sought = judged({{no, 1}, {yes, 0}});
    sought.sought = 0;
    CHECK(told_class(sought) == 0);
}
