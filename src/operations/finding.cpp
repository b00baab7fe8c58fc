#include "operations/finding.hpp"

#include "measure/text.hpp"

namespace beadbook {
namespace {

const std::vector<std::string> &usually_looked_for() {
    static const std::vector<std::string> types{"crack",    "incomplete fusion", "incomplete penetration",
                                                "porosity", "inclusion",         "undercut"};
    return types;
}

std::optional<RequiredInClass> required_of(Catalogue &catalogue, const CouponRecord &coupon,
                                           std::vector<std::string> &notes) {
    if (coupon.get("criteria").empty()) return std::nullopt;
    const auto set = catalogue.criteria(coupon.get("criteria"));
    const std::string class_id = coupon.get("class");
    auto index = set->class_index(class_id);
    if (!index && class_id.empty() && set->classes.size() == 1) index = 0;
    if (!index) {
        if (!class_id.empty())
            notes.push_back("criteria " + set->name + " have no class '" + shown(class_id) + "'; they have " +
                            listed(set->class_names()));
        return std::nullopt;
    }
    return RequiredInClass{set, set->classes[*index].id, required_exams(*set, *index, coupon.facts())};
}

} // namespace

Done<MethodsResult> methods_for(Catalogue &catalogue, const CouponRecord &coupon,
                                const std::vector<std::string> &look_for) {
    Done<MethodsResult> out;
    out.value.required = required_of(catalogue, coupon, out.notes);
    const Vocabulary &vocabulary = Vocabulary::shipped();
    const Coupon facts = coupon.facts();
    for (std::size_t i = 0; i < exam_count; ++i)
        if (facts.called_for[i]) out.value.called_for.push_back(called_for(static_cast<Exam>(i)));
    for (const auto &word : look_for.empty() ? usually_looked_for() : look_for) {
        const auto type = vocabulary.find(word);
        if (!type)
            throw refused("'" + shown(word) + "' is no type of imperfection" +
                          did_you_mean(word, vocabulary.names()))
                .at("look-for");
        out.value.imperfections.push_back({vocabulary[*type].name, finds(vocabulary, *type, facts)});
    }
    return out;
}

} // namespace beadbook
