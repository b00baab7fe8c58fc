#include "facts/carried_fact.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"

namespace beadbook {

std::string welder_there(const std::vector<CarriedFact> &before) {
    for (const auto &fact : before)
        if (fact.kind == CarriedFact::Kind::welder) return fact.by;
    return "";
}

std::string words_of(const CarriedFact &fact) {
    using Kind = CarriedFact::Kind;
    const std::string because = fact.why.empty() ? "" : ": " + fact.why;
    const auto was = [&](const char *field) {
        const auto found = fact.as.find(field);
        return found == fact.as.end() ? std::string() : found->second;
    };
    const std::string there = "on the record that it comes from ";
    switch (fact.kind) {
    case Kind::graded_failed:
        return there + "it was graded failed" + (fact.class_id.empty() ? "" : " for class " + fact.class_id) +
               " by " + fact.by + " on " + fact.on + because;
    case Kind::bends_failed: return there + "its mechanical tests were said to have failed";
    case Kind::practice: return there + "it was for practice when it was first examined";
    case Kind::welded: return there + "it was said to be welded on " + fact.on;
    case Kind::left_behind:
        return there + "more is known of it" + (fact.changed.empty() ? "" : ": " + listed(fact.changed)) +
               (fact.why.empty() ? "" : "; written beside it: " + fact.why);
    case Kind::failed_beside:
        return "where it comes from, coupon " + fact.coupon + " of " + was("welder") + " failed" +
               (was("process").empty() ? "" : " in " + was("process")) +
               (was("position").empty() ? "" : ", position " + was("position")) +
               (fact.on.empty() ? "" : ", welded " + fact.on) +
               (fact.methods.empty() ? "" : ", by " + listed(fact.methods, "and")) +
               "; it was left out of the export, and counts here as one that failed";
    case Kind::welder: return there + "its welder is " + fact.by;
    case Kind::rejected: break;
    }
    const std::string set = was("criteria"), class_id = was("class");
    return there + "it was rejected" + (set.empty() ? "" : " by " + criteria_name(set)) +
           (class_id.empty() ? "" : ", class " + class_id + ",") + " before " + fact.by + " changed its " +
           listed(fact.changed, "and") + " on " + fact.on + because;
}

} // namespace beadbook
