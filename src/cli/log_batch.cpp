#include "cli/log_batch.hpp"

#include "cli/shared.hpp"
#include "measure/text.hpp"

#include <sstream>

namespace beadbook {
namespace {

std::string live_verdicts(Book &book, const std::string &coupon, const std::string &criteria,
                          CriteriaShelf &shelf, const Paint &paint) {
    if (criteria.empty()) return "  (no criteria named for this coupon)\n";
    const Judged judged = judge_coupon(book.coupon(coupon), shelf.take(criteria));
    std::string out = " ";
    for (std::size_t c = 0; c < judged.judgement.classes.size(); ++c)
        out += " " + judged.set->classes[c].id + ": " + paint.verdict(judged.judgement.classes[c].verdict) +
               (c + 1 < judged.judgement.classes.size() ? " |" : "");
    return out + "\n";
}

} // namespace

std::vector<IndicationRecord> parse_log(const std::string &text, const std::string &name,
                                        const WeldLine &weld, Unit unit) {
    std::vector<IndicationRecord> out;
    std::string faults;
    int bad = 0, number = 0;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        ++number;
        const std::string_view bare = trimmed(line);
        if (bare.empty() || bare.front() == '#') continue;
        try {
            out.push_back(parse_log_line(line, weld, unit));
        } catch (const InputError &e) {
            if (++bad <= 20)
                faults += "\n" + name + ":" + std::to_string(number) + ":" + std::to_string(e.column + 1) +
                          ": " + e.what();
        } catch (const DataError &e) {
            if (++bad <= 20) faults += "\n" + name + ":" + std::to_string(number) + ": " + e.what();
        }
    }
    if (bad > 20) faults += "\nand " + std::to_string(bad - 20) + " more";
    if (bad > 0)
        throw DataError(std::to_string(bad) + (bad == 1 ? " line" : " lines") +
                        " cannot be taken, nothing was stored:" + faults);
    return out;
}

void log_by_prompt(Book &book, const std::string &coupon, int exam, const std::string &criteria,
                   const Stamp &stamp, Session &session) {
    const CouponState state = book.coupon(coupon);
    const Coupon facts = state.record.facts();
    session.out << "coupon " << coupon << ", exam " << exam << " (" << name_of(state.exam(exam)->method)
                << "); one indication a line, e.g. 'gas pore 0.045 at 3.2'; also: list, undo, done\n";
    std::vector<int> mine;
    CriteriaShelf shelf;
    for (std::string line; session.out << "> " << std::flush, std::getline(session.in, line);) {
        const std::string_view word = trimmed(line);
        if (word == "done" || word == "quit") break;
        if (word.empty()) continue;
        try {
            if (word == "list") {
                for (const auto &i : book.coupon(coupon).indications)
                    session.out << "  #" << i.number << " " << print_log_line(i) << "\n";
                continue;
            }
            if (word == "undo") {
                if (mine.empty()) throw InputError("nothing of this sitting is left to undo");
                book.ledger().transact(
                    [&] { book.withdraw_indication(coupon, mine.back(), stamp, "undone at the prompt"); });
                session.out << "  #" << mine.back() << " withdrawn\n";
                mine.pop_back();
            } else {
                const auto indication = parse_log_line(line, facts.line, state.record.unit());
                book.ledger().transact(
                    [&] { mine.push_back(book.add_indications(coupon, exam, {indication}, stamp).front()); });
                session.out << "  #" << mine.back() << " " << print_log_line(indication) << "\n";
            }
            session.out << live_verdicts(book, coupon, criteria, shelf, session.paint());
        } catch (const InputError &e) {
            session.out << "  " << std::string(e.column, ' ') << "^ " << e.what() << "\n";
        } catch (const DataError &e) {
            session.out << "  " << e.what() << "\n";
        }
    }
    session.out << "\n" << mine.size() << (mine.size() == 1 ? " indication" : " indications") << " logged\n";
}

} // namespace beadbook
