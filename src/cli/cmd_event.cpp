// What happens to a welder after the test: use, training, renewal, extension, revocation, and taking back.
#include "cli/welder_shared.hpp"

#include "measure/text.hpp"
#include "report/range_report.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Day and text of an event, from the options.
WelderEvent event_of(const Args &args, const Session &session, const std::string &kind) {
    WelderEvent out;
    out.kind = kind;
    out.day = day_of(args, session, "date");
    if (out.day > session.today())
        throw DataError("'" + print(out.day) + "' is to come; log it when it has happened");
    return out;
}

std::string needed(const Args &args, const std::string &option, const std::string &what) {
    const std::string text = checked_text(args.text(option), option);
    if (text.empty()) throw UsageError(what + ": --" + option + " \"...\"");
    return text;
}

void warn_if_unknown(const WelderState &welder, const std::string &process, Session &session) {
    std::vector<std::string> held;
    for (const auto &q : welder.qualifications) held.push_back(q.process());
    if (std::find(held.begin(), held.end(), process) == held.end())
        session.err << "beadbook: note: welder " << welder.record.mark << " holds no qualification in "
                    << shown(process) << did_you_mean(process, held) << "\n";
}

ExitCode run_used(const Args &args, Session &session) {
    WelderEvent event = event_of(args, session, "use");
    event.process = checked_text(args.at(1), "process");
    event.text = needed(args, "work", "which work shows it");
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] { Welders(book.ledger()).add(args.at(0), event, stamp_of(args, session)); });
    const WelderState welder = Welders(book.ledger()).welder(args.at(0));
    warn_if_unknown(welder, event.process, session);
    session.out << "welder " << args.at(0) << " used " << event.process << " on " << print(event.day) << "\n";
    for (const auto &held : held_by(book, welder, session.today()))
        if (held.weld.word(Trait::process) == event.process)
            session.out << "  " << title_of(held) << ": " << name_of(held.validity.state) << ", "
                        << held.validity.reason << "\n";
    return ExitCode::done;
}

ExitCode run_trained(const Args &args, Session &session) {
    WelderEvent event = event_of(args, session, "training");
    event.process = checked_text(args.at(1), "process");
    event.text = needed(args, "text", "what was trained");
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] { Welders(book.ledger()).add(args.at(0), event, stamp_of(args, session)); });
    warn_if_unknown(Welders(book.ledger()).welder(args.at(0)), event.process, session);
    session.out << "training of welder " << args.at(0) << " in " << event.process << " on "
                << print(event.day) << " logged\n";
    return ExitCode::done;
}

ExitCode run_renew(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "qualification");
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        Welders welders(book.ledger());
        const WelderState welder = welders.welder(args.at(0));
        const CouponState coupon = book.coupon(args.at(2));
        if (coupon.record.get("welder") != args.at(0))
            throw DataError("coupon " + args.at(2) + " was not welded by " + args.at(0));
        if (!coupon.grade || coupon.grade->decision != "passed")
            throw DataError("coupon " + args.at(2) + " was not graded passed");
        if (coupon.record.get("welded").empty())
            throw DataError("coupon " + args.at(2) + ": on which day was it welded?");
        WelderEvent event;
        event.kind = "renewal";
        event.day = parse_day(coupon.record.get("welded"));
        const HeldQualification held = held_by(book, welder, number, session.today());
        const std::string process = held.weld.word(Trait::process);
        if (!held.rules->renewal)
            throw DataError("by " + held.rules->name +
                            " nothing renews a lapsed qualification; a new test is needed: 'qualify'");
        if (held.validity.state != Validity::State::lapsed)
            throw DataError(title_of(held) + " is " + std::string(name_of(held.validity.state)) +
                            ", not lapsed; there is nothing to renew");
        if (coupon.record.get("process").substr(0, coupon.record.get("process").find(' ')) != process)
            throw DataError("coupon " + args.at(2) + " was welded with '" +
                            shown(coupon.record.get("process")) + "', not with " + process);
        if (event.day <= *held.validity.until)
            throw DataError("coupon " + args.at(2) + " was welded on " + print(event.day) +
                            ", before it lapsed");
        event.process = process;
        event.rules = held.rules->name;
        event.text = "coupon " + args.at(2) + " [" + authority(held.rules->renewal->from) + "]";
        welders.add(args.at(0), event, stamp_of(args, session));
    });
    const WelderState welder = Welders(book.ledger()).welder(args.at(0));
    const HeldQualification now = held_by(book, welder, number, session.today());
    session.out << "welder " << args.at(0) << ", " << title_of(now) << ": " << name_of(now.validity.state)
                << ", " << now.validity.reason << "\n";
    return ExitCode::done;
}

