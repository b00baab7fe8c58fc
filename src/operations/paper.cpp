#include "operations/paper.hpp"

#include "criteria/provenance.hpp"
#include "operations/selecting.hpp"
#include "operations/welder_names.hpp"

#include <algorithm>
#include <tuple>

namespace beadbook {
namespace {

/// Of a rule whose classes differ the least sure one.
const Standing &least_sure(const Rule &rule) {
    return *std::max_element(
        rule.standings.begin(), rule.standings.end(),
        [](const Standing &a, const Standing &b) { return needs_checking(a) < needs_checking(b); });
}

PaperBasis basis_of(const CriteriaSet &set) {
    PaperBasis out{set.title, set.edition, set.hash, {}, own_file_words(set.name, set.hash)};
    for (const auto &rule : set.rules)
        if (!rule.standings.empty()) out.limits.add(least_sure(rule));
    for (const auto &one : set.required) out.limits.add(one.standing);
    for (const auto &one : set.relevance) out.limits.add(one.standing);
    return out;
}

/// For an address: everything but letters, digits and a few signs as %XX.
std::string in_address(const std::string &mark) {
    static constexpr char digits[] = "0123456789ABCDEF";
    std::string out;
    for (const char c : mark) {
        const auto byte = static_cast<unsigned char>(c);
        const bool plain = (byte >= '0' && byte <= '9') || (byte >= 'A' && byte <= 'Z') ||
                           (byte >= 'a' && byte <= 'z') || c == '-' || c == '_' || c == '.';
        if (plain)
            out += c;
        else
            out += {'%', digits[byte >> 4], digits[byte & 15]};
    }
    return out;
}

} // namespace

PaperFoot paper_foot(Office &office, const std::vector<std::shared_ptr<const CriteriaSet>> &sets) {
    PaperFoot out{office.ledger().head(), office.outside().today(), {}};
    for (const auto &set : sets) {
        const bool known = std::any_of(out.by.begin(), out.by.end(),
                                       [&](const PaperBasis &one) { return one.hash == set->hash; });
        if (!known) out.by.push_back(basis_of(*set));
    }
    std::sort(out.by.begin(), out.by.end(), [](const PaperBasis &a, const PaperBasis &b) {
        return std::tie(a.title, a.hash) < std::tie(b.title, b.hash);
    });
    return out;
}

std::vector<std::shared_ptr<const CriteriaSet>> sets_of(Office &office,
                                                        const std::vector<CouponRecord> &coupons) {
    std::vector<std::string> names;
    for (const auto &coupon : coupons)
        if (const std::string name = coupon.get("criteria"); !name.empty()) names.push_back(name);
    std::sort(names.begin(), names.end());
    names.erase(std::unique(names.begin(), names.end()), names.end());
    std::vector<std::shared_ptr<const CriteriaSet>> out;
    for (const auto &name : names) {
        try {
            out.push_back(office.criteria(name));
        } catch (const DataError &) {
            continue; // the page itself says why its coupons were not judged
        }
    }
    return out;
}

ExamPaper exam_paper(Office &office, const std::string &mark, int number) {
    ExamPaper out{office.coupon(mark), number};
    out.welder_name = welder_name(office.book(), out.coupon.record.get("welder"));
    out.coupon.needed_exam(number);
    return out;
}

CouponLabels coupon_labels(Office &office, const std::vector<std::string> &marks, const Selection &of,
                           const std::string &at) {
    CouponLabels out;
    out.at = at;
    while (out.at.ends_with('/')) out.at.pop_back();
    for (const auto &mark : marks) out.coupons.push_back(office.coupon(mark).record);
    if (marks.empty())
        select(office, of, [&](CouponAtHand &one) {
            if (one.line().record.withdrawn.empty()) out.coupons.push_back(one.line().record);
        });
    if (out.coupons.empty())
        throw refused("no coupon on record is as asked for, so there is nothing to label");
    return out;
}

std::string code_text(const CouponLabels &labels, const CouponRecord &coupon) {
    return labels.at.empty() ? coupon.id : labels.at + "/coupon/" + in_address(coupon.id);
}

} // namespace beadbook
