#include "records/book.hpp"

#include "measure/text.hpp"
#include "records/fold.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// With the dashes of a word processor as they stand on a keyboard.
std::string with_plain_dashes(std::string text) {
    for (const std::string_view dash : {"\u2010", "\u2011", "\u2013", "\u2014", "\u2212"})
        for (std::size_t at = 0; (at = text.find(dash, at)) != std::string::npos;)
            text.replace(at, dash.size(), "-");
    return text;
}

/// Of marks that are like it in letters or in number; T-5 is no slip for X-1.
std::string near_mark(const std::string &typed, std::vector<std::string> marks) {
    const std::string mark = with_plain_dashes(typed);
    const auto number_at = [](const std::string &text) { return text.find_last_not_of("0123456789") + 1; };
    const auto unlike = [&](const std::string &other) {
        const std::size_t own = number_at(mark), at = number_at(other);
        return !same_word(mark.substr(0, own), other.substr(0, at)) && mark.substr(own) != other.substr(at);
    };
    std::erase_if(marks, unlike);
    return did_you_mean(mark, marks);
}

} // namespace

const std::vector<Entry> &Book::entries(Family family, const std::string &subject) {
    const auto read = [&] { return ledger_.entries_of(family, subject); };
    return family == Family::coupon ? coupons_.of(ledger_, subject, read)
                                    : others_.of(ledger_, {family, subject}, read);
}

bool Book::knows_welder(const std::string &mark) {
    return welders_known_.of(ledger_, mark, [&] { return ledger_.knows(Family::welder, mark); });
}

std::vector<std::string> Book::people() {
    return people_.of(ledger_, true, [&] { return ledger_.subjects(Family::person); });
}

const std::vector<Ledger::WelderElsewhere> &Book::welders_elsewhere() {
    return elsewhere_.of(ledger_, true, [&] { return ledger_.welders_elsewhere(); });
}

const std::vector<std::pair<std::string, std::string>> &Book::failed_elsewhere() {
    return failed_.of(ledger_, true, [&] { return ledger_.failed_elsewhere(); });
}

std::vector<Entry> Book::history(const std::string &id) {
    auto out = entries(Family::coupon, id);
    if (!out.empty()) return out;
    // A welder's mark, say, or the line that belongs behind the mark.
    if (knows_welder(id))
        throw refused("there is no coupon '" + shown(id) + "'; it is the mark of a welder")
            .mend({"welder", {id}, {}});
    throw DataError("there is no coupon '" + shown(id) + "'" +
                    (id.find("..") != std::string::npos || id.find(',') != std::string::npos
                         ? "; here one coupon is taken at a time, by its mark"
                     : id.find(' ') == std::string::npos
                         ? near_mark(id, coupons())
                         : "; expected a coupon's mark, which has no blanks"));
}

CouponState Book::coupon(const std::string &id, std::optional<std::int64_t> before) {
    auto all = history(id);
    leave_out_since(all, before);
    return fold_coupon(all);
}

std::vector<Entry> Book::welder_history(const std::string &mark) {
    auto out = entries(Family::welder, mark);
    if (!out.empty()) return out;
    if (knows_coupon(mark))
        throw refused("there is no welder '" + shown(mark) + "'; it is the mark of a coupon")
            .mend({"show", {mark}, {}});
    if (const std::string one = mark_of_name(mark); !one.empty())
        throw refused("there is no welder '" + shown(mark) + "'; that is the name of " + one +
                      ", and a welder is called by the mark")
            .mend({"welder", {one}, {}});
    if (mark.find("..") != std::string::npos || mark.find(',') != std::string::npos)
        throw refused(
            "'" + shown(mark) +
            "' names several welders, and here one is asked for; say it of each by the mark, such as " +
            shown(mark.substr(0, mark.find_first_of(".,"))));
    Refusal none = refused("there is no welder '" + shown(mark) + "'" + near_mark(mark, welders()));
    if (mark.find(' ') == std::string::npos) none.mend({"enrol", {mark}, {}});
    throw Refusal(std::move(none));
}

std::string Book::mark_of_name(const std::string &name) {
    for (const auto &mark : welders())
        if (same_word(welder(mark).record.name, name)) return mark;
    return "";
}

WelderState Book::welder(const std::string &mark) { return fold_welder(mark, welder_history(mark)); }

std::vector<Entry> Book::person_history(const std::string &name) {
    auto out = entries(Family::person, name);
    if (out.empty())
        throw refused("'" + shown(name) + "' is not on record" + did_you_mean(name, people()))
            .mend({"person", {name}, {"role"}});
    return out;
}

PersonState Book::person(const std::string &name) { return fold_person(name, person_history(name)); }

std::vector<Entry> Book::equipment_history(const std::string &serial) {
    auto out = entries(Family::equipment, serial);
    if (out.empty())
        throw refused("there is no equipment '" + shown(serial) + "'" + did_you_mean(serial, all_equipment()))
            .mend({"equipment", {serial}, {"kind"}});
    return out;
}

EquipmentState Book::equipment(const std::string &serial) {
    return fold_equipment(serial, equipment_history(serial));
}

OwnersCopyState Book::owners_copy(const std::string &set) { return fold_owners_copy(set, copy_history(set)); }

} // namespace beadbook
