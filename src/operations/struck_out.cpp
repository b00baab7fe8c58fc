#include "operations/struck_out.hpp"

#include "facts/name_likeness.hpp"
#include "measure/text.hpp"
#include "records/codecs/typed.hpp"
#include "records/codecs/welder.hpp"

#include <algorithm>

namespace beadbook {
namespace {

const std::string &said(const WelderRecord &welder, StruckOut::Kind kind) {
    return kind == StruckOut::Kind::name ? welder.name : welder.employer;
}

StruckOut struck_by(const Entry &entry, StruckOut::Kind kind) {
    StruckOut out;
    out.kind = kind;
    out.why = entry.reason;
    out.stamp = stamp_of(entry);
    out.entry = entry.seq;
    return out;
}

StruckOut retracted(const Entry &entry, const Entry &old) {
    StruckOut out = struck_by(entry, StruckOut::Kind::entry);
    out.was = old.kind;
    if (old.kind == "qualification") {
        const QualificationRecord held = codec::qualification_from(codec::parsed(old.body));
        out.was += " #" + std::to_string(held.number);
        out.day = print(held.welded);
        out.text = held.carried() ? "carried in" : "coupon " + held.test.id;
        return out;
    }
    const WelderEvent event = codec::event_from(old);
    if (event.qualification > 0) out.was += " #" + std::to_string(event.qualification);
    if (!event.process.empty()) out.was += " " + event.process;
    out.day = print(event.day);
    out.text = event.text;
    return out;
}

} // namespace

std::string_view name_of(StruckOut::Kind kind) {
    switch (kind) {
    case StruckOut::Kind::name: return "name";
    case StruckOut::Kind::employer: return "employer";
    case StruckOut::Kind::entry: break;
    }
    return "entry";
}

std::vector<StruckOut> struck_out(Book &book, const std::string &mark) {
    std::vector<StruckOut> out;
    WelderRecord before;
    const auto history = book.welder_history(mark);
    for (const auto &entry : history) {
        if (is_withdrawal(entry)) {
            if (const Entry *old = superseded_by(entry, history)) out.push_back(retracted(entry, *old));
            continue;
        }
        if (entry.kind != "welder") continue;
        WelderRecord now = codec::welder_from(mark, codec::parsed(entry.body));
        for (const StruckOut::Kind kind : {StruckOut::Kind::name, StruckOut::Kind::employer}) {
            if (said(before, kind).empty() || said(before, kind) == said(now, kind)) continue;
            out.push_back(struck_by(entry, kind));
            out.back().was = said(before, kind);
            out.back().now = said(now, kind);
        }
        before = std::move(now);
    }
    return out;
}

std::string said_at(Book &book, const std::string &mark, StruckOut::Kind kind, std::int64_t entry) {
    std::string out;
    for (const auto &one : book.welder_history(mark))
        if (one.kind == "welder" && one.seq <= entry && !is_withdrawal(one))
            out = said(codec::welder_from(mark, codec::parsed(one.body)), kind);
    return out;
}

bool of_two_persons(const std::string &name, const std::string &other) {
    if (name.empty() || other.empty() || may_be_taken_for(name, other)) return false;
    const std::string folded = folded_name(name), folded_other = folded_name(other);
    const auto in_common = [&](std::string_view word) {
        const auto theirs = words_of(folded_other);
        return word.size() > 1 && std::any_of(theirs.begin(), theirs.end(), [&](std::string_view one) {
                   return one == word || may_be_misspelt(one, word);
               });
    };
    const auto words = words_of(folded);
    return std::none_of(words.begin(), words.end(), in_common);
}

} // namespace beadbook
