// Examinations and what they found: exam, log, correct, withdraw.
#include "cli/command.hpp"
#include "cli/prompt.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "measure/text.hpp"
#include "operations/coupons.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"
#include "render/json_coupons.hpp"
#include "report/exam_document.hpp"

namespace beadbook {
namespace {

/// A number of finds, or "none".
int found_word(const std::string &word) {
    return word == "none" || word == "0" ? 0 : whole_number(word, "number of finds, nor 'none'");
}

ExamRequest exam_request(const Args &args) {
    ExamRequest out;
    out.coupon = args.at(0);
    out.method = method_word(args.at(1));
    out.date = day_given(args, "date");
    out.examiner = args.text("examiner");
    out.level = args.text("level");
    out.procedure = args.text("procedure");
    out.note = args.text("note");
    out.incomplete = args.text("incomplete");
    out.conditions = args.all("condition");
    out.practice = args.text("practice");
    if (args.has("found")) out.found = found_word(args.text("found"));
    if (args.has("replaces")) out.replaces = whole_number(args.text("replaces"), "exam");
    out.why = args.text("why");
    out.sure = args.flag("sure");
    return out;
}

ExitCode run_exam(const Args &args, Session &session) {
    Shop shop(args, session);
    ExamRequest request = exam_request(args);
    shop.office(Ledger::Mode::write);
    if (args.flag("ask")) {
        if (request.practice.empty())
            throw UsageError("which conditions are asked for hangs on the practice: give --practice");
        // Questions stay out of the JSON.
        ask_conditions(shop, request, session.in, args.flag("json") ? session.err : session.out);
    }
    const auto done = shop.write([&](Writing &w) { return record_exam(w, request); });
    tell(args, session, ExamRecorded{request.coupon, done.value}, done.notes);
    return ExitCode::done;
}

/// The lines of the call, or of a file, or of standard input.
LogRequest log_request(const Args &args, Session &session, int exam) {
    LogRequest out{args.at(0), exam, "", "line", args.flag("sure"), false, args.flag("again")};
    for (std::size_t i = 1; i < args.positional().size(); ++i) {
        if (args.at(i).find('\n') != std::string::npos) throw UsageError("a line holds a line break");
        out.text += args.at(i) + "\n";
    }
    if (args.positional().size() > 1) return out;
    out.name = args.text("file", "-");
    out.text = read_input(out.name, session);
    out.is_file = true;
    return out;
}

ExitCode run_log(const Args &args, Session &session) {
    if (args.has("file") && args.positional().size() > 1) throw UsageError("give lines or --file, not both");
    Shop shop(args, session);
    const int exam = args.has("exam") ? whole_number(args.text("exam"), "exam") : 0;
    Office &office = shop.office(Ledger::Mode::write);
    const CouponState coupon = office.coupon(args.at(0));
    // Lines may name their methods where several exams are open.
    if (exam > 0 || coupon.open_exams().size() <= 1) exam_for(coupon, exam, shop.actor());
    if (args.positional().size() == 1 && !args.has("file") && session.in_is_terminal && !args.flag("json")) {
        log_by_prompt(shop, args.at(0), exam, session);
        return ExitCode::done;
    }
    const LogRequest request = log_request(args, session, exam);
    tell(args, session, shop.write([&](Writing &w) {
        auto done = log_lines(w, request);
        if (args.flag("finish")) done.value.finished = 0;
        for (const int one : args.flag("finish") ? done.value.exams() : std::vector<int>{})
            *done.value.finished += finish_exam(w, {request.coupon, one, {}, true}).value.finished->found;
        return done;
    }));
    return ExitCode::done;
}

ExitCode run_finish(const Args &args, Session &session) {
    if (args.flag("every-open") == !args.positional().empty())
        throw UsageError("give one COUPON or --every-open");
    Shop shop(args, session);
    if (args.flag("every-open")) {
        const auto done = shop.write([&](Writing &w) { return finish_all(w, args.text("why")); });
        tell(args, session, FinishedAll{done.value}, done.notes);
        return ExitCode::done;
    }
    FinishRequest request;
    request.coupon = args.at(0);
    if (args.positional().size() > 1) request.exam = whole_number(args.at(1), "exam");
    if (args.has("found")) request.found = found_word(args.text("found"));
    request.as_logged = args.flag("as-logged");
    const auto done = shop.write([&](Writing &w) { return finish_exam(w, request); });
    tell(args, session, ExamFinishedNow{request.coupon, done.value}, done.notes);
    return ExitCode::done;
}

ExitCode run_reopen(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "exam");
    Shop shop(args, session);
    const auto done =
        shop.write([&](Writing &w) { return reopen_exam(w, args.at(0), number, args.text("why")); });
    tell(args, session, ExamReopened{args.at(0), done.value}, done.notes);
    return ExitCode::done;
}

ExitCode run_correct(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "indication");
    Shop shop(args, session);
    const auto done = shop.write([&](Writing &w) {
        return correct_indication(w, args.at(0), number, args.at(2), args.text("why"), args.flag("sure"));
    });
    tell(args, session, Corrected{number}, done.notes);
    return ExitCode::done;
}

