// Examinations and what they found: exam, log, finish, reopen, correct, withdraw, move.
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "operations/coupons.hpp"
#include "operations/exam_mends.hpp"
#include "operations/finishing.hpp"
#include "operations/log_and_finish.hpp"
#include "operations/log_sheet.hpp"
#include "operations/log_words.hpp"
#include "operations/logging.hpp"
#include "operations/many.hpp"
#include "operations/marks.hpp"
#include "operations/photos.hpp"
#include "prompt/exam_words.hpp"
#include "prompt/prompt.hpp"
#include "render/json_coupons.hpp"
#include "report/exam_document.hpp"
#include "terminal/command_text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Words from one on; those without quotes are one text.
std::string rest_of(const Call &call, std::size_t from) {
    return joined({call.words().begin() + static_cast<std::ptrdiff_t>(from), call.words().end()}, " ");
}

ExamRequest exam_request(const Call &call) {
    ExamRequest out;
    out.coupon = call.at(0);
    if (exam_named(call.at(0)) && !exam_named(call.at(1)))
        throw UsageError("'" + shown(call.at(1)) + "' is no exam; expected " + exam_names_text() +
                         "; the coupon stands before the method: exam " + shown(call.at(1)) + " " +
                         shown(call.at(0)));
    out.method = method_words(call.at(1)).front();
    out.date = call.day("date");
    out.examiner = call.text("examiner");
    out.level = call.text("level");
    out.procedure = call.text("procedure");
    out.note = call.text("note");
    out.incomplete = call.text("incomplete");
    if (call.has("incomplete") && out.incomplete.empty())
        throw UsageError("--incomplete wants the reason why it does not count");
    out.conditions = call.all("condition");
    out.practice = call.text("practice");
    out.equipment = call.all("equipment");
    out.as_before = call.has("as-before");
    if (call.has("found")) out.found = found_word(call.text("found"));
    if (call.has("replaces")) take_replaced(call.text("replaces"), out);
    out.why = call.text("why");
    out.sure = call.has("sure");
    return out;
}

/// What to type, where an exam that was said to be finished does not count all the same.
ExitCode with_mends(Call &call, const std::string &coupon, const ExamRecord &exam, ExitCode code) {
    if (call.has("dry-run") || !exam.finished) return code;
    const CouponState state = call.office().coupon(coupon);
    const Mends mends = mends_of_exam(call.office(), state, state.needed_exam(exam.number));
    if (!mends.operations.empty())
        call.say({"the " + std::string(name_of(exam.method)) + " of coupon " + coupon +
                  " does not count as it stands; mend it with " +
                  commands_text(mends.operations, ", then ")});
    return code;
}

ExitCode run_exam(Call &call) {
    ExamRequest request = exam_request(call);
    call.office(Ledger::Mode::write);
    if (call.has("ask")) {
        if (request.practice.empty() && !request.as_before)
            throw UsageError("which conditions are asked for hangs on the practice: give --practice");
        request.coupon = marks_in(call.at(0)).front();
        ask_conditions(call, request);
        request.coupon = call.at(0);
    }
    const auto marks = marks_in(request.coupon);
    request.coupon = one_mark(request.coupon);
    const auto methods = method_words(call.at(1));
    if (marks.size() == 1 && methods.size() == 1 && !request.replaces_last) {
        const auto done = call.write([&](Writing &w) { return record_exam(w, request); });
        return with_mends(call, request.coupon, done.value,
                          call.tell(as<ExamRecorded>(done, request.coupon)));
    }
    if (request.replaces > 0) throw UsageError("--replaces N is of one exam; of several say --replaces last");
    return call.tell(call.write([&](Writing &w) { return record_exams(w, marks, request, methods); }));
}

/// The lines of the call, or of a file, or of standard input.
LogRequest log_request(const Call &call, int exam) {
    LogRequest out{call.at(0), exam, "", "line", call.has("sure"), false, call.has("again")};
    // Words without quotes are one line: log T-1 pore 0.04 at 3:00.
    const bool unquoted = std::all_of(call.words().begin() + 1, call.words().end(), [](const auto &word) {
        return word.find_first_of(" \t") == std::string::npos;
    });
    for (std::size_t i = 1; i < call.words().size(); ++i) {
        if (call.at(i).find('\n') != std::string::npos) throw UsageError("a line holds a line break");
        out.text += call.at(i) + (unquoted ? " " : "\n");
    }
    if (call.words().size() > 1) return out;
    out.name = call.text("file", "-");
    out.text = call.input(out.name);
    out.is_file = out.may_finish = true;
    return out;
}

ExitCode run_log(Call &call) {
    if (call.has("file") && call.words().size() > 1) throw UsageError("give lines or --file, not both");
    const bool by_prompt =
        call.words().size() == 1 && !call.has("file") && call.session().in_is_terminal && !call.json();
    if (by_prompt && (call.has("quiet") || call.has("dry-run")))
        throw UsageError(std::string("the prompt shows each line and stores it; leave out --") +
                         (call.has("quiet") ? "quiet" : "dry-run") +
                         ", or give the lines, here or by --file");
    const CouponState coupon = call.office(Ledger::Mode::write).coupon(call.at(0));
    const int exam = call.has("exam") ? exam_word(coupon, call.text("exam")) : 0;
    check_one_to_log(coupon, exam, call.actor(),
                     call.words().size() > 1 ? method_begun(call.at(1)) : std::nullopt);
    if (by_prompt) {
        log_by_prompt(call, call.at(0), exam);
        return ExitCode::done;
    }
    const LogRequest request = log_request(call, exam);
    return call.tell(call.write(
        [&](Writing &w) { return call.has("finish") ? log_and_finish(w, request) : log_lines(w, request); }));
}

