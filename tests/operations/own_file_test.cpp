// What a file of one's own lets through beside the shipped set that it is a copy of.
#include "case.hpp"
#include "catch.hpp"
#include "criteria/provenance.hpp"
#include "operations/looser.hpp"

#include <algorithm>

using namespace beadbook;
using namespace beadbook::test;

namespace {

std::string with(std::string text, const std::string &what, const std::string &instead) {
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    return text.replace(at, what.size(), instead);
}

/// The line of a head that begins with the key, told otherwise.
std::string with_head(const std::string &text, const std::string &key, const std::string &value) {
    const auto at = text.find("\n" + key + ": ");
    REQUIRE(at != std::string::npos);
    const auto end = text.find('\n', at + 1);
    return text.substr(0, at) + "\n" + key + ": " + value + text.substr(end);
}

/// A copy of a shipped set under a head of its own.
std::string copy_of(const std::string &shipped) {
    std::string out = "# a copy\n" + shipped_criteria(shipped)->text;
    out = with_head(out, "set", "yard-coupons");
    out = with_head(out, "title", "What the yard asks of its people");
    out = with_head(out, "edition", "\"first, by the foreman\"");
    return with_head(out, "source", "the foreman");
}

std::vector<std::string> names_of(const std::vector<const CriteriaSet *> &sets) {
    std::vector<std::string> out;
    for (const auto *one : sets) out.push_back(one->name);
    return out;
}

} // namespace

TEST_CASE("a copy of a shipped set under another head is held against it by its rules") {
    const std::string softened = with(copy_of("asme-ix-tests"), "lesser of 0.20 x t and 1/8 in", "0.9 x t");
    const auto own = set_from(softened);
    CHECK(names_of(shipped_alike(*own)) == std::vector<std::string>{"asme-ix-tests"});
    const auto looser =
        looser_than_shipped(*own, 0, coupon_from("thickness=0.5in", Unit::inch).facts(), Unit::inch);
    REQUIRE(looser.size() == 1);
    CHECK(looser[0].rules == std::vector<std::string>{"rt-rounded"});
    CHECK(looser[0].shipped_class.empty());
    // The only class is still the only class.
    const auto renamed = set_from(with(softened, "[test coupon]", "[coupon of the yard]"));
    const auto also =
        looser_than_shipped(*renamed, 0, coupon_from("thickness=0.5in", Unit::inch).facts(), Unit::inch);
    REQUIRE(also.size() == 1);
    CHECK(also[0].shipped_class == "test coupon");
}

TEST_CASE("each shipped set under another head is taken for itself, and one with few of its rules is not") {
    for (const auto &name : shipped_sets()) {
        const auto shipped = shipped_criteria(name);
        if (!shipped->extends.empty()) continue;
        INFO(name);
        const auto alike = names_of(shipped_alike(*set_from(copy_of(name))));
        CHECK(std::find(alike.begin(), alike.end(), name) != alike.end());
    }
    CHECK(
        shipped_alike(*set_from(head() + "rules:\n  - {id: rt-rounded, types: porosity, exams: RT, measure: "
                                         "size, at most: 0.9 x T, clause: c, standing: {house: x}}\n"))
            .empty());
}
