#include "cli/welder_shared.hpp"

#include "report/judgement_json.hpp"
#include "report/range_report.hpp"

#include <map>

namespace beadbook {
namespace {

/// Judges every stored verdict again, from what was on record before it and the criteria text it was taken
/// by.
void replay(Book &book, std::vector<std::string> &faults, std::int64_t &count) {
    std::map<std::string, Loaded> by_hash;
    for (const auto &id : book.coupons()) {
        for (const auto &stored : book.coupon(id).verdicts) {
            const std::string name =
                "verdict in entry " + std::to_string(stored.seq) + " (coupon " + id + ")";
            const auto hash = stored.body["criteria"]["hash"].get<std::string>();
            ++count;
            if (!by_hash.contains(hash)) {
                const auto text = book.ledger().criteria_text(hash);
                by_hash[hash] = text ? load_criteria(*text) : Loaded{};
            }
            const Loaded &loaded = by_hash[hash];
            if (!loaded.set) {
                faults.push_back(name + ": its criteria " +
                                 (loaded.issues.empty() ? "are missing" : "no longer load"));
                continue;
            }
            const Judged again = judge_coupon(book.coupon(id, stored.seq), loaded.set);
            for (std::size_t c = 0; c < again.judgement.classes.size(); ++c)
                if (stored.body["classes"][c]["verdict"] != name_of(again.judgement.classes[c].verdict))
                    faults.push_back(name + ": class " + again.set->classes[c].id + " was '" +
                                     stored.body["classes"][c]["verdict"].get<std::string>() +
                                     "' and is now '" +
                                     std::string(name_of(again.judgement.classes[c].verdict)) + "'");
        }
    }
}

/// Works every qualification's range out again, by the rules' text that it was granted by.
void replay_ranges(Book &book, const Session &session, std::vector<std::string> &faults,
                   std::int64_t &count) {
    for (const auto &mark : Welders(book.ledger()).marks())
        for (const auto &held : held_by(book, mark, session.today())) {
            ++count;
            if (held.record.range != range_json(held.range, held.record.test.unit()))
                faults.push_back("qualification " + std::to_string(held.record.number) + " of welder " +
                                 mark + ": its range comes out otherwise now");
        }
}

ExitCode run_verify(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    Verification v = book.ledger().verify();
    std::int64_t replayed = 0, ranges = 0;
    if (args.flag("replay") && v.faults.empty()) {
        replay(book, v.faults, replayed);
        replay_ranges(book, session, v.faults, ranges);
    }
    if (args.has("head") && v.faults.empty() && args.text("head") != v.head)
        v.faults.push_back("the record ends with " + v.head +
                           ", not with the hash you gave: entries were cut off or added since");
    if (args.flag("json")) {
        session.out << nlohmann::json{{"entries", v.entries},
                                      {"head", v.head},
                                      {"faults", v.faults},
                                      {"verdicts judged again", replayed},
                                      {"ranges worked out again", ranges}}
                           .dump(2)
                    << "\n";
    } else if (v.faults.empty()) {
        session.out << v.entries << " entries hold. Head: " << v.head << "\n";
        if (args.flag("replay"))
            session.out << replayed << " verdicts judged again and " << ranges
                        << " ranges worked out again, all the same\n";
        session.out << "Note the number and the head elsewhere; '--head HASH' later also proves that nothing "
                       "was cut off.\n";
    }
    if (v.faults.empty()) return ExitCode::done;
    for (const auto &fault : v.faults) session.err << "beadbook: error: " << fault << "\n";
    return ExitCode::store;
}

ExitCode run_backup(const Args &args, Session &session) {
    Book book = open_book(args, session, Ledger::Mode::read);
    book.ledger().backup(args.at(0));
    session.out << "backup written to " << args.at(0) << " and verified\n";
    return ExitCode::done;
}

} // namespace

Command verify_command() {
    return {
        "verify",
        "",
        "prove that nothing on record was changed",
        "Recomputes the chain of hashes and names the first entry that does not hold.",
        "beadbook verify --replay",
        0,
        0,
        options(Option{"replay", "", "also judge every stored verdict again by the criteria it was taken by"},
                Option{"head", "HASH", "the head noted earlier; the record must end with it"}, json_option()),
        run_verify};
}

Command backup_command() {
    return {"backup",
            "FILE",
            "a consistent, verified copy of the record",
            "",
            "beadbook backup /media/stick/book-2026-11-25.db",
            1,
            1,
            {},
            run_backup};
}

} // namespace beadbook
