#include "cli/shared.hpp"

#include "measure/text.hpp"

namespace po = boost::program_options;

namespace beadbook {
namespace {

ExitCode run(const Args &args, Session &session) {
    const auto method = exam_named(args.at(1));
    if (!method) throw UsageError("'" + shown(args.at(1)) + "' is no exam; expected VT, MT, PT or RT");
    ExamRecord exam;
    exam.method = *method;
    exam.date = print(day_of(args, session, "date"));
    exam.examiner = checked_text(args.text("examiner"), "examiner");
    exam.level = checked_text(args.text("level"), "level");
    exam.procedure = checked_text(args.text("procedure"), "procedure");
    exam.note = checked_text(args.text("note"), "note");
    exam.incomplete = checked_text(args.text("incomplete"), "incomplete");
    for (const auto &condition : args.all("condition")) add_condition(exam, condition);
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        if (args.has("replaces")) {
            exam.number = whole_number(args.text("replaces"), "exam");
            book.correct_exam(args.at(0), exam, stamp_of(args, session), args.text("why"));
        } else {
            exam.number = book.add_exam(args.at(0), exam, stamp_of(args, session));
        }
    });
    session.out << "exam " << exam.number << " (" << name_of(exam.method) << ") of coupon " << args.at(0)
                << " recorded; next: beadbook log " << args.at(0)
                << " \"gas pore 0.04 at 2.1\", or nothing if it found nothing\n";
    return ExitCode::done;
}

} // namespace

Command exam_command() {
    return {"exam",
            "COUPON VT|MT|PT|RT",
            "record an examination: method, date, examiner, conditions",
            "An exam that left something out (--incomplete \"...\") fulfils no requirement, but what it "
            "found counts.",
            "beadbook exam T-7 MT --examiner \"A. Field\" --level II --condition \"technique=yoke, AC\" "
            "--condition \"light=1000 lx\"",
            2,
            2,
            [](po::options_description &o) {
                o.add_options()("date", po::value<std::string>()->value_name("DAY"),
                                "day of the exam, 2026-11-25 (default today)")(
                    "examiner", po::value<std::string>()->value_name("NAME"), "who examined")(
                    "level", po::value<std::string>()->value_name("I|II|III"), "the examiner's level")(
                    "procedure", po::value<std::string>()->value_name("TEXT"), "examination procedure")(
                    "condition", po::value<std::vector<std::string>>()->value_name("NAME=VALUE"),
                    "a technique condition; may be repeated")(
                    "incomplete", po::value<std::string>()->value_name("TEXT"), "why it does not count")(
                    "note", po::value<std::string>()->value_name("TEXT"),
                    "anything else")("replaces", po::value<std::string>()->value_name("N"),
                                     "correct exam N by this one (with --why)");
                add_why(o);
                add_by(o);
            },
            run};
}

} // namespace beadbook
