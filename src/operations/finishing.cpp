#include "operations/finishing.hpp"

#include "facts/person_name.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/exam_mends.hpp"
#include "operations/judging.hpp"
#include "operations/people.hpp"
#include "operations/said_beside.hpp"
#include "operations/vouching.hpp"
#include "records/codecs/bodies.hpp"

#include <algorithm>

namespace beadbook {

void check_not_to_come(const ExamRecord &exam, Day today) {
    if (exam.date > today)
        throw refused("the exam is dated " + print(exam.date) + ", which is to come").at("date");
}

std::optional<Unlikely> before_its_weld(const ExamRecord &exam, const CouponRecord &coupon) {
    const std::string welded = coupon.get("welded");
    if (welded.empty() || exam.date >= parse_day(welded)) return std::nullopt;
    return Unlikely{"exam-before-weld", "the exam is dated " + print(exam.date) + ", before coupon " +
                                            coupon.id + " was welded on " + welded};
}

void check_day(const ExamRecord &exam, const CouponRecord &coupon, Day today) {
    check_not_to_come(exam, today);
    if (const auto one = before_its_weld(exam, coupon)) throw refused(one->reading).at("date");
}

void check_finish(const ExamRecord &exam, int found, int on_record) {
    if (exam.examiner.empty())
        throw refused("who examined? an exam is finished by a named examiner").give("examiner");
    if (found == on_record) return;
    const std::string said =
        "the exam is said to have found " + std::to_string(found) + ", and " +
        (on_record == 0 ? "none is" : counted(static_cast<std::size_t>(on_record), "is", "are")) +
        " on record under it: ";
    // A smaller number would lose a find that somebody saw, so none is offered.
    throw refused(said + (found > on_record ? "log what is missing, and finish it then"
                                            : "look at what is logged, and withdraw what was not found"))
        .at("found");
}

bool is_anothers(const ExamRecord &exam, const Stamp &who) {
    return who.signed_in && !exam.examiner.empty() && !same_person(exam.examiner, who.who);
}

bool finishes_for_others(Office &office, const std::string &name) {
    const auto person = person_named(office, name);
    return person && std::find(person->roles.begin(), person->roles.end(), "keeper") != person->roles.end();
}

void check_may_finish(Writing &writing, const ExamRecord &exam, const std::string &why) {
    const Stamp &stamp = writing.stamp();
    if (!is_anothers(exam, stamp)) return;
    if (!finishes_for_others(writing.office(), stamp.who))
        throw refused("what the exam found is said by " + exam.examiner + ", its examiner, and not by " +
                      stamp.who + "; a keeper may finish it for a reason")
            .at("by");
    if (checked_reason(why, "reason").empty())
        throw refused("what the exam found is said by " + exam.examiner +
                      ", its examiner; a keeper finishes it in his stead for a reason")
            .give("why");
}

std::string named(const std::vector<const ExamRecord *> &exams) {
    std::vector<std::string> names;
    for (const auto *exam : exams)
        names.push_back(std::to_string(exam->number) + " (" + std::string(name_of(exam->method)) + ")");
    return listed(names);
}

Remedy log_under(const CouponState &coupon, const ExamRecord &exam) {
    const std::string method(name_of(exam.method));
    const auto open = coupon.open_exams();
    const auto alike = std::count_if(open.begin(), open.end(),
                                     [&](const ExamRecord *one) { return one->method == exam.method; });
    Remedy out{"log", {coupon.record.id, method + " ..."}, {}};
    if (alike > 1) out.fields.push_back("exam=" + std::to_string(exam.number));
    return out;
}

std::vector<Remedy> mends_of_number(const CouponState &coupon, const ExamRecord &exam, int found) {
    const int finds = coupon.finds_of(exam.number);
    if (found == finds) return {};
    if (found > finds) return {log_under(coupon, exam)};
    std::string number = "N";
    for (const auto &one : coupon.indications)
        if (one.exam == exam.number && finds == 1) number = std::to_string(one.number);
    return {{"show", {coupon.record.id}, {}},
            {"withdraw", {coupon.record.id, "indication", number}, {"why"}}};
}

namespace {

/// The exam of the request, else the one that is open, of the method if one is named.
const ExamRecord &open_exam(const CouponState &coupon, int number, std::optional<Exam> method) {
    if (number > 0) {
        const ExamRecord &exam = coupon.needed_exam(number);
        if (exam.finished)
            throw refused("exam " + std::to_string(number) + " of coupon " + coupon.record.id +
                          " is finished already")
                .mend({"reopen", {coupon.record.id, std::to_string(number)}, {"why"}});
        return exam;
    }
    auto open = coupon.open_exams();
    const auto by_another = [&](const ExamRecord *one) { return method && one->method != *method; };
    std::erase_if(open, by_another);
    const std::string &mark = coupon.record.id;
    if (!coupon.record.withdrawn.empty()) throw is_withdrawn(coupon.record);
    if (open.empty() && coupon.exams.empty())
        throw refused("coupon " + mark + " has no exam yet")
            .mend(exam_to_make(mark, method.value_or(Exam::VT)));
    if (open.empty()) {
        std::vector<const ExamRecord *> all;
        for (const auto &exam : coupon.exams)
            if (exam.finished && !by_another(&exam)) all.push_back(&exam);
        const std::string of = method ? " by " + std::string(name_of(*method)) : "";
        if (all.empty())
            throw refused("coupon " + mark + " has no exam" + of).mend(exam_to_make(mark, *method));
        // Which of them is meant only a person can say, so each is offered.
        Refusal none = refused("coupon " + mark + " has no open exam" + of + "; finished " +
                               (all.size() == 1 ? "is " : "are ") + named(all) +
                               (all.size() == 1 ? "" : "; open the one that is meant"));
        for (const auto *exam : all) none.mend({"reopen", {mark, std::to_string(exam->number)}, {"why"}});
        throw Refusal(std::move(none));
    }
    if (open.size() > 1) {
        Refusal which = refused("which exam? coupon " + mark + " has open: " + named(open)).at("exam");
        for (const auto *exam : open) which.mend({"finish", {mark, std::to_string(exam->number)}, {"found"}});
        throw Refusal(std::move(which));
    }
    return *open.front();
}

void replace_exam(Writing &writing, const std::string &coupon, const ExamRecord &exam,
                  const std::string &why) {
    check_may_judge(writing, writing.coupon(coupon), exam);
    Entry e = codec::entry_of(coupon, exam);
    e.supersedes = writing.coupon(coupon).exam_seq.at(exam.number);
    e.reason = needed_reason(why);
    writing.add(std::move(e));
}

void finish(Writing &writing, const std::string &coupon, ExamRecord exam, int found, const std::string &why,
            bool sure, const std::string &said = {}) {
    try {
        check_finish(exam, found, writing.coupon(coupon).finds_of(exam.number));
    } catch (Refusal &e) {
        // The exam is on record, so its examiner is said by an entry in its place.
        if (e.missing())
            e.mend({"exam",
                    {coupon, std::string(name_of(exam.method))},
                    {"replaces", "examiner", "why"},
                    exam.number > 0 ? std::to_string(exam.number) : ""});
        else
            for (auto &one : mends_of_number(writing.coupon(coupon), exam, found)) e.mend(std::move(one));
        throw;
    }
    const CouponRecord &record = writing.coupon(coupon).record;
    check_day(exam, record, writing.outside().today());
    std::vector<Unlikely> against;
    hold_words_against_finds(writing.coupon(coupon), exam, exam.number, found, said, against);
    // Another reason is asked about anew.
    std::erase(exam.sure, why_like_a_find);
    for (auto &id : set_aside_by(against, sure, exam.sure))
        if (!is_meant(exam.sure, id)) exam.sure.push_back(std::move(id));
    exam.finished = ExamFinished{found, writing.outside().today(), writing.stamp().who, said};
    replace_exam(writing, coupon, exam, why);
    keep_what_may_go(writing, coupon);
}

} // namespace

Done<ExamRecord> finish_exam(Writing &writing, const FinishRequest &request) {
    const CouponState &state = writing.coupon(request.coupon);
    const ExamRecord &exam = open_exam(state, request.exam, request.method);
    const int number = exam.number;
    if (!request.found && !request.as_logged)
        throw lacking("found", "how many did exam " + std::to_string(number) + " find? a number, or none");
    const int found = request.found.value_or(state.finds_of(number));
    if (request.some_logged && !request.found && found == 0)
        throw refused("none was logged under exam " + named({&exam}) + " of coupon " + request.coupon +
                      "; log what it found, or if it found none, its number is the word none")
            .mend(log_under(state, exam))
            .mend({"finish", {request.coupon, std::to_string(number)}, {"found"}, "none"});
    check_may_finish(writing, exam, request.why);
    ExamRecord now = exam;
    if (!request.remark.empty()) now.note += (now.note.empty() ? "" : "; ") + request.remark;
    finish(writing, request.coupon, std::move(now), found, finished_reason(found, request.why), request.sure,
           checked_reason(request.why, "reason"));
    Done<ExamRecord> out{writing.coupon(request.coupon).needed_exam(number), {}};
    if (std::string unknown = unknown_finisher(writing.office(), out.value, writing.stamp().who);
        !unknown.empty())
        out.notes.push_back(std::move(unknown));
    return out;
}

namespace {

/// The newest verdict of a program that knew no finishing: what is older was recorded when nobody could
/// finish an exam. 0: the record has none.
std::int64_t last_before_finishing(Writing &writing, const std::vector<std::string> &marks) {
    constexpr int first_to_finish = 3; // engine
    std::int64_t out = 0;
    for (const auto &mark : marks)
        for (const auto &verdict : writing.coupon(mark).verdicts)
            if (verdict.engine < first_to_finish) out = std::max(out, verdict.seq);
    return out;
}

} // namespace

Done<int> finish_all(Writing &writing, const std::string &why) {
    Done<int> out{0, {}};
    const std::string reason = needed_reason(why);
    const auto marks = writing.book().coupons();
    const std::int64_t last_old = last_before_finishing(writing, marks);
    for (const auto &mark : marks) {
        const auto exams = writing.coupon(mark).exams;
        for (const auto &exam : exams) {
            if (exam.finished) continue;
            if (writing.coupon(mark).exam_seq.at(exam.number) > last_old) {
                out.notes.push_back("coupon " + mark + ", exam " + named({&exam}) +
                                    " stays open: nothing shows that it was recorded before exams were "
                                    "finished, so whoever made it says what it found");
                continue;
            }
            try {
                finish(writing, mark, exam, writing.coupon(mark).finds_of(exam.number), reason, false);
                ++out.value;
            } catch (const Refusal &e) {
                if (e.kind() == Refusal::Kind::record) throw;
                out.notes.push_back("coupon " + mark + ", exam " + std::to_string(exam.number) +
                                    " stays open: " + e.what());
            }
        }
    }
    return out;
}

int finished_exam(const CouponState &coupon, Exam method) {
    std::vector<const ExamRecord *> fitting;
    for (const auto &exam : coupon.exams)
        if (exam.finished && exam.method == method) fitting.push_back(&exam);
    if (fitting.size() == 1) return fitting.front()->number;
    throw refused("coupon " + coupon.record.id +
                  (fitting.empty()
                       ? " has no finished " + std::string(name_of(method))
                       : ": which " + std::string(name_of(method)) + "? finished are " + named(fitting)))
        .at("exam");
}

Done<ExamRecord> reopen_exam(Writing &writing, const std::string &coupon, int number,
                             const std::string &why) {
    ExamRecord exam = writing.coupon(coupon).needed_exam(number);
    if (!exam.finished) throw refused("exam " + std::to_string(number) + " is open");
    exam.finished.reset();
    replace_exam(writing, coupon, exam, why);
    return {writing.coupon(coupon).needed_exam(number), {}};
}

void note_contradictions(Writing &writing, const std::string &coupon, int exam,
                         std::vector<std::string> &notes) {
    const CouponState &state = writing.coupon(coupon);
    const ExamRecord &one = state.needed_exam(exam);
    if (one.finished && one.finished->found != state.finds_of(exam))
        notes.push_back("exam " + named({&one}) + " of coupon " + coupon + " was finished with " +
                        std::to_string(one.finished->found) + " found, and " +
                        counted(static_cast<std::size_t>(state.finds_of(exam)), "is", "are") +
                        " on record now: it does not count until it is opened again and finished");
}

} // namespace beadbook
