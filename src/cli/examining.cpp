// Examinations and what they found: exam, log, finish, reopen, correct, withdraw, move.
#include "cli/command.hpp"
#include "cli/prompt.hpp"
#include "measure/text.hpp"
#include "operations/coupons.hpp"
#include "operations/finishing.hpp"
#include "operations/log_sheet.hpp"
#include "operations/logging.hpp"
#include "operations/many.hpp"
#include "operations/marks.hpp"
#include "operations/photos.hpp"
#include "render/json_coupons.hpp"
#include "report/exam_document.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// A number of finds, or "none".
int found_word(const std::string &word) {
    return same_word(word, "none") || word == "0" ? 0 : whole_number(word, "number of finds, nor 'none'");
}

/// Methods by their short names: VT, or VT,MT. Throws UsageError.
std::vector<Exam> method_words(std::string list) {
    std::replace(list.begin(), list.end(), ',', ' ');
    std::vector<Exam> out;
    for (const auto word : words_of(list)) {
        const auto method = exam_named(word);
        if (!method) throw UsageError("'" + shown(word) + "' is no exam; expected " + exam_names_text());
        if (std::find(out.begin(), out.end(), *method) != out.end())
            throw UsageError(shown(word) + " is given twice; a second exam by it is entered by itself");
        out.push_back(*method);
    }
    if (out.empty()) throw UsageError("by which method? expected " + exam_names_text());
    return out;
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
    if (call.has("replaces")) out.replaces = call.number("replaces", "number of an exam");
    out.why = call.text("why");
    out.sure = call.has("sure");
    return out;
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
    const auto methods = method_words(call.at(1));
    if (marks.size() == 1 && methods.size() == 1)
        return call.tell(as<ExamRecorded>(call.write([&](Writing &w) { return record_exam(w, request); }),
                                          request.coupon));
    if (request.replaces > 0) throw UsageError("--replaces is of one exam of one COUPON");
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
    const int exam = call.number("exam", "number of an exam");
    const CouponState coupon = call.office(Ledger::Mode::write).coupon(call.at(0));
    // Lines may name their methods where several exams are open.
    if (exam > 0 || coupon.open_exams().size() <= 1) exam_for(coupon, exam, call.actor());
    if (by_prompt) {
        log_by_prompt(call, call.at(0), exam);
        return ExitCode::done;
    }
    const LogRequest request = log_request(call, exam);
    return call.tell(call.write([&](Writing &w) {
        auto done = log_lines(w, request);
        if (call.has("finish")) done.value.finished = 0;
        for (const int one : call.has("finish") ? done.value.exams() : std::vector<int>{})
            *done.value.finished += finish_exam(w, {request.coupon, one, {}, true}).value.finished->found;
        return done;
    }));
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
        const std::string &exam = call.at(1);
        if (exam_named(exam.substr(0, exam.find_first_of(", "))))
            methods = method_words(exam);
        else
            request.exam = whole_number(exam, "number of an exam");
    }
    if (call.has("found")) request.found = found_word(call.text("found"));
    request.as_logged = request.some_logged = call.has("as-logged");
    if (marks.size() > 1 || methods.size() > 1)
        return call.tell(call.write([&](Writing &w) { return finish_exams(w, marks, request, methods); }));
    if (!methods.empty()) request.method = methods.front();
    return call.tell(
        as<ExamFinishedNow>(call.write([&](Writing &w) { return finish_exam(w, request); }), request.coupon));
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
        return correct_indication(w, call.at(0), number, call.at(2), call.text("why"), call.has("sure"));
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
        whole_number(call.at(2), "number of " + std::string(what == "photo" ? "a " : "an ") + what);
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
    if (call.has("exam")) request.exam = call.number("exam", "number of an exam");
    request.to = call.text("to");
    request.why = call.text("why");
    request.sure = call.has("sure");
    return call.tell(call.write([&](Writing &w) { return move_indication(w, request); }));
}

/// Each by its short name and in words.
std::string methods_text() {
    std::vector<std::string> out;
    for (const auto &method : method_table)
        out.push_back(std::string(method.name) + " " + std::string(method.called));
    return listed(out);
}

} // namespace

