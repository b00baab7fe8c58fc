#include "operations/qualifying_many.hpp"

#include "measure/text.hpp"
#include "operations/faults.hpp"
#include "operations/notes_by_mark.hpp"
#include "operations/ranging.hpp"
#include "operations/selecting.hpp"

namespace beadbook {
namespace {

/// A word that contradicts the coupon, or that the rules do not know, is the request's mistake: it is no lack
/// of the coupon.
void check_given_words(CouponRecord test, const RuleWords &words, const RangeRules &rules) {
    if (words.empty()) return;
    take_rule_words(test, words, rules);
    for (const auto &weld : welds_named(test))
        for (const Trait trait : rule_words())
            if (words.contains(field_of(trait)) && weld.knows(trait))
                check_word(rules, trait, true, weld.word(trait));
}

/// All that are selected but those that are withdrawn.
std::vector<std::string> marks_selected(Writing &writing, const Selection &of, QualifiedMany &out) {
    std::vector<std::string> marks;
    select(writing, of, [&](CouponAtHand &one) {
        const CouponRecord &record = one.coupon().record;
        if (record.withdrawn.empty())
            marks.push_back(record.id);
        else
            out.passed_over.push_back({record.id, "withdrawn: " + record.withdrawn});
    });
    return marks;
}

/// The lines of what it is refused with.
std::vector<std::string> reasons_in(const Refusal &refusal) {
    if (const auto *lacks = dynamic_cast<const NotSetAside *>(&refusal)) return lacks->lacks;
    std::vector<std::string> out;
    const std::string all = refusal.what();
    for (std::size_t begin = 0; begin <= all.size();) {
        const std::size_t end = std::min(all.find('\n', begin), all.size());
        out.emplace_back(trimmed(std::string_view(all).substr(begin, end - begin)));
        begin = end + 1;
    }
    return out;
}

} // namespace

Done<QualifiedMany> qualify_many(Writing &writing, const QualifyManyRequest &request) {
    const auto rules = needed_rules(writing.catalogue(), request.rules);
    way_of(request.way, *rules); // refused even where nothing is selected
    Done<QualifiedMany> out;
    out.value.rules = rules->name;
    const auto marks = request.marks.empty() ? marks_selected(writing, request.of, out.value) : request.marks;
    Faults faults(marks.size());
    for (const auto &mark : marks)
        faults.guard([&] { return mark; },
                     [&] { check_given_words(writing.coupon(mark).record, request.words, *rules); });
    faults.check(std::to_string(faults.count()) + " of " + std::to_string(marks.size()));
    NotesByMark notes;
    for (const auto &mark : marks) {
        const std::string welder = writing.coupon(mark).record.get("welder");
        if (writing.book().knows_welder(welder))
            if (const auto number = qualified_already(writing.book().welder(welder), mark, rules->name)) {
                out.value.passed_over.push_back({mark, "it qualified welder " + welder + " by " +
                                                           rules->name + " already, #" +
                                                           std::to_string(*number)});
                continue;
            }
        try {
            auto done = qualify(writing, {mark, request.rules, request.way, request.words, ""});
            notes.take(mark, std::move(done.notes));
            out.value.granted.push_back({mark, std::move(done.value)});
        } catch (const Refusal &e) {
            if (e.kind() == Refusal::Kind::record) throw;
            out.value.lacking.push_back({mark, welder, reasons_in(e)});
        }
    }
    out.notes = notes.told();
    return out;
}

} // namespace beadbook