ExitCode run_extend(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "qualification");
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        Welders welders(book.ledger());
        const WelderState welder = welders.welder(args.at(0));
        WelderEvent event = event_of(args, session, "extension");
        const HeldQualification held = held_by(book, welder, number, event.day);
        const auto &extension = held.way().extension;
        if (!extension)
            throw DataError("by " + held.rules->name + ", way " + held.way().id +
                            ", nothing is extended by welds of the work");
        if (held.validity.state != Validity::State::valid)
            throw DataError(title_of(held) + " is " + std::string(name_of(held.validity.state)) + ": " +
                            held.validity.reason);
        const auto welds = args.all("weld");
        const auto error = extension_refused(*extension, event.day, welds);
        if (!error.empty()) throw DataError(error);
        for (const auto &weld : welds)
            event.text += (event.text.empty() ? "" : "; ") + checked_text(weld, "weld");
        event.qualification = number;
        welders.add(args.at(0), event, stamp_of(args, session));
    });
    const WelderState welder = Welders(book.ledger()).welder(args.at(0));
    const HeldQualification now = held_by(book, welder, number, session.today());
    session.out << "welder " << args.at(0) << ", " << title_of(now) << " lasts through "
                << (now.validity.ends ? print(*now.validity.ends) : "-") << "\n";
    return ExitCode::done;
}

ExitCode run_revoke(const Args &args, Session &session) {
    WelderEvent event = event_of(args, session, "revocation");
    event.qualification = whole_number(args.at(1), "qualification");
    event.text = needed(args, "why", "for which reason");
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        Welders welders(book.ledger());
        held_by(book, welders.welder(args.at(0)), event.qualification, event.day);
        welders.add(args.at(0), event, stamp_of(args, session));
    });
    session.out << "qualification #" << event.qualification << " of welder " << args.at(0)
                << " revoked as of " << print(event.day) << "\n";
    return ExitCode::done;
}

ExitCode run_retract(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::write);
    book.ledger().transact([&] {
        Welders(book.ledger())
            .retract(args.at(0), whole_number(args.at(1), "entry"), stamp_of(args, session),
                     args.text("why"));
    });
    session.out << "entry " << args.at(1) << " of welder " << args.at(0)
                << " retracted; it is kept in the history\n";
    return ExitCode::done;
}

Option date_option() { return {"date", "DAY", "on this day (default today)"}; }

} // namespace

Command used_command() {
    return {"used",
            "WELDER PROCESS",
            "log that a welder used a process, or was confirmed, for continuity",
            "",
            "beadbook used L1 GTAW --date 2026-11-20 --work \"frame 12, joints 4 to 9\"",
            2,
            2,
            options(Option{"work", "TEXT", "the work that shows it"}, date_option(), by_option()),
            run_used};
}

Command trained_command() {
    return {"trained",
            "WELDER PROCESS",
            "log further training; after it the retest rules ask for a full test only",
            "",
            "beadbook trained L1 GTAW --text \"two days of root runs\"",
            2,
            2,
            options(Option{"text", "TEXT", "what was trained"}, date_option(), by_option()),
            run_trained};
}

Command renew_command() {
    return {"renew",
            "WELDER NUMBER COUPON",
            "renew a lapsed qualification by a coupon, where its rules allow that",
            "It renews all lapsed qualifications of the process by the same rules.",
            "beadbook renew L1 2 T-9",
            3,
            3,
            {by_option()},
            run_renew};
}

Command extend_command() {
    return {"extend",
            "WELDER NUMBER",
            "extend a qualification by examined welds of the work, where its rules allow that",
            "Each --weld begins with its day; the rules say how many, and how recent.",
            "beadbook extend L1 2 --weld \"2026-10-05 RT accepted, line 4 weld 17\" --weld \"2026-11-12 RT "
            "accepted, line 4 weld 30\"",
            2,
            2,
            options(Option{"weld", "TEXT", "day, exam and weld; may be repeated", 0, true}, date_option(),
                    by_option()),
            run_extend};
}

Command revoke_command() {
    return {"revoke",
            "WELDER NUMBER",
            "revoke a qualification for a reason to doubt the skill",
            "",
            "beadbook revoke L1 2 --why \"three repairs in one week, same fault\"",
            2,
            2,
            options(why_option(), date_option(), by_option()),
            run_revoke};
}

Command retract_command() {
    return {"retract",
            "WELDER ENTRY",
            "take a wrong entry about a welder back; it stays in the history",
            "'welder' and 'history --welder' show the entries' numbers.",
            "beadbook retract L1 41 --why \"logged on the wrong welder\"",
            2,
            2,
            options(why_option(), by_option()),
            run_retract};
}

} // namespace beadbook
