#include "report/owners_copy_document.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>

namespace beadbook {
namespace {

const Filling *filling_of(const CriteriaSet &set, const Blank &blank, const std::string &class_id) {
    const auto found = std::find_if(set.fillings.begin(), set.fillings.end(), [&](const Filling &f) {
        return f.blank == blank.id && f.class_id == class_id;
    });
    return found == set.fillings.end() ? nullptr : &*found;
}

void add_blanks(Document &out, const CopySheet &sheet) {
    const CriteriaSet &set = *sheet.set;
    if (set.blanks.empty()) {
        out.line("The set leaves nothing blank.");
        return;
    }
    Grid table{{{"blank", false}, {"clause", false}, {"class", false}, {"value", false}, {"by", false}}, {}};
    for (const bool open : {true, false})
        for (const auto &blank : set.blanks)
            for (std::size_t c = 0; c < set.classes.size(); ++c) {
                if (!blank.classes[c]) continue;
                const Filling *filled = filling_of(set, blank, set.classes[c].id);
                if (open != (filled == nullptr)) continue;
                table.rows.push_back({blank.id, blank.clause, set.classes[c].id,
                                      filled
                                          ? Words(print_unrounded(filled->value, blank.dimension(), set.unit))
                                          : Words("open", Tone::cannot_say),
                                      filled ? filled->by : ""});
            }
    out.add(std::move(table));
    out.heading("What they limit", 2);
    for (const auto &blank : set.blanks)
        out.item(blank.id + ": " + blank.limits + " (" + std::string(name_of(blank.kind)) +
                     (blank.plausible_text.empty() ? "" : ", plausible " + blank.plausible_text) + ")",
                 blank.clause);
}

void add_confirmed(Document &out, const CopySheet &sheet) {
    const auto &all = sheet.entered.confirmations;
    const auto bears = [&](const ConfirmationRecord &one) { return one.hash == sheet.set->hash; };
    if (std::any_of(all.begin(), all.end(), [&](const auto &one) { return bears(one.record); }))
        out.heading("Confirmed", 2);
    for (const auto &one : all)
        if (bears(one.record))
            out.item(one.record.part + (one.record.class_id.empty() ? "" : ", class " + one.record.class_id) +
                     ": " + confirmed_words(one.record.read) + ", " + print(one.record.read.on));
}

void add_of_other(Document &out, const CopySheet &sheet) {
    if (sheet.of_other_text.empty() && sheet.fallen.empty()) return;
    out.heading("Entered, and bearing on nothing any more", 2);
    for (const auto &one : sheet.of_other_text)
        out.item(one.part + (one.class_id.empty() ? "" : ", class " + one.class_id) +
                 ": the text of the set was changed since it was " + confirmed_words(one.read));
    for (const auto &[one, why] : sheet.fallen)
        out.item(one.blank + ", class " + one.class_id + ": filled with " + one.typed + " by " +
                 readers_words(one.read) + "; " + why);
}

} // namespace

Document document_of(const Confirmed &done) {
    Document out;
    for (const auto &one : done.confirmations)
        out.line(done.set + " (" + done.edition + "), " + done.part +
                 (one.class_id.empty() ? "" : ", class " + one.class_id) + ": " + confirmed_words(one.read));
    return out;
}

Document document_of(const Filled &done) {
    Document out;
    for (const auto &one : done.fillings)
        out.line(done.set + " (" + done.edition + "), blank " + done.blank + ", class " + one.class_id +
                 ": " + one.typed + ", filled by " + readers_words(one.read));
    if (!done.still_open.empty()) out.line("Still open for class " + listed(done.still_open) + ".");
    return out;
}

Document document_of(const CopyRetracted &done) {
    const std::string what = (done.blank ? "blank " : "") + done.part +
                             (done.classes.empty() ? "" : ", class " + listed(done.classes));
    return Document{}.line(done.set + ", " + what +
                           (done.blank ? ": the filling is withdrawn, so the blank is open again"
                                       : ": the confirmation is withdrawn") +
                           "; the old entry is kept");
}

Document document_of(const CopySheet &sheet) {
    Document out;
    out.title = "The shop's copy: " + sheet.set->name;
    out.heading(sheet.set->title).line(sheet.set->edition);
    add_blanks(out, sheet);
    add_confirmed(out, sheet);
    add_of_other(out, sheet);
    return out;
}

Document document_of(const std::vector<CopySheet> &sheets) {
    Document out;
    out.title = "Blanks and confirmed limits";
    if (sheets.empty()) return out.line("No set leaves anything blank, and nothing is confirmed.");
    Grid table{{{"set", false}, {"blanks", true}, {"open", true}, {"confirmed", true}}, {}};
    for (const auto &one : sheets) {
        const std::size_t open = one.open(), all = open + one.set->fillings.size(),
                          confirmed = one.entered.confirmations.size() - one.of_other_text.size();
        table.rows.push_back(
            {one.set->name, std::to_string(all), std::to_string(open), std::to_string(confirmed)});
    }
    out.add(std::move(table));
    return out.line("A blank has one number for each class.");
}

} // namespace beadbook
