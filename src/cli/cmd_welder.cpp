#include "cli/welder_shared.hpp"
#include "report/range_report.hpp"

namespace beadbook {
namespace {

ExitCode run_enrol(const Args &args, Session &session) {
    const bool change = args.has("why");
    Book book = open_book(args, session, change ? Ledger::Mode::write : Ledger::Mode::create);
    book.ledger().transact([&] {
        Welders welders(book.ledger());
        WelderRecord record;
        record.mark = args.at(0);
        if (change) record = welders.welder(args.at(0)).record;
        if (args.has("name")) record.name = checked_text(args.text("name"), "name");
        if (args.has("employer")) record.employer = checked_text(args.text("employer"), "employer");
        if (args.has("note")) record.note = checked_text(args.text("note"), "note");
        if (change)
            welders.change(record, stamp_of(args, session), args.text("why"));
        else
            welders.enrol(record, stamp_of(args, session));
    });
    session.out << "welder " << args.at(0)
                << (change ? " changed; the old entry is kept\n" : " registered\n");
    return ExitCode::done;
}

nlohmann::json held_json(const HeldQualification &held) {
    nlohmann::json out{{"welder", held.mark},
                       {"number", held.record.number},
                       {"rules", held.rules->name},
                       {"process", held.weld.word(Trait::process)},
                       {"test", weld_json(held.weld, held.record.test.unit())},
                       {"welded", print(held.record.welded)},
                       {"state", name_of(held.validity.state)},
                       {"reason", held.validity.reason}};
    if (held.validity.until) out["until"] = print(*held.validity.until);
    return out;
}

void print_held(const HeldQualification &held, Session &session) {
    session.out << title_of(held) << ": " << session.paint().strong(std::string(name_of(held.validity.state)))
                << ", " << held.validity.reason << " [" << authority(held.validity.from) << "]\n    "
                << (held.record.carried() ? "carried in: " : "coupon " + held.record.test.id + ": ")
                << print(held.weld, held.record.test.unit()) << ", welded " << print(held.record.welded)
                << "\n";
}

ExitCode run_welder(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    const WelderState welder = Welders(book.ledger()).welder(args.at(0));
    const auto all = held_by(book, welder, day_of(args, session, "on"));
    if (args.flag("json")) {
        nlohmann::json out{{"mark", args.at(0)},
                           {"welder", welder.record.to_json()},
                           {"qualifications", nlohmann::json::array()},
                           {"events", nlohmann::json::array()}};
        for (const auto &held : all) out["qualifications"].push_back(held_json(held));
        for (const auto &e : welder.events) {
            nlohmann::json one = e.to_json();
            one["kind"] = e.kind;
            one["entry"] = e.seq;
            out["events"].push_back(std::move(one));
        }
        session.out << out.dump(2) << "\n";
        return ExitCode::done;
    }
    session.out << "Welder " << args.at(0) << (welder.record.name.empty() ? "" : ", " + welder.record.name)
                << (welder.record.employer.empty() ? "" : ", " + welder.record.employer) << "\n";
    if (!welder.record.note.empty()) session.out << "  note: " << welder.record.note << "\n";
    for (const auto &held : all) print_held(held, session);
    if (all.empty()) session.out << "holds no qualification\n";
    for (const auto &e : welder.events)
        session.out << print(e.day) << "  " << e.kind << (e.process.empty() ? "" : " " + e.process)
                    << (e.qualification > 0 ? " #" + std::to_string(e.qualification) : "")
                    << (e.text.empty() ? "" : ": " + e.text) << "  (by " << e.who << ", entry " << e.seq
                    << ")\n";
    session.out << "\n" << caution;
    return ExitCode::done;
}

ExitCode run_welders(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    Welders welders(book.ledger());
    const Day on = day_of(args, session, "on");
    nlohmann::json list = nlohmann::json::array();
    for (const auto &mark : welders.marks()) {
        const WelderState welder = welders.welder(mark);
        std::string held_text;
        nlohmann::json held_list = nlohmann::json::array();
        for (const auto &held : held_by(book, welder, on)) {
            held_list.push_back(held_json(held));
            held_text += "  " + title_of(held) + " " + std::string(name_of(held.validity.state)) +
                         (held.validity.until ? " to " + print(*held.validity.until) : "") + ";";
        }
        if (args.flag("json"))
            list.push_back(
                {{"mark", mark}, {"welder", welder.record.to_json()}, {"qualifications", held_list}});
        else
            session.out << mark << "  " << welder.record.name << held_text << "\n";
    }
    if (args.flag("json")) session.out << list.dump(2) << "\n";
    return ExitCode::done;
}

/// Qualifications that end, or must be used, within the next days; and those that are over.
ExitCode run_due(const Args &args, Session &session) {
    const int days = args.has("days") ? whole_number(args.text("days"), "number of days") : 60;
    Book book = open_book(args, session, Ledger::Mode::read);
    const Day on = day_of(args, session, "on");
    const Day horizon = on + std::chrono::days{days};
    std::vector<HeldQualification> due;
    for (const auto &mark : Welders(book.ledger()).marks())
        for (auto &held : held_by(book, mark, on))
            if (held.validity.until && *held.validity.until <= horizon &&
                held.validity.state != Validity::State::revoked)
                due.push_back(std::move(held));
    std::stable_sort(due.begin(), due.end(), [](const HeldQualification &a, const HeldQualification &b) {
        return *a.validity.until < *b.validity.until;
    });
    nlohmann::json list = nlohmann::json::array();
    for (const auto &held : due) {
        const auto left = (*held.validity.until - on).count();
        std::string act;
        if (held.validity.state == Validity::State::valid)
            act = held.validity.use_by == held.validity.until ? "use the process and log it"
                                                              : "extend it or test again";
        else if (held.validity.state == Validity::State::lapsed)
            act = held.rules->renewal
                      ? "renew it: " + std::to_string(held.rules->renewal->coupons) + " coupon"
                      : "test again";
        else
            act = "test again";
        if (args.flag("json")) {
            nlohmann::json one = held_json(held);
            one["days left"] = left;
            one["to do"] = act;
            list.push_back(std::move(one));
            continue;
        }
        session.out << print(*held.validity.until) << "  " << (left < 0 ? "over for " : "in ")
                    << std::abs(left) << (std::abs(left) == 1 ? " day  " : " days  ") << held.mark << "  "
                    << title_of(held) << "  " << name_of(held.validity.state) << ", " << held.validity.reason
                    << "; " << act << "\n";
    }
    if (args.flag("json"))
        session.out << list.dump(2) << "\n";
    else if (due.empty())
        session.out << "nothing is due through " << print(horizon) << "\n";
    return ExitCode::done;
}

Option on_option() { return {"on", "DAY", "as it stands on this day (default today)"}; }

} // namespace

Command enrol_command() {
    return {"enrol",
            "WELDER",
            "register a welder by mark (stencil), or change the entry with --why",
            "",
            "beadbook enrol L1 --name \"J. Reef\" --employer \"the yard\"",
            1,
            1,
            options(Option{"name", "NAME", "the welder's name"},
                    Option{"employer", "TEXT", "who employs the welder"},
                    Option{"note", "TEXT", "anything else"}, why_option(), by_option()),
            run_enrol};
}

Command welder_command() {
    return {"welder",
            "WELDER",
            "one welder: qualifications, how each stands and until when, and what was logged",
            "",
            "beadbook welder L1",
            1,
            1,
            options(on_option(), json_option()),
            run_welder};
}

Command welders_command() {
    return {"welders", "", "all welders with what they hold",   "",         "beadbook welders",
            0,         0,  options(on_option(), json_option()), run_welders};
}

Command due_command() {
    return {
        "due",
        "",
        "qualifications that end or must be used in the coming days, and those that are over",
        "A period that ends on a day holds through that day. A month is counted to the same day of a later\n"
        "month, or to its last day if it is shorter: 2026-08-31 and 6 months is 2027-02-28.",
        "beadbook due --days 90",
        0,
        0,
        options(Option{"days", "N", "days to look ahead (default 60)"}, on_option(), json_option()),
        run_due};
}

} // namespace beadbook