ExitCode run_sheet(Call &call) {
    const std::string name = call.words().empty() ? "-" : call.at(0);
    const SheetRequest request{call.input(name), name, call.has("sure"), call.has("again")};
    return call.tell(call.write([&](Writing &w) { return take_sheet(w, request); }));
}

ExitCode run_finish(Call &call) {
    if (call.has("every-open") == !call.words().empty()) throw UsageError("give one COUPON or --every-open");
    if (call.has("every-open"))
        return call.tell(
            as<FinishedAll>(call.write([&](Writing &w) { return finish_all(w, call.text("why")); })));
    FinishRequest request;
    const auto marks = marks_in(call.at(0));
    request.coupon = marks.front();
    std::vector<Exam> methods;
    if (call.words().size() > 1) {
        const std::string exam = rest_of(call, 1);
        if (exam_named(exam.substr(0, exam.find_first_of(", "))))
            methods = method_words(exam);
        else
            request.exam = whole_number(exam, "number of an exam");
    }
    if (call.has("found")) request.found = found_word(call.text("found"));
    request.sure = call.has("sure");
    request.why = call.text("why");
    request.as_logged = request.some_logged = call.has("as-logged");
    if (marks.size() > 1 || methods.size() > 1)
        return call.tell(call.write([&](Writing &w) { return finish_exams(w, marks, request, methods); }));
    if (!methods.empty()) request.method = methods.front();
    const auto done = call.write([&](Writing &w) { return finish_exam(w, request); });
    return with_mends(call, request.coupon, done.value, call.tell(as<ExamFinishedNow>(done, request.coupon)));
}

ExitCode run_reopen(Call &call) {
    const auto method = exam_named(call.at(1));
    const int number = method ? 0 : whole_number(call.at(1), "number of an exam");
    return call.tell(as<ExamReopened>(call.write([&](Writing &w) {
        const int exam = method ? finished_exam(w.coupon(call.at(0)), *method) : number;
        return reopen_exam(w, call.at(0), exam, call.text("why"));
    }),
                                      call.at(0)));
}

ExitCode run_correct(Call &call) {
    const int number = whole_number(call.at(1), "number of an indication");
    const auto done = call.write([&](Writing &w) {
        return correct_indication(w, call.at(0), number, rest_of(call, 2), call.text("why"),
                                  call.has("sure"));
    });
    return call.tell(Corrected{done.value.indications.front()}, done.notes);
}

ExitCode run_withdraw(Call &call) {
    const std::string &coupon = call.at(0), &what = call.at(1), why = call.text("why");
    if (what != "indication" && what != "exam" && what != "photo" && what != "coupon")
        throw UsageError(
            "'" + shown(what) + "' cannot be withdrawn; expected indication, exam, photo or coupon" +
            (what.find_first_not_of("0123456789") == std::string::npos
                 ? "; a find by its number: 'withdraw " + shown(coupon) + " indication " + what + "'"
                 : ""));
    if ((what == "coupon") == (call.words().size() > 2))
        throw UsageError(what == "coupon" ? "a whole coupon takes no number"
                                          : "which " + what + "? give its number");
    if (what == "coupon")
        return call.tell(
            as<CouponWithdrawn>(call.write([&](Writing &w) { return withdraw_coupon(w, coupon, why); })));
    const int number =
        what == "exam"
            ? exam_word(call.office(Ledger::Mode::write).coupon(coupon), call.at(2))
            : whole_number(call.at(2), "number of " + std::string(what == "photo" ? "a " : "an ") + what);
    const auto done = call.write([&](Writing &w) {
        if (what == "indication") return withdraw_indication(w, coupon, number, why);
        if (what == "photo") return withdraw_photo(w, coupon, number, why);
        withdraw_exam(w, coupon, number, why);
        return Done<int>{number, {}};
    });
    return call.tell(Withdrawn{what, number}, done.notes);
}

ExitCode run_move(Call &call) {
    MoveRequest request;
    request.coupon = call.at(0);
    request.number = whole_number(call.at(1), "number of an indication");
    request.to = call.text("to");
    if (call.has("exam"))
        request.exam = exam_word(
            call.office(Ledger::Mode::write).coupon(request.to.empty() ? request.coupon : request.to),
            call.text("exam"));
    request.why = call.text("why");
    request.sure = call.has("sure");
    return call.tell(call.write([&](Writing &w) { return move_indication(w, request); }));
}

} // namespace

Deeds examining_deeds() {
    return {{"exam", run_exam},         {"log", run_log},       {"sheet", run_sheet},
            {"finish", run_finish},     {"reopen", run_reopen}, {"correct", run_correct},
            {"withdraw", run_withdraw}, {"move", run_move}};
}

} // namespace beadbook
