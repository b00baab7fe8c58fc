#include "qualify/validity_reader.hpp"

#include "criteria/rule_reader.hpp"
#include "measure/text.hpp"
#include "qualify/examined_weld.hpp"
#include "qualify/filter_reader.hpp"

namespace beadbook {
namespace {

std::optional<Period> read_period(const Fields &fields, std::string_view key, Issues &issues) {
    const Yaml *node = fields.get(key);
    if (!node) return std::nullopt;
    return parsed(*node, fields.path_of(key), issues,
                  [](const std::string &text) { return parse_period(text); });
}

int read_count(const Fields &fields, std::string_view key) {
    const std::string text = fields.needed_text(key);
    if (text.size() == 1 && text[0] >= '1' && text[0] <= '9') return text[0] - '0';
    if (fields.get(key)) fields.error(key, "found '" + shown(text) + "'; expected a number from 1 to 9");
    return 1;
}

ValidityWay::Extension read_extension(const Yaml &node, Issues &issues) {
    const Fields fields(node, "validity.extension",
                        {"welds", "within", "adds", "one of", "as the test", "clause", "standing"}, issues);
    ValidityWay::Extension out;
    out.welds = read_count(fields, "welds");
    fields.need("within");
    fields.need("adds");
    out.within = read_period(fields, "within", issues).value_or(Period{});
    out.adds = read_period(fields, "adds", issues).value_or(Period{});
    out.from = read_authority(fields, issues);
    out.as_test = fields.flag("as the test", false);
    out.one_of = read_known_words(fields, "one of", stated_exams(), "examination", issues);
    return out;
}

ValidityWay read_way(const Yaml &node, Issues &issues) {
    static const std::vector<std::string> keys{"id",         "lasts",       "use every",
                                               "counted in", "kept by use", "same employer",
                                               "extension",  "clause",      "standing"};
    const Fields fields(node, "validity", keys, issues);
    ValidityWay out;
    out.id = fields.needed_text("id");
    out.lasts = read_period(fields, "lasts", issues);
    out.use_every = read_period(fields, "use every", issues);
    out.from = read_authority(fields, issues);
    out.same_employer = fields.flag("same employer", false);
    out.kept_by_use = fields.flag("kept by use", false);
    if (out.kept_by_use && !(out.lasts && out.use_every))
        fields.error("kept by use", "needs 'lasts' and 'use every'");
    if (const std::string how = fields.text("counted in"); !how.empty()) {
        out.whole_months = how == "calendar months";
        if (how != "calendar months" && how != "days")
            fields.error("counted in", "found '" + shown(how) + "'; expected days or calendar months");
        if (out.whole_months && out.use_every && out.use_every->days != 0)
            fields.error("counted in", "'use every' is in days; calendar months need months");
    }
    if (const Yaml *extension = fields.get("extension")) out.extension = read_extension(*extension, issues);
    return out;
}

std::optional<CouponsAsked> read_coupons(const Fields &fields, std::string_view key, Issues &issues,
                                         int *times = nullptr) {
    const Yaml *node = fields.get(key);
    if (!node) return std::nullopt;
    std::vector<std::string> keys{"coupons", "clause", "standing"};
    if (times) keys.emplace_back("times");
    const Fields one(*node, fields.path_of(key), keys, issues);
    CouponsAsked out;
    if (times && one.get("times")) *times = read_count(one, "times");
    out.coupons = read_count(one, "coupons");
    out.from = read_authority(one, issues);
    return out;
}

} // namespace

Authority read_authority(const Fields &fields, Issues &issues) {
    return {fields.needed_text("clause"), read_standing(fields, issues)};
}

void read_validity(const Fields &top, RangeRules &rules, Issues &issues) {
    for (const Yaml *node : top.items("validity")) rules.validity.push_back(read_way(*node, issues));
    if (const Yaml *node = top.get("retest")) {
        const Fields fields(*node, "retest", {"immediate", "after training", "same examination"}, issues);
        rules.retest.immediate = read_coupons(fields, "immediate", issues, &rules.retest.times);
        rules.retest.after_training = read_coupons(fields, "after training", issues);
        if (const Yaml *same = fields.get("same examination"))
            rules.retest.same_exam = read_authority(
                Fields(*same, fields.path_of("same examination"), {"clause", "standing"}, issues), issues);
    }
    rules.renewal = read_coupons(top, "renewal", issues);
}

} // namespace beadbook