ExitCode run_withdraw(const Args &args, Session &session) {
    const std::string &what = args.at(1);
    if (what != "indication" && what != "exam" && what != "coupon")
        throw UsageError("'" + shown(what) + "' cannot be withdrawn; expected indication, exam or coupon");
    const bool whole = what == "coupon";
    if (whole == (args.positional().size() > 2))
        throw UsageError(whole ? "a whole coupon takes no number" : "which " + what + "? give its number");
    if (whole) {
        Shop shop(args, session);
        const auto done =
            shop.write([&](Writing &w) { return withdraw_coupon(w, args.at(0), args.text("why")); });
        tell(args, session, CouponWithdrawn{done.value}, done.notes);
        return ExitCode::done;
    }
    const int number = whole_number(args.at(2), what);
    Shop shop(args, session);
    tell(args, session, shop.write([&](Writing &w) {
        if (what == "exam")
            withdraw_exam(w, args.at(0), number, args.text("why"));
        else
            withdraw_indication(w, args.at(0), number, args.text("why"));
        return Withdrawn{what, number};
    }));
    return ExitCode::done;
}

ExitCode run_move(const Args &args, Session &session) {
    MoveRequest request;
    request.coupon = args.at(0);
    request.number = whole_number(args.at(1), "indication");
    if (args.has("exam")) request.exam = whole_number(args.text("exam"), "exam");
    request.to = args.text("to");
    request.why = args.text("why");
    request.sure = args.flag("sure");
    Shop shop(args, session);
    tell(args, session, shop.write([&](Writing &w) { return move_indication(w, request); }));
    return ExitCode::done;
}

} // namespace

namespace {

/// With bars between, as a word of the call.
std::string alternatives(const std::vector<std::string> &words) {
    std::string out;
    for (const auto &word : words) out += (out.empty() ? "" : "|") + word;
    return out;
}

/// Each by its short name and in words.
std::string methods_text() {
    std::vector<std::string> out;
    for (const auto &method : method_table)
        out.push_back(std::string(method.name) + " " + std::string(method.called));
    return listed(out);
}

} // namespace

Command exam_command() {
    return {"exam",
            "COUPON " + alternatives(exam_names()),
            "record an examination: method, date, examiner, conditions",
            "Methods: " + methods_text() +
                ".\n"
                "An exam is open until it is finished with the number of its finds ('log --finish', "
                "'finish'), or "
                "with none\n(--found none); an open one fulfils no requirement. One that left something out "
                "(--incomplete \"...\") fulfils no requirement, but what it "
                "found counts.",
            "beadbook exam T-7 MT --examiner \"A. Field\" --level II --condition \"technique=yoke\" "
            "--condition \"light=1000 lx\"",
            2,
            2,
            options(Option{"date", "DAY", "day of the exam, 2026-11-25 (default today)"},
                    Option{"examiner", "NAME", "who examined"},
                    Option{"level", "I|II|III", "the examiner's level"},
                    Option{"procedure", "TEXT", "examination procedure"},
                    Option{"practice", "NAME",
                           "practice that its conditions are held against: a shipped one or a file"},
                    Option{"ask", "", "ask for the conditions that the practice needs"},
                    Option{"condition", "NAME=VALUE", "a technique condition; may be repeated", 0, true},
                    Option{"incomplete", "TEXT", "why it does not count"},
                    Option{"note", "TEXT", "anything else"},
                    Option{"found", "none", "finish it at once: it found nothing"},
                    Option{"replaces", "N", "correct exam N by this one (with --why)"}, why_option(),
                    sure_option(), by_option(), json_option()),
            run_exam};
}

