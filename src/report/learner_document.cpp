#include "report/learner_document.hpp"

#include "criteria/provenance.hpp"
#include "measure/text.hpp"
#include "report/after_test_document.hpp"
#include "report/coupon_document.hpp"
#include "report/earlier_document.hpp"
#include "report/judgement_document.hpp"
#include "report/own_file.hpp"
#include "report/summary_document.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

Words verdict_of(const LearnerCoupon &one) {
    if (!one.record.withdrawn.empty()) return {"withdrawn", Tone::cannot_say};
    if (!one.explained) return {"not judged", Tone::cannot_say};
    const Judged &judged = one.explained->judged;
    return verdict_words(judged.verdict()) +
           (judged.bends_failed() ? Words(" (mechanical tests failed)", Tone::reject) : Words()) +
           told_beside(judged, ", ") + said_otherwise_behind(judged.said_otherwise, ", ") +
           own_file_behind(own_file_mark(judged.set->name, judged.set->hash));
}

Words grade_of(const LearnerCoupon &one) {
    if (!one.grade) return {};
    const std::string against = against_text(*one.grade);
    return Words(one.grade->decision() + (against.empty() ? "" : " (" + against + ")")) +
           grade_mark(one.grading);
}

Grid table_of(const Learner &learner) {
    Grid out{{{"coupon"},
              {"welded"},
              {"joint"},
              {"position"},
              {"class"},
              {"exams"},
              {"found", true},
              {"verdict"},
              {"grade"}},
             {}};
    for (const auto &one : learner.coupons) {
        const auto &r = one.record;
        out.rows.push_back({r.id, r.get("welded"), r.get("joint"), r.get("position"), r.get("class"),
                            exams_in_a_cell(one.exams), std::to_string(one.finds), verdict_of(one),
                            grade_of(one)});
    }
    return out;
}

void add_coupon(Document &doc, const LearnerCoupon &one) {
    doc.gap().heading("Coupon " + one.record.id, 1);
    if (one.explained) {
        add_explained(doc, *one.explained);
        add_after_test(doc, one.after, one.explained);
        return;
    }
    doc.line(Words(one.record.withdrawn.empty() ? "Not judged: " + one.why_not
                                                : "The coupon is withdrawn: " + one.record.withdrawn,
                   Tone::cannot_say));
    if (one.grade) doc.line(Words("Graded ") + grade_words(*one.grade, one.grading));
    add_after_test(doc, one.after, one.explained);
    for (const auto &remark : one.remarks) doc.line("Remark by " + remark.stamp.who + ": " + remark.text);
}

/// "Class 2 of ...: accept": of each coupon, however many say the same.
bool is_verdict(const Paragraph &line) {
    const auto &runs = line.words.runs();
    return !runs.empty() && runs.front().tone == Tone::strong;
}

} // namespace

Document document_of(const Learner &learner) {
    Document doc;
    doc.title = "Welder " + learner.welder + (learner.name.empty() ? "" : ", " + learner.name);
    doc.heading(doc.title);
    Selection narrower = learner.of;
    narrower.welder.clear();
    if (!narrower.all()) doc.line("Coupons of: " + selection_words(narrower));
    for (const auto &one : learner.said_of_another)
        doc.line(Words("Coupon " + one.coupon + " failed as a test of this welder, by " +
                           listed(one.failed_by) + "; it is said to be " +
                           (one.welder.empty() ? "nobody's" : "one of " + one.welder) +
                           " since, and stays a failure of this one.",
                       Tone::reject));
    if (learner.coupons.empty())
        return std::move(doc.line(narrower.all() ? "no coupon on record names this welder yet"
                                                 : "no coupon of this welder is as asked for"));
    doc.add(table_of(learner));
    const bool any_class = std::any_of(learner.coupons.begin(), learner.coupons.end(), [](const auto &one) {
        return one.explained && !one.explained->judged.sought;
    });
    doc.gap().line(learner.accepted.of == 0 ? "Nothing is accepted or rejected yet."
                                            : "Accepted, of those decided: " + share_words(learner.accepted) +
                                                  "; 95 % interval, for the class sought" +
                                                  (any_class ? ", or where none is for any class." : "."));
    const auto counting =
        static_cast<std::size_t>(std::count_if(learner.coupons.begin(), learner.coupons.end(),
                                               [](const auto &one) { return one.record.withdrawn.empty(); }));
    if (const std::size_t undecided = counting - learner.accepted.of; undecided > 0)
        doc.line({"Not decided: " + counted(undecided, "coupon") + ".", Tone::cannot_say});
    const auto left_out = std::count_if(learner.coupons.begin(), learner.coupons.end(), [](const auto &one) {
        return one.record.withdrawn.empty() && !one.explained && one.finds > 0;
    });
    if (left_out > 0)
        doc.line({"Not counted, as nobody judged what was found: " +
                      counted(static_cast<std::size_t>(left_out), "coupon") + ".",
                  Tone::cannot_say});
    add_alike(doc, learner.alike);
    for (const auto &one : learner.coupons) add_coupon(doc, one);
    return doc.caution();
}

Document handout_of(const Learner &learner) {
    constexpr std::size_t long_sentence = 80;
    Document all = document_of(learner), out;
    out.title = all.title;
    std::set<std::string> said;
    bool proved = false; // the coupon at hand
    for (auto &block : all.blocks) {
        if (const auto *heading = std::get_if<Heading>(&block); heading && heading->level == 1)
            proved = false;
        if (const auto *fold = std::get_if<Fold>(&block)) {
            proved = true;
            out.line(fold->title + ", in short:");
            for (const std::size_t i : fold->in_short) {
                const Words &words = fold->items[i].words;
                // Who examined, and how sure it is, is of this coupon; what a set lacks is the same for many.
                const bool told = i != fold->in_short.front() && i != fold->in_short.back() &&
                                  !said.insert(words.plain()).second;
                out.item(told ? Words(words.plain().substr(0, words.plain().find(':')) + ": as said above.")
                              : words + Words("."));
            }
            continue;
        }
        const auto *figure = std::get_if<Figure>(&block);
        if (figure && figure->picture.kind == "weld-ring") continue; // the weld unrolled shows the same
        if (figure && proved && figure->picture.kind == "limits") {
            // What came nearest to its limit is told in words.
            if (!out.blocks.empty() && std::holds_alternative<Heading>(out.blocks.back()))
                out.blocks.pop_back();
            continue;
        }
        if (const auto *line = std::get_if<Paragraph>(&block))
            if (const std::string words = line->words.plain();
                !is_verdict(*line) && words.size() > long_sentence && !said.insert(words).second)
                continue;
        out.blocks.push_back(std::move(block));
    }
    return out;
}

} // namespace beadbook
