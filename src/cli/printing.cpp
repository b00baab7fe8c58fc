// Everything that goes on paper: print.
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "operations/learner.hpp"
#include "operations/looking_back.hpp"
#include "operations/marks.hpp"
#include "operations/record_sheet.hpp"
#include "operations/selecting.hpp"
#include "report/label_document.hpp"
#include "report/learner_document.hpp"
#include "report/paper_document.hpp"
#include "report/record_document.hpp"
#include "report/standing_document.hpp"
#include "terminal/page.hpp"
#include "terminal/selection_options.hpp"

#include <algorithm>

namespace beadbook {
namespace {

ExitCode print_coupon(Call &call) {
    Office &office = call.office();
    const CouponSheet sheet = show_coupon(office, call.at(1));
    const JudgedOrNot judged = judge_with_cautions(office, sheet.coupon);
    std::optional<Explained> explained;
    if (judged.judged && judged.judged->sought) explained = explain(office, call.at(1));
    return tell_page(call, coupon_page(sheet, judged, explained), sets_of(office, {sheet.coupon.record}),
                     {"examined by, date", "graded by, date"});
}

ExitCode print_exam(Call &call) {
    const ExamPaper paper =
        exam_paper(call.office(), call.at(1), whole_number(call.at(2), "number of an exam"));
    return tell_page(call, document_of(paper), {}, {"examined by, level, date", "reviewed by, date"});
}

ExitCode print_welder(Call &call) {
    return tell_page(call, document_of(standing_of(call.office(), call.at(1), call.day("on"))), {},
                     {"checked by, date"});
}

ExitCode print_cohort(Call &call) {
    Selection of;
    of.cohort = call.at(1);
    CouponList list{list_coupons(call.office(), of), false};
    if (list.coupons.empty()) throw refused(joined(unknown_words(call.office(), of), "; "));
    std::vector<CouponRecord> records;
    std::map<std::string, std::string> names;
    for (const auto &line : list.coupons) {
        records.push_back(line.record);
        const std::string welder = line.record.get("welder");
        if (!names.contains(welder)) names.emplace(welder, welder_name(call.office().book(), welder));
    }
    return tell_page(call, cohort_page(summarize(call.office(), {of}), list, names),
                     sets_of(call.office(), records), {"instructor, date"});
}

ExitCode print_record(Call &call) {
    const RecordSheet sheet = record_sheet(
        call.office(), call.at(1), whole_number(call.at(2), "number of a qualification"), call.day("on"));
    std::vector<std::shared_ptr<const CriteriaSet>> sets;
    for (const auto &test : sheet.tests) sets.push_back(test.set);
    return tell_page(call, document_of(sheet), sets);
}

ExitCode print_due(Call &call) {
    return tell_page(call, document_of(due(call.office(), call.days(60), call.day("on"))), {},
                     {"checked by, date"});
}

/// The marks or names that are meant; "L1..L15" is a series.
std::vector<std::string> welders_meant(const Call &call) {
    std::vector<std::string> out;
    for (std::size_t i = 1; i < call.words().size(); ++i) {
        const std::string &word = call.at(i);
        const auto marks =
            word.find("..") == std::string::npos ? std::vector<std::string>{word} : marks_in(word);
        for (const auto &mark : marks)
            if (std::find(out.begin(), out.end(), mark) == out.end()) out.push_back(mark);
    }
    return out;
}

ExitCode print_learner(Call &call) {
    const auto welders = welders_meant(call);
    if (welders.empty()) throw UsageError("print learner takes a word more or several: WELDER ...");
    std::vector<Document> pages;
    for (const auto &welder : welders) {
        Selection of;
        of.welder = welder;
        const Learner learner = learner_of(call.office(), of);
        pages.push_back(on_paper(handout_of(learner), paper_foot(call.office(), sets_of(learner))));
    }
    return tell_bare_page(call, each_on_its_sheets("Learners " + marks_text(welders), std::move(pages)));
}

ExitCode print_labels(Call &call) {
    const std::vector<std::string> marks(call.words().begin() + 1, call.words().end());
    if (!marks.empty()) check_no_selection(call, "labels of which no COUPON is named");
    return tell_bare_page(
        call, document_of(coupon_labels(call.office(), marks, selection_of(call), call.text("at"))));
}

/// What only labels are asked for by.
void check_labels_alone(Call &call) {
    check_no_selection(call, "labels");
    if (call.has("at")) throw UsageError("--at goes with labels");
}

struct Sheet {
    std::string_view name;
    std::size_t words; ///< after it
    std::string_view more;
    ExitCode (*print)(Call &);
};
constexpr Sheet sheets[]{
    {"coupon", 1, ": COUPON", print_coupon},        {"exam", 2, ": COUPON NUMBER", print_exam},
    {"welder", 1, ": WELDER", print_welder},        {"cohort", 1, ": NAME", print_cohort},
    {"record", 2, ": WELDER NUMBER", print_record}, {"due", 0, "", print_due}};

ExitCode run_print(Call &call) {
    if (call.at(0) == "labels") return print_labels(call);
    if (call.at(0) == "learner") {
        check_labels_alone(call);
        return print_learner(call);
    }
    for (const auto &sheet : sheets) {
        if (call.at(0) != sheet.name) continue;
        if (call.words().size() != sheet.words + 1)
            throw UsageError("print " + std::string(sheet.name) + " takes " + std::to_string(sheet.words) +
                             (sheet.words == 1 ? " word more" : " words more") + std::string(sheet.more));
        check_labels_alone(call);
        return sheet.print(call);
    }
    throw UsageError(
        "'" + call.at(0) +
        "' is nothing to print; expected coupon, exam, welder, learner, cohort, record, due or labels");
}

} // namespace

Deeds printing_deeds() { return {{"print", run_print}}; }

} // namespace beadbook
