#include "report/practice_document.hpp"

#include "measure/text.hpp"
#include "report/check_document.hpp"

namespace beadbook {

Document document_of(const std::vector<std::shared_ptr<const Practice>> &all) {
    Grid table{{{"", false}, {"", false}, {"", false}}, {}};
    for (const auto &practice : all)
        table.rows.push_back({practice->name, std::string(name_of(practice->method)),
                              practice->title + " (" + practice->edition + ")"});
    Document out;
    out.title = "Practices";
    return out.add(std::move(table));
}

Document document_of(const Practice &practice) {
    Document out;
    out.title = practice.title;
    out.heading(practice.title + " (" + practice.edition + "), " + std::string(name_of(practice.method)));
    out.line(practice.source);
    if (!practice.notes.empty()) out.line(practice.notes);
    for (const auto &rule : practice.rules) {
        std::string words;
        for (const auto &when : rule.when) words += (words.empty() ? "where " : " and ") + when.text;
        words += (words.empty() ? "" : ": ") + rule.must.text + (rule.warning ? " (else a warning)" : "");
        std::vector<Bullet> under;
        if (!rule.reading.empty()) under.push_back({"our reading: " + rule.reading, "", {}});
        if (!rule.repeat.empty()) under.push_back({"if not: " + rule.repeat, "", {}});
        out.item(words, rule.clause + "; " + print_in_full(rule.standing), std::move(under));
    }
    if (!practice.gaps.empty()) out.heading("Known gaps: what they bear on cannot be called valid", 2);
    for (const auto &gap : practice.gaps) {
        std::string words;
        for (const auto &when : gap.when) words += (words.empty() ? "where " : " and ") + when.text;
        out.item((words.empty() ? "" : words + ": ") + gap.what,
                 gap.harmless.empty() ? "" : "bears on no exam: " + gap.harmless);
    }
    return out.caution();
}

Document document_of(const std::vector<ConditionInfo> &conditions) {
    Grid table{{{"", false}, {"", false}}, {}};
    for (const auto &condition : conditions) {
        std::vector<std::string> methods;
        for (const Exam method : condition.methods) methods.emplace_back(name_of(method));
        table.rows.push_back(
            {condition.name,
             (methods.empty() ? "all methods" : listed(methods)) + ": " + condition.help +
                 (condition.words.empty() ? "" : " (" + listed(condition.words, "or") + ")")});
    }
    Document out;
    out.title = "Conditions that exams may record";
    return out.add(std::move(table));
}

Document document_of(const Checked<Practice> &checked) {
    return check_document(checked, "rule", checked.value ? checked.value->rules.size() : 0);
}

} // namespace beadbook