std::vector<Command> examining_commands() {
    return {
        enters(
            For::technician, run_exam,
            "exam COUPON|COUPON..COUPON " + joined(exam_names(), "|") + R"(
record an examination: method, date, examiner, conditions
exam T-7 MT --examiner "A. Field" --level II --condition "technique=yoke" --condition "light=1000 lx"
Methods: )" + methods_text() +
                R"(.
An exam is open until it is finished with the number of its finds ('log --finish', 'finish'), or with none
(--found none); an open one fulfils no requirement. One that left something out (--incomplete "...") fulfils
no requirement, but what it found counts. T-1..T-15 is the same exam of fifteen coupons, all or none; VT,MT one by
each method.
Of an examiner who is on record ('person') the level, the certificate and the vision test are taken from there, of
equipment on record its calibration; one who is not entitled is refused without --sure, and then the exam does
not count. --as-before leaves out what is read each time; what the call gives goes before.)",
            {{"date", "DAY", "day of the exam, 2026-11-25 (default today)"},
             {"examiner", "NAME", "who examined"},
             {"level", "I|II|III", "the examiner's level"},
             {"procedure", "TEXT", "examination procedure"},
             {"practice", "NAME", "practice that its conditions are held against: a shipped one or a file"},
             {"ask", "", "ask for the conditions that the practice needs"},
             {"condition", "NAME=VALUE", "a technique condition; may be repeated", 0, true},
             {"equipment", "SERIAL", "equipment that was used; may be repeated", 0, true},
             {"as-before", "",
              "practice, conditions and equipment of the examiner's last exam of the method"},
             {"incomplete", "TEXT", "why it does not count; no: it does"},
             {"note", "TEXT", "anything else"},
             {"found", "none", "finish it at once: it found nothing"},
             {"replaces", "N",
              "correct exam N by this one (with --why); what is not said is taken over from it"},
             why_option(),
             sure_option()}),
        enters(For::technician, run_log, R"(log COUPON [LINE ...]
log indications, one short line each
log T-7 "gas pore 0.045 at 3.2" "undercut l 3/8 d 0.010 at 1-1/2 smooth"
A line: TYPE, then measures and place in any order. Words without quotes are one line.
  pore 0.045 @ 3.2                     size, and where it begins
  slag .25x.05 at 4-1/8                length x width
  undercut l 3/8 d 0.010 at 1-1/2 face smooth
  lack of fusion from 2 to 2.4 # side wall
  ri 1.5 mm at 3:30                    quick name; clock on a girth weld (datum 12:00)
  cra l.2 7:00                         cut short, where only one type begins so; an hour alone is the place
  MT crack 0.2 at 3                    the method, where several exams are open
  #7 crack 0.2 at 3                    as the program prints it: find 7; refused if 7 was used
  VT none                              of a file or standard input: the exam is finished, it found nothing
Keys: l length, w width, d depth, h height, s size, angle, area; at or @, from .. to, mid, across [left];
face, root, smooth, sharp; # remark. 'beadbook criteria types' lists the types and their quick names.
A digit right behind a # is a find's number; a comment has a blank or a letter there. A bare `at 6` round a tube
could be a distance or an hour, and is refused with both readings.
Without lines: a prompt on a terminal, else lines from standard input. One bad line stores nothing. What nobody
would believe at first sight is asked about at the prompt, and else refused without --sure; lines of a file that were
logged already are refused without --again.)",
               {{"exam", "N", "which exam found them (default the open one)"},
                {"file", "FILE", "lines from a file, - for standard input", 'f'},
                {"finish", "", "these are all: finish the exams that they go to"},
                sure_option(),
                {"again", "", "lines of a file that are logged already are meant to come again"}}),
        enters(For::technician, run_sheet, R"(sheet [FILE]
exams and finds of many coupons at once, as they are written down at the bench
sheet monday.txt
  VT MT; by A. Field; level II; light=1000 lx     a head: methods, then who and how
  T-1 VT undercut l 3/8 d 0.010 at 1-1/2           coupon, method, find (see 'log')
  "   MT crack 0.2 at 3                            " is the coupon of the line before
  T-2..T-15 none # all clean                       all methods of the head found none; the remark is their note
  T-9 MT incomplete: the yoke failed               does not count
Of each coupon it must be said what each method of the head found; so all its exams are finished. A later head says
what changes: who (with the level), procedure and day stay; practice, conditions and equipment do not. Keys: by, level, date,
practice (of one method alone: practice VT NAME), procedure, with EQUIPMENT, as before, note, NAME=VALUE. Without FILE it reads standard input. One bad line stores nothing; the first 40 bad ones are
named.)",
               {sure_option(),
                {"again", "", "exams of that coupon, method, day and person on record are other ones"}}),
        enters(For::technician, run_finish, R"(finish [COUPON [EXAM]]
finish an exam: say how many indications it found, or none
finish T-7 --found 3
COUPON may be a series, T-1..T-15, or several with commas. Without EXAM the one that is open; EXAM is its number or
its method, or several methods: VT,MT. Only a finished exam fulfils a requirement. --every-open finishes, as they are
logged, the open exams of a record that a program made which knew no finishing: those from before its last verdict.
What was recorded later stays open, and is named; it needs --why.)",
               {{"found", "N|none", "how many it found"},
                {"as-logged", "", "as many as are on record; if that is none, --found none says so"},
                {"every-open", "", "all open exams from before exams were finished, as they are logged"},
                why_option()}),
        enters(For::technician, run_reopen, R"(reopen COUPON EXAM
open a finished exam again, to log more under it
reopen T-7 2 --why "one more find under the light"
EXAM is its number, or its method where one exam by it is finished.)",
               {why_option()}),
        enters(For::technician, run_correct, R"(correct COUPON NUMBER LINE
correct one indication; the old one is kept
correct T-7 3 "gas pore 0.040 at 3.2" --why "read the scale wrong")",
               {why_option(), sure_option()}),
        enters(For::technician, run_withdraw, R"(withdraw COUPON indication|exam|photo|coupon [NUMBER]
take back an indication, an exam, a photo or the whole coupon; it stays in the history
withdraw T-7 indication 3 --why "false indication, gone after cleaning"
A withdrawn coupon is judged no more, qualifies nobody, and puts in doubt what rests on it; 'restore' brings
it back.)",
               {why_option()}),
        enters(For::technician, run_move, R"(move COUPON NUMBER
file an indication under another exam, or another coupon
move T-7 3 --exam 2 --why "found with MT"
It keeps its number on the same coupon, and gets the next one on another. Both exams show it. A finished exam
whose finds change counts no more until it is opened again and finished.)",
               {{"exam", "N", "the exam it belongs to (on another coupon: default the open one)"},
                {"to", "COUPON", "the coupon it belongs to (default the same)"},
                why_option(),
                sure_option()}),
    };
}

} // namespace beadbook
