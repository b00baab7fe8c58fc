// Verdicts: judge, why, grade.
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "operations/grading_many.hpp"
#include "operations/marks.hpp"
#include "operations/streaming.hpp"
#include "render/json_judging.hpp"
#include "render/json_list.hpp"
#include "report/coupon_document.hpp"
#include "terminal/page.hpp"
#include "terminal/selection_options.hpp"

namespace beadbook {
namespace {

JudgeRequest judge_request(const Call &call) { return {call.text("criteria"), call.text("class")}; }

ExitCode judge_one(Call &call) {
    const std::string mark = one_mark(call.at(0));
    const JudgeRequest request = judge_request(call);
    const auto done = call.has("no-record")
                          ? judge_without_keeping(call.office(), mark, request)
                          : call.write([&](Writing &w) { return judge_and_keep(w, mark, request); });
    if (call.has("proof"))
        call.tell(InFull<Judged>{done.value}, done.notes);
    else
        call.tell(done);
    return code_of(done.value.outcome());
}

/// Prints each as it comes; the worst verdict is the exit code's.
class AllJudged {
public:
    explicit AllJudged(Call &call) : json_(call.json()), session_(call.session()) {}

    void take(const JudgedOrNot &one) {
        worst_ = std::max(worst_, one.judged ? one.judged->outcome() : Verdict::cannot_say);
        session_.out << (json_ ? list_(json_text(one)) : text(document_of(one), session_.paint()));
        any_ = true;
    }
    bool any() const { return any_; }
    ExitCode finish(bool of_all) {
        if (json_)
            session_.out << list_.end();
        else
            session_.out << (any_ ? "\n" : text(nothing_found(of_all), session_.paint())) << caution;
        // Of no coupon nothing is proved.
        return any_ ? code_of(worst_) : ExitCode::cannot_say;
    }

private:
    bool json_;
    Session &session_;
    JsonListInParts list_;
    bool any_ = false;
    Verdict worst_ = Verdict::accept;
};

/// What its options ask for with --all, else the marks that its first word means, where these are several.
Selection selection_or_marks(Call &call) {
    if (call.has("all")) return selection_of(call);
    check_no_selection(call);
    Selection out;
    if (auto marks = marks_in(call.at(0)); marks.size() > 1) out.marks = std::move(marks);
    return out;
}

ExitCode judge_every(Call &call, const Selection &of) {
    AllJudged all(call);
    const auto take = [&](const JudgedOrNot &one) { all.take(one); };
    const auto store = [&](const auto &some) {
        call.write([&](Writing &w) {
            some(w);
            return 0;
        });
    };
    if (call.has("no-record"))
        judge_all(call.office(), judge_request(call), take, of);
    else
        judge_and_keep_all(call.office(Ledger::Mode::write), judge_request(call), take, of, store);
    if (const auto unknown = notes_on_empty(call, of, !all.any()); !unknown.empty())
        throw refused("nothing was judged: " + joined(unknown, "; "));
    return all.finish(of.all());
}

/// One answer a line, in the order of the lines; a bad one stops none after it.
ExitCode judge_stream(Call &call) {
    if (call.has("all") || call.has("proof") || !call.words().empty())
        throw UsageError("--stream takes its coupons from standard input, one a line, and no other words");
    check_no_selection(call);
    const PrivateFolder folder("judging a stream");
    Book nothing(folder.file("book.db"), Ledger::Mode::create);
    Office office(nothing, call.catalogue());
    Stream stream(office, {judge_request(call), call.has("sure"), call.has("open-files")});
    std::optional<Verdict> worst; // nothing: there was none to judge
    bool bad = false;
    std::string line;
    for (std::size_t number = 1; std::getline(call.session().in, line); ++number) {
        if (trimmed(line).empty()) continue;
        const Streamed one = stream.judge(line);
        bad = bad || !one.fault.empty();
        worst = std::max(worst.value_or(Verdict::accept),
                         one.coupon.judged ? one.coupon.judged->outcome() : Verdict::cannot_say);
        call.session().out << json_line(number, one);
    }
    return bad ? ExitCode::bad_data : code_of(worst.value_or(Verdict::cannot_say));
}

ExitCode run_judge(Call &call) {
    if (call.has("stream")) return judge_stream(call);
    if (call.has("all") == !call.words().empty()) throw UsageError("give one COUPON, several, or --all");
    const Selection of = selection_or_marks(call);
    if (call.has("proof") && (call.has("all") || !of.marks.empty()))
        throw UsageError("--proof is of one COUPON, not of several");
    if (call.has("all") || !of.marks.empty()) return judge_every(call, of);
    return judge_one(call);
}

ExitCode run_why(Call &call) {
    const Explained explained = explain(call.office(), one_mark(call.at(0)), judge_request(call));
    if (wants_page(call))
        tell_page(call,
                  call.has("proof") ? document_of(InFull<Explained>{explained}) : document_of(explained),
                  {explained.judged.set});
    else if (call.has("proof"))
        call.tell(InFull<Explained>{explained});
    else
        call.tell(explained);
    return code_of(explained.judged.outcome());
}

ExitCode run_grade(Call &call) {
    const std::string &decision = call.words().back();
    if (call.words().size() == 2 && (call.at(0) == "passed" || call.at(0) == "failed"))
        throw UsageError("the coupon stands before its grade: grade " + shown(decision) + " " + call.at(0));
    if (decision != "passed" && decision != "failed")
        throw UsageError("'" + shown(decision) + "' is no grade; expected passed or failed");
    if (call.has("all") == (call.words().size() > 1)) throw UsageError("give one COUPON, several, or --all");
    const Selection of = selection_or_marks(call);
    if (call.has("all") || !of.marks.empty()) {
        const GradeManyRequest request{decision == "passed", call.text("remark"), judge_request(call), of};
        auto done = call.write([&](Writing &w) { return grade_many(w, request); });
        for (auto &note : notes_on_empty(call, of, done.value.graded.empty()))
            done.notes.push_back(std::move(note));
        return call.tell(done);
    }
    const GradeRequest request{call.at(0), decision == "passed", call.text("remark"), judge_request(call)};
    return call.tell(call.write([&](Writing &w) { return grade_coupon(w, request); }));
}

} // namespace

Deeds judging_deeds() { return {{"judge", run_judge}, {"why", run_why}, {"grade", run_grade}}; }

} // namespace beadbook