Command log_command() {
    return {
        "log",
        "COUPON [LINE ...]",
        "log indications, one short line each",
        "A line: TYPE, then measures and place in any order.\n"
        "  pore 0.045 @ 3.2                     size, and where it begins\n"
        "  slag .25x.05 at 4-1/8                length x width\n"
        "  undercut l 3/8 d 0.010 at 1-1/2 face smooth\n"
        "  lack of fusion from 2 to 2.4 # side wall\n"
        "  ri 1.5 mm at 3:30                    quick name; clock on a girth weld (datum 12:00)\n"
        "  MT crack 0.2 at 3                    the method, where several exams are open\n"
        "  #7 crack 0.2 at 3                    as the program prints it: find 7; refused if 7 was used\n"
        "Keys: l length, w width, d depth, h height, s size, angle, area; at or @, from .. to, mid, across "
        "[left];\n"
        "face, root, smooth, sharp; # remark. 'beadbook criteria types' lists the types and their quick "
        "names.\n"
        "A digit right behind a # is a find's number; a comment has a blank or a letter there. A bare `at 6` "
        "round "
        "a tube could\nbe a distance or an hour, and is refused with both readings.\n"
        "Without lines: a prompt on a terminal, else lines from standard input. One bad line stores nothing. "
        "What "
        "nobody\nwould believe at first sight is asked about at the prompt, and else refused without --sure; "
        "lines "
        "of a file that were\nlogged already are refused without --again.",
        "beadbook log T-7 \"gas pore 0.045 at 3.2\" \"undercut l 3/8 d 0.010 at 1-1/2 smooth\"",
        1,
        1000,
        options(Option{"exam", "N", "which exam found them (default the open one)"},
                Option{"file", "FILE", "lines from a file, - for standard input", 'f'},
                Option{"finish", "", "these are all: finish the exams that they go to"}, sure_option(),
                Option{"again", "", "lines of a file that are logged already are meant to come again"},
                by_option(), json_option()),
        run_log};
}

Command finish_command() {
    return {"finish",
            "[COUPON [EXAM]]",
            "finish an exam: say how many indications it found, or none",
            "Without EXAM the one that is open. Only a finished exam fulfils a requirement. --every-open "
            "finishes "
            "all open\nexams of the record as they are logged, for records that were made before exams were "
            "finished; it needs --why.",
            "beadbook finish T-7 --found 3",
            0,
            2,
            options(Option{"found", "N|none", "how many it found"},
                    Option{"as-logged", "", "as many as are on record"},
                    Option{"every-open", "", "all open exams of the record, as they are logged"},
                    why_option(), by_option(), json_option()),
            run_finish};
}

Command reopen_command() {
    return {"reopen",
            "COUPON EXAM",
            "open a finished exam again, to log more under it",
            "",
            "beadbook reopen T-7 2 --why \"one more find under the light\"",
            2,
            2,
            options(why_option(), by_option(), json_option()),
            run_reopen};
}

Command correct_command() {
    return {"correct",
            "COUPON NUMBER LINE",
            "correct one indication; the old one is kept",
            "",
            "beadbook correct T-7 3 \"gas pore 0.040 at 3.2\" --why \"read the scale wrong\"",
            3,
            3,
            options(why_option(), sure_option(), by_option(), json_option()),
            run_correct};
}

Command withdraw_command() {
    return {"withdraw",
            "COUPON indication|exam|coupon [NUMBER]",
            "take back an indication, an exam or the whole coupon; it stays in the history",
            "A withdrawn coupon is judged no more, qualifies nobody, and puts in doubt what rests on it; "
            "'restore' "
            "brings it back.",
            "beadbook withdraw T-7 indication 3 --why \"false indication, gone after cleaning\"",
            2,
            3,
            options(why_option(), by_option(), json_option()),
            run_withdraw};
}

Command move_command() {
    return {"move",
            "COUPON NUMBER",
            "file an indication under another exam, or another coupon",
            "It keeps its number on the same coupon, and gets the next one on another. Both exams show it. A "
            "finished "
            "exam whose\nfinds change counts no more until it is opened again and finished.",
            "beadbook move T-7 3 --exam 2 --why \"found with MT\"",
            2,
            2,
            options(Option{"exam", "N", "the exam it belongs to (on another coupon: default the open one)"},
                    Option{"to", "COUPON", "the coupon it belongs to (default the same)"}, why_option(),
                    sure_option(), by_option(), json_option()),
            run_move};
}

} // namespace beadbook
