#include "cli/welder_shared.hpp"
#include "report/record_page.hpp"

#include <filesystem>
#include <fstream>

namespace po = boost::program_options;

namespace beadbook {
namespace {

/// Events that bear on one qualification.
std::vector<WelderEvent> events_on(const WelderState &welder, const HeldQualification &held) {
    std::vector<WelderEvent> out;
    const std::string &process = held.weld.word(Trait::process);
    for (const auto &e : welder.events)
        if (e.qualification == held.record.number || (e.qualification == 0 && e.process == process &&
                                                      (e.rules.empty() || e.rules == held.record.rules)))
            out.push_back(e);
    return out;
}

void write_new(const std::string &path, const std::string &text) {
    if (std::filesystem::exists(path)) throw DataError(path + ": is there already; nothing is overwritten");
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.close();
    if (!out) throw DataError(path + ": cannot be written");
}

ExitCode run_record(const Args &args, Session &session) {
    const int number = whole_number(args.at(1), "qualification");
    Book book = open_book(args, session, Ledger::Mode::read);
    const Day on = day_of(args, session, "on");
    const WelderState welder = Welders(book.ledger()).welder(args.at(0));
    const HeldQualification held = held_by(book, welder, number, on);
    if (args.has("document")) {
        const auto document = book.ledger().document(held.record.document);
        if (!document)
            throw DataError("qualification " + args.at(1) + " was not carried in, it has no document");
        write_new(args.text("document"), document->bytes);
        session.out << document->name << " written to " << args.text("document") << "\n";
        return ExitCode::done;
    }
    const auto events = events_on(welder, held);
    const RecordSheet sheet{welder.record,
                            held.record,
                            *held.rules,
                            held.weld,
                            held.range,
                            held.validity,
                            events,
                            welder.granted.at(number),
                            welder.hashes.at(number),
                            book.ledger().head(),
                            on};
    if (args.has("html")) {
        write_new(args.text("html"), record_html(sheet));
        session.out << "written to " << args.text("html") << "\n";
    } else if (args.flag("json")) {
        session.out << record_json(sheet).dump(2) << "\n";
    } else {
        session.out << record_text(sheet);
    }
    return ExitCode::done;
}

} // namespace

Command record_command() {
    return {"record",
            "WELDER NUMBER",
            "the qualification record of one welder and test: text, JSON, or a page to print",
            "What was welded, examined and graded, by which criteria and rules (edition and hash), what it\n"
            "qualifies, how it stands, and the hashes that prove it.",
            "beadbook record L1 2 --html L1-2.html",
            2,
            2,
            [](po::options_description &o) {
                o.add_options()("html", po::value<std::string>()->value_name("FILE"),
                                "write a page to print")("document",
                                                         po::value<std::string>()->value_name("FILE"),
                                                         "write the paper that it was carried in with")(
                    "on", po::value<std::string>()->value_name("DAY"),
                    "as it stands on this day (default today)");
                add_json(o);
            },
            run_record};
}

} // namespace beadbook
