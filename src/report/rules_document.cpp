#include "report/rules_document.hpp"

#include "measure/text.hpp"
#include "operations/looser_rules.hpp"
#include "report/check_document.hpp"
#include "report/exam_words.hpp"

namespace beadbook {
namespace {

std::string source_words(const std::string &clause, const Standing &standing) {
    return clause + "; " + print_in_full(standing);
}
std::string source_words(const Authority &from) { return source_words(from.clause, from.standing); }

void add_ranges(Document &out, const RangeRules &rules) {
    for (const auto &variable : rules.variables) {
        out.heading(std::string(info(variable.of).name) +
                        (variable.work.text.empty() ? "" : " (limits work with " + variable.work.text + ")"),
                    2);
        for (const auto &rule : rules.rules) {
            if (rule.of != variable.of) continue;
            std::string words = rule.id + ": ";
            if (!rule.test.text.empty()) words += "test " + rule.test.text + ": ";
            words += allowance_words(rule);
            if (!rule.work.text.empty()) words += ", for work " + rule.work.text;
            std::vector<Bullet> under;
            if (!rule.reading.empty()) under.push_back({"our reading: " + rule.reading, "", {}});
            out.item(words, source_words(rule.clause, rule.standing), std::move(under));
        }
    }
}

void add_ends(Document &out, const RangeRules &rules) {
    out.heading("ends of ranges that are worked out", 2);
    out.item("compared " + ends_words(rules.ends),
             rules.ends.from ? source_words(*rules.ends.from) : "the rules say nothing");
}

void add_exams(Document &out, const RangeRules &rules) {
    if (!rules.exams.empty()) out.heading("examinations of the test", 2);
    for (const auto &exam : rules.exams)
        out.item(exams_words(exam.one_of) + (exam.test.text.empty() ? "" : ", of a test " + exam.test.text),
                 source_words(exam.clause, exam.standing));
}

void add_acceptance(Document &out, const RangeRules &rules) {
    if (!rules.accepted_by.empty()) out.heading("what a test weld is accepted by", 2);
    for (const auto &one : rules.accepted_by) out.item(print(one), source_words(one.from));
}

void add_validity(Document &out, const RangeRules &rules) {
    out.heading("validity", 2);
    for (const auto &way : rules.validity) {
        std::vector<Bullet> under;
        if (way.extension)
            under.push_back({extension_words(*way.extension), source_words(way.extension->from), {}});
        out.item("way " + way.id + ": " + period_words(way), source_words(way.from), std::move(under));
    }
    const auto step = [&](const std::string &name, const std::optional<CouponsAsked> &asked) {
        if (asked)
            out.item(name + ": " + std::to_string(asked->coupons) +
                         (asked->coupons == 1 ? " coupon" : " coupons"),
                     source_words(asked->from));
    };
    step("retest at once, for each that failed", rules.retest.immediate);
    if (rules.retest.times > 0)
        out.item("retest at once: after " + std::to_string(rules.retest.times) +
                 (rules.retest.times == 1 ? " failure" : " failures") + "; then training comes first");
    if (const auto &same = rules.retest.same_exam)
        out.item("retest at once is examined by the methods that the failed coupon failed by",
                 source_words(*same));
    if (!rules.retest.immediate)
        out.item("retest: what follows a failed coupon is not known here, so a later one is cannot say");
    step("retest after training", rules.retest.after_training);
    step("renewal of a lapsed one", rules.renewal);
}

} // namespace

std::string not_known_words(const RangeRules &rules) {
    const auto out = rules.not_known();
    return out.empty() ? "" : "not known here: " + listed(out) + "; hold the standard beside it";
}

std::string allowance_words(const RangeRule &rule) {
    if (rule.by.empty()) return rule.text;
    std::string out;
    for (const auto &[word, allowed] : rule.by)
        out += (out.empty() ? "" : "; ") + word + ": " + listed(allowed);
    return out;
}

std::string ends_words(const EndComparison &ends) {
    switch (ends.kind) {
    case EndComparison::Kind::absolute: return "as worked out";
    case EndComparison::Kind::rounded: return ends.text + ", halves to the even figure";
    case EndComparison::Kind::wider: break;
    }
    return "as worked out, or " + ends.text.substr(ends.text.find("rounded")) +
           ", halves to the even figure, whichever takes in more";
}

std::string period_words(const ValidityWay &way) {
    std::string out = way.lasts ? "lasts " + way.lasts->text : "no fixed end";
    if (way.use_every)
        out += std::string(way.kept_by_use ? ", goes on while used within every "
                                           : ", to be used within every ") +
               (way.whole_months ? "so many calendar months: " : "") + way.use_every->text;
    if (way.same_employer) out += ", with the same employer";
    return out;
}

std::string extension_words(const ValidityWay::Extension &extension) {
    return "extended by " + extension.adds.text + " on " + std::to_string(extension.welds) +
           " welds of the last " + extension.within.text + ", examined" +
           (extension.one_of.empty() ? "" : " by " + listed(extension.one_of, "or")) + " and accepted" +
           (extension.as_test ? ", welded as the test was but for their sizes" : "");
}

Document document_of(const std::vector<std::shared_ptr<const RangeRules>> &all) {
    Grid table{{{"", false}, {"", false}}, {}};
    for (const auto &rules : all)
        table.rows.push_back({rules->name, rules->title + " (" + rules->edition + ")"});
    Document out;
    out.title = "Rules for welders";
    return out.add(std::move(table));
}

Document document_of(const RangeRules &rules) {
    Document out;
    out.title = rules.title;
    out.heading(rules.title).line(rules.edition + "; " + rules.source);
    if (!rules.notes.empty()) out.line(rules.notes);
    if (!rules.base_metals.empty()) out.line("For base metals: " + listed(rules.base_metals));
    add_ranges(out, rules);
    add_ends(out, rules);
    add_exams(out, rules);
    add_acceptance(out, rules);
    add_validity(out, rules);
    const std::string unknown = not_known_words(rules);
    if (!rules.gaps.empty() || !unknown.empty()) out.heading("Known gaps:", 2);
    if (!unknown.empty()) out.item(unknown);
    for (const auto &gap : rules.gaps) out.item(gap);
    return out.caution();
}

Document document_of(const Checked<RangeRules> &checked) {
    Document out = check_document(checked, "range", checked.value ? checked.value->rules.size() : 0);
    if (checked.value)
        for (const auto &one : looser_rules_words(*checked.value)) out.line(Words(one, Tone::cannot_say));
    return out;
}

} // namespace beadbook
