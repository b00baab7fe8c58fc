#pragma once

#include "qualify/range_rules.hpp"

#include <functional>

namespace beadbook {

/// One production weld, or a family of them: every listed word and every size between the ends is needed.
struct Job {
    struct Sizes {
        Exact from, to;
    };
    std::string id;
    std::array<std::vector<std::string>, word_traits> words;
    std::array<std::optional<Sizes>, trait_count> sizes;
    std::string class_id;   ///< of the criteria, for the examinations
    std::string magnetic;   ///< yes, no, or empty
    std::vector<Exam> also; ///< that the drawing calls for beyond the criteria
    Where where_from;

    /// More than one size of it.
    bool spans(Trait trait) const {
        const auto &one = sizes[index_of(trait)];
        return one && one->from < one->to;
    }
};

/// The shop's work, as a file describes it (criteria/welder/README.md).
struct Work {
    std::shared_ptr<const RangeRules> rules;
    std::string criteria; ///< set that the coupons are examined by; may be empty
    Unit unit = Unit::inch;
    std::vector<Job> jobs;
    std::array<std::vector<Exact>, trait_count> stock; ///< sizes of coupons at hand; empty: any of use
};

struct LoadedWork {
    std::optional<Work> work; ///< if there was no error
    std::vector<Issue> issues;
};

/// Opens rules by the name that stands in the file; throws InputError or what the caller's errors are.
using RulesByName = std::function<std::shared_ptr<const RangeRules>(const std::string &)>;

/// `rules_name` stands in for the file's own key `rules`, if it is not empty.
LoadedWork load_work(const std::string &text, const std::string &rules_name, const RulesByName &open);

} // namespace beadbook
