#include "report/cases_document.hpp"

#include "measure/text.hpp"
#include "report/sentence.hpp"

namespace beadbook {
namespace {

std::string sides_words(const UntriedLimit &limit) {
    return limit.within ? "never over" : limit.over ? "never within" : "not tried";
}

/// The limits that no case tries from both sides, a rule a line.
std::vector<Bullet> untried_bullets(const TriedCases &tried) {
    std::vector<Bullet> out;
    std::string rule, words;
    const auto close = [&] {
        if (!words.empty()) out.push_back({rule + ": " + words, "", {}});
        words.clear();
    };
    for (const auto &limit : tried.untried) {
        if (limit.rule != rule) close();
        rule = limit.rule;
        words += (words.empty() ? "" : "; ") + limit.class_id + " " + sides_words(limit);
    }
    close();
    return out;
}

/// What no case says was examined by is taken as examined by everything.
std::string untold_exams(const TriedCase &one) {
    return one.worked.exams_said ? "" : " (no exams named: all methods taken as done)";
}

void add_failed(Document &out, const TriedCases &tried, const TriedCase &one) {
    std::vector<Bullet> under;
    const Coupon facts = one.worked.coupon.facts();
    const Case view{*one.worked.set, facts, one.worked.exams, one.worked.indications,
                    one.worked.coupon.unit()};
    for (const auto &id : one.classes) {
        const std::size_t c = *tried.set->class_index(id);
        under.push_back({"class " + id + ": expected " + std::string(name_of(one.worked.expected.at(id))) +
                             ", judged " + std::string(name_of(one.judgement.classes[c].verdict)),
                         "",
                         {}});
        for (const auto &f : one.judgement.classes[c].findings)
            under.back().under.push_back({sentence(view, c, f), authority(view, c, f), {}});
    }
    if (one.other_rule) under.push_back({"not decided by " + one.worked.decided_by, "", {}});
    out.item("case " + one.worked.id + " does not hold" + untold_exams(one), one.worked.source,
             std::move(under));
}

void add_tried(Document &out, const TriedCases &tried) {
    out.heading(tried.set->name + ": " + std::to_string(tried.cases.size() - tried.failed()) + " of " +
                    std::to_string(tried.cases.size()) + " cases hold",
                2);
    for (const auto &one : tried.cases)
        if (!one.holds()) add_failed(out, tried, one);
}

void add_never_decisive(Document &out, const TriedCases &tried) {
    if (!tried.never_decisive.empty()) out.line("Never decisive: " + listed(tried.never_decisive));
}

} // namespace

void add_untried(Document &out, const TriedCases &tried) {
    auto untried = untried_bullets(tried);
    if (!tried.never_decisive.empty()) {
        out.heading("Rules that no worked case is decided by", 2);
        out.item(listed(tried.never_decisive));
    }
    if (untried.empty()) return;
    out.heading("Limits that no worked case tries from both sides", 2);
    for (auto &one : untried) out.item(one.words, "", {});
}

std::string verdicts_words(const TriedCases &tried, const TriedCase &one) {
    std::string out;
    for (std::size_t c = 0; c < tried.set->classes.size(); ++c)
        out += (out.empty() ? "" : ", ") + tried.set->classes[c].id + " " +
               std::string(name_of(one.judgement.classes[c].verdict));
    return out;
}

Document document_of(const TriedCases &tried) {
    Document out;
    out.title = "Worked cases of " + tried.set->name;
    add_tried(out, tried);
    for (const auto &one : tried.cases)
        if (one.holds())
            out.item(one.worked.id + ": " + verdicts_words(tried, one) + untold_exams(one),
                     one.worked.source);
    add_never_decisive(out, tried);
    if (auto untried = untried_bullets(tried); !untried.empty()) {
        out.heading("Limits that no case tries from both sides", 2);
        for (auto &one : untried) out.item(one.words, "", {});
    }
    return out;
}

Document document_of(const std::vector<TriedCases> &all) {
    Document out;
    out.title = "Worked cases";
    for (const auto &tried : all) {
        add_tried(out, tried);
        add_never_decisive(out, tried);
    }
    if (all.empty()) out.line("no set has worked cases");
    return out;
}

} // namespace beadbook
