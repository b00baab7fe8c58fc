#include "operations/ranging.hpp"

#include "facts/coupon_weld.hpp"
#include "facts/deposits.hpp"
#include "measure/text.hpp"
#include "operations/known_words.hpp"

namespace beadbook {
namespace {

/// The rules would silently range over nothing for a word that they do not know.
void check_words(const RangeRules &rules, const Weld &test) {
    for (std::size_t i = 0; i < word_traits; ++i) {
        const auto trait = static_cast<Trait>(i);
        if (!test.knows(trait)) continue;
        try {
            check_test_word(rules, trait, test);
        } catch (const Refusal &e) {
            throw Refusal(e).at(field_of(trait));
        }
    }
}

} // namespace

std::shared_ptr<const RangeRules> needed_rules(Catalogue &catalogue, const std::string &name) {
    if (name.empty())
        throw lacking("rules", "by which rules? they are " + listed(shipped_range_rule_names()) +
                                   ", or a file of your own that ends in .yaml");
    return catalogue.rules(name);
}

RangeResult range_of_coupon(Catalogue &catalogue, const std::string &rules, const CouponRecord &coupon) {
    RangeResult out{coupon, needed_rules(catalogue, rules), {}};
    if (coupon.fields.empty())
        throw Refusal(Refusal::Kind::request, "of which test? name a coupon, or say what it is").at("coupon");
    if (const std::string why = uncovered_metal(*out.rules, coupon.get("material")); !why.empty())
        throw refused(why).at("material");
    for (const char *field : {"filler-group", "filler-type"})
        if (const std::string why = filler_of_several(coupon, field); !why.empty())
            throw refused(why).at(field);
    if (const std::string why = backing_of_later(coupon); !why.empty()) throw refused(why).at("backing");
    if (const std::string why = deposits_over_weld(coupon); !why.empty()) throw refused(why).at("process");
    for (Weld &test : welds_of(coupon)) {
        check_words(*out.rules, test);
        std::vector<VariableRange> range = range_of(*out.rules, test);
        out.tests.push_back({std::move(test), std::move(range)});
    }
    return out;
}

} // namespace beadbook
