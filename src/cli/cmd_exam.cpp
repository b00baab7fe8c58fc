#include "cli/shared.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <set>

namespace po = boost::program_options;

namespace beadbook {
namespace {

/// Asks for each condition that the practice wants and that was not given; an empty answer leaves it out, a
/// wrong one is asked again.
void ask_conditions(ExamRecord &exam, const Practice &practice, const Coupon &facts, Session &session) {
    session.out << "conditions by " << practice.title << "; Enter leaves one out\n";
    std::set<std::string> skipped;
    for (;;) {
        const auto wanted = conditions_wanted(practice, exam.conditions_told(), parse_day(exam.date), facts);
        const auto next = std::find_if(wanted.begin(), wanted.end(),
                                       [&](const auto &name) { return !skipped.contains(name); });
        if (next == wanted.end()) return;
        const ConditionInfo &info = *condition_info(*next);
        session.out << info.name << " (" << info.help
                    << (info.words.empty() ? "" : ": " + listed(info.words, "or")) << "): " << std::flush;
        std::string answer;
        if (!std::getline(session.in, answer)) return;
        if (trimmed(answer).empty()) {
            skipped.insert(info.name);
            continue;
        }
        try {
            add_condition(exam, info.name + "=" + answer);
        } catch (const DataError &e) {
            session.out << "  " << e.what() << "\n";
        }
    }
}

void note_unknown_conditions(const ExamRecord &exam, Session &session) {
    std::vector<std::string> names;
    for (const auto &c : condition_infos()) names.push_back(c.name);
    for (const auto &[name, value] : exam.conditions)
        if (const std::string near = nearest_word(name, names); !condition_info(name) && !near.empty())
            session.err << "beadbook: note: condition '" << shown(name)
                        << "' is kept as a name of your own; did you mean '" << near << "'?\n";
}

/// "VT|MT".
std::string alternatives(const std::vector<std::string> &words) {
    std::string out;
    for (const auto &word : words) out += (out.empty() ? "" : "|") + word;
    return out;
}

/// "VT visual, MT magnetic particle".
std::string methods_text() {
    std::vector<std::string> out;
    for (const auto &method : method_table)
        out.push_back(std::string(method.name) + " " + std::string(method.called));
    return listed(out);
}

ExitCode run(const Args &args, Session &session) {
    const auto method = exam_named(args.at(1));
    if (!method) throw UsageError("'" + shown(args.at(1)) + "' is no exam; expected " + exam_names_text());
    ExamRecord exam;
    exam.method = *method;
    exam.date = print(day_of(args, session, "date"));
    exam.examiner = checked_text(args.text("examiner"), "examiner");
    exam.level = checked_text(args.text("level"), "level");
    exam.procedure = checked_text(args.text("procedure"), "procedure");
    exam.note = checked_text(args.text("note"), "note");
    exam.incomplete = checked_text(args.text("incomplete"), "incomplete");
    for (const auto &condition : args.all("condition")) add_condition(exam, condition);
    note_unknown_conditions(exam, session);
    Book book = open_book(args, session, Ledger::Mode::write);
    std::shared_ptr<const Practice> practice;
    if (args.has("practice")) {
        practice = open_practice(args.text("practice"));
        if (practice->method != exam.method)
            throw DataError("practice " + practice->name + " is for " +
                            std::string(name_of(practice->method)) + ", not for " +
                            std::string(name_of(exam.method)));
        exam.practice = practice->name;
        exam.practice_hash = practice->hash;
        if (args.flag("ask"))
            ask_conditions(exam, *practice, book.coupon(args.at(0)).record.facts(), session);
    } else if (args.flag("ask")) {
        throw UsageError("which conditions are asked for hangs on the practice: give --practice");
    }
    book.ledger().transact([&] {
        if (practice) book.ledger().keep_criteria(practice->hash, practice->name, practice->text);
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
    const CouponState now = book.coupon(args.at(0));
    if (const auto &why = now.exam(exam.number)->invalid; !why.empty()) session.out << "  " << why << "\n";
    return ExitCode::done;
}

} // namespace

Command exam_command() {
    return {
        "exam",
        "COUPON " + alternatives(exam_names()),
        "record an examination: method, date, examiner, conditions",
        "Methods: " + methods_text() +
            ".\nAn exam that left something out (--incomplete \"...\") fulfils no requirement, but what it "
            "found counts.",
        "beadbook exam T-7 MT --examiner \"A. Field\" --level II --condition \"technique=yoke\" "
        "--condition \"light=1000 lx\"",
        2,
        2,
        [](po::options_description &o) {
            o.add_options()("date", po::value<std::string>()->value_name("DAY"),
                            "day of the exam, 2026-11-25 (default today)")(
                "examiner", po::value<std::string>()->value_name("NAME"), "who examined")(
                "level", po::value<std::string>()->value_name("I|II|III"), "the examiner's level")(
                "procedure", po::value<std::string>()->value_name("TEXT"), "examination procedure")(
                "practice", po::value<std::string>()->value_name("NAME"),
                "practice that its conditions are held against: a shipped one or a file")(
                "ask", po::bool_switch(), "ask for the conditions that the practice needs")(
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
