#include "operations/retest_notes.hpp"

#include "criteria/weld_words.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"
#include "operations/test_likeness.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::vector<std::string> training_told(const Evidence &one, Day welded) {
    std::vector<std::string> out;
    const std::string counts = "coupon " + one.coupon + " counts as a retest after the training of ";
    for (const auto &[day, entered] : one.after->late)
        out.push_back(counts + print(day) + ", which was entered on " + print(entered) +
                      ", after the coupon was welded");
    const auto &trained = one.after->trained;
    if (std::find(trained.begin(), trained.end(), welded) != trained.end())
        out.push_back(counts + print(welded) + ", the day on which it was welded itself");
    return out;
}

/// "diameter 6 in, and there 2 in" of one process.
std::vector<std::string> sizes_otherwise(const Weld &weld, const Weld &failed, Unit unit) {
    std::vector<std::string> out;
    for (const Trait trait : {Trait::thickness, Trait::weld_thickness, Trait::diameter}) {
        const auto &is = weld.size(trait), &was = failed.size(trait);
        if (is == was) continue;
        const auto said = [&](const std::optional<Exact> &size) {
            return size ? print_exact(*size, Dimension::length, unit) : std::string("not told");
        };
        out.push_back(std::string(info(trait).name) + " " + said(is) + ", and there " + said(was));
    }
    return out;
}

std::vector<std::string> sizes_told(const GradedTests &tests, const Evidence &one) {
    std::vector<std::string> out;
    const auto *failed = tests.find(one.after->coupon);
    if (!failed) return out;
    auto coupons = one.coupons;
    if (std::find(coupons.begin(), coupons.end(), one.coupon) == coupons.end()) coupons.push_back(one.coupon);
    for (const auto &id : coupons) {
        const auto *test = tests.find(id);
        if (!test) continue;
        std::vector<std::string> otherwise;
        for (const auto &weld : test->welds)
            for (const auto &was : failed->welds)
                // What was welded otherwise is no retest of it, as is told beside what it grants.
                if (same_process(weld.word(Trait::process), was.word(Trait::process)) &&
                    welded_otherwise(weld, {was}).empty())
                    for (auto &size : sizes_otherwise(weld, was, test->coupon.record.unit()))
                        if (std::find(otherwise.begin(), otherwise.end(), size) == otherwise.end())
                            otherwise.push_back(std::move(size));
        if (!otherwise.empty())
            out.push_back("coupon " + id + " counts as a retest of coupon " + one.after->coupon +
                          ", which failed, and is of other sizes: " + joined(otherwise, "; ") +
                          "; a retest is one of the same test (common practice, no source)");
    }
    return out;
}

} // namespace

std::vector<std::string> retest_notes(const GradedTests &tests, const std::vector<Evidence> &all,
                                      const std::vector<Day> &welded) {
    std::vector<std::string> out;
    const auto add = [&](std::vector<std::string> notes) {
        for (auto &note : notes)
            if (std::find(out.begin(), out.end(), note) == out.end()) out.push_back(std::move(note));
    };
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!all[i].after) continue;
        add(training_told(all[i], welded[i]));
        add(sizes_told(tests, all[i]));
    }
    return out;
}

std::vector<std::string> retest_notes(const GradedTests &tests, const TestEvidence &proof) {
    std::vector<Evidence> all;
    for (const auto &part : proof.parts) all.push_back(part.evidence);
    return retest_notes(tests, all, std::vector<Day>(all.size(), proof.welded));
}

} // namespace beadbook
