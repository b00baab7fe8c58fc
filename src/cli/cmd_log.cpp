#include "cli/log_batch.hpp"
#include "cli/shared.hpp"

#include "measure/text.hpp"
#include "technique/plausible.hpp"

namespace beadbook {
namespace {

int exam_of(const Args &args, const CouponState &coupon) {
    if (coupon.exams.empty())
        throw DataError("coupon " + coupon.record.id + " has no exam yet; record one: beadbook exam " +
                        coupon.record.id + " VT");
    if (!args.has("exam")) return coupon.exams.back().number;
    const int number = whole_number(args.text("exam"), "exam");
    if (!coupon.exam(number))
        throw DataError("coupon " + coupon.record.id + " has no exam " + std::to_string(number));
    return number;
}

ExitCode run_log(const Args &args, Session &session) {
    const std::string &id = args.at(0);
    if (args.has("file") && args.positional().size() > 1) throw UsageError("give lines or --file, not both");
    Book book = open_book(args, session, Ledger::Mode::write);
    const CouponState coupon = book.coupon(id);
    const int exam = exam_of(args, coupon);
    const bool lines_given = args.positional().size() > 1 || args.has("file");
    if (!lines_given && session.in_is_terminal) {
        log_by_prompt(book, id, exam, coupon.record.get("criteria"), stamp_of(args, session), session);
        return ExitCode::done;
    }
    std::string text, name = "line";
    if (args.positional().size() > 1) {
        for (std::size_t i = 1; i < args.positional().size(); ++i) {
            if (args.at(i).find('\n') != std::string::npos) throw UsageError("a line holds a line break");
            text += args.at(i) + "\n";
        }
    } else {
        name = args.text("file", "-");
        text = read_input(name, session);
    }
    std::vector<int> numbers;
    std::vector<IndicationRecord> indications;
    book.ledger().transact([&] {
        // Read again inside the transaction: the weld may have been corrected meanwhile.
        const CouponState now = book.coupon(id);
        indications = parse_log(text, name, now.record.facts().line, now.record.unit());
        if (indications.empty()) throw DataError("there is no line to log");
        numbers = book.add_indications(id, exam, indications, stamp_of(args, session));
    });
    const Vocabulary &vocabulary = Vocabulary::shipped();
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        session.out << "#" << numbers[i] << " " << print_log_line(indications[i]) << "\n";
        const std::string doubt = implausible(vocabulary, indications[i].type, coupon.record.get("process"));
        if (!doubt.empty()) session.err << "beadbook: note: #" << numbers[i] << ": " << doubt << "\n";
    }
    session.out << numbers.size() << (numbers.size() == 1 ? " indication" : " indications")
                << " logged under exam " << exam << "; next: beadbook judge " << id << "\n";
    return ExitCode::done;
}

ExitCode run_correct(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "indication");
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        const CouponState coupon = book.coupon(args.at(0));
        auto parsed = parse_log(args.at(2), "line", coupon.record.facts().line, coupon.record.unit());
        if (parsed.size() != 1) throw DataError("a correction is exactly one line");
        parsed.front().number = number;
        book.correct_indication(args.at(0), parsed.front(), stamp_of(args, session), args.text("why"));
    });
    session.out << "#" << number << " corrected; the old entry is kept\n";
    return ExitCode::done;
}

ExitCode run_withdraw(const Args &args, Session &session) {
    const std::string &what = args.at(1);
    if (what != "indication" && what != "exam")
        throw UsageError("'" + shown(what) + "' cannot be withdrawn; expected indication or exam");
    const int number = whole_number(args.at(2), what);
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        const Stamp stamp = stamp_of(args, session);
        if (what == "exam")
            book.withdraw_exam(args.at(0), number, stamp, args.text("why"));
        else
            book.withdraw_indication(args.at(0), number, stamp, args.text("why"));
    });
    session.out << what << " " << number << " withdrawn; the old entry is kept\n";
    return ExitCode::done;
}

ExitCode run_remark(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] { book.add_remark(args.at(0), args.at(1), stamp_of(args, session)); });
    session.out << "remark kept\n";
    return ExitCode::done;
}

} // namespace

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
        "Keys: l length, w width, d depth, h height, s size, angle, area; at or @, from .. to, mid, across "
        "[left];\n"
        "face, root, smooth, sharp; # remark. 'beadbook criteria types' lists the types and their quick "
        "names.\n"
        "Without lines: a prompt on a terminal, else lines from standard input. One bad line stores nothing.",
        "beadbook log T-7 \"gas pore 0.045 at 3.2\" \"undercut l 3/8 d 0.010 at 1-1/2 smooth\"",
        1,
        1000,
        options(Option{"exam", "N", "which exam found them (default the last)"},
                Option{"file", "FILE", "lines from a file, - for standard input", 'f'}, by_option()),
        run_log};
}

Command correct_command() {
    return {"correct",
            "COUPON NUMBER LINE",
            "correct one indication; the old one is kept",
            "",
            "beadbook correct T-7 3 \"gas pore 0.040 at 3.2\" --why \"read the scale wrong\"",
            3,
            3,
            options(why_option(), by_option()),
            run_correct};
}

Command withdraw_command() {
    return {"withdraw",
            "COUPON indication|exam NUMBER",
            "take back an indication or exam; it stays in the history",
            "",
            "beadbook withdraw T-7 indication 3 --why \"false indication, gone after cleaning\"",
            3,
            3,
            options(why_option(), by_option()),
            run_withdraw};
}

Command remark_command() {
    return {"remark",
            "COUPON TEXT",
            "add a remark to a coupon",
            "",
            "beadbook remark T-7 \"restart at 4 o'clock looks cold\"",
            2,
            2,
            {by_option()},
            run_remark};
}

} // namespace beadbook
