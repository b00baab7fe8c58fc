#include "operations/known_words.hpp"

#include "criteria/shipped.hpp"
#include "criteria/weld_words.hpp"
#include "measure/text.hpp"
#include "qualify/contradicting_words.hpp"
#include "qualify/trait.hpp"

#include <algorithm>

namespace beadbook {
namespace {

struct KnownWords {
    std::vector<std::string> words;
    bool of_the_trade = false; ///< words that no rules know but the trade does are taken too
};

bool trade_word(const std::string &word, Trait trait) {
    return !(trait == Trait::process ? process_called(word) : position_called(word)).empty();
}

std::string known_word(const std::string &word, Trait trait, const KnownWords &all) {
    const auto &known = all.words;
    if (word.empty() || known.empty()) return word;
    if (std::string out = word_among(word, known); !out.empty()) return out;
    if (all.of_the_trade && trade_word(word, trait)) return word;
    throw refused(std::string(info(trait).name) + ": '" + shown(word) + "' is not known; expected " +
                  listed(known, "or") + did_you_mean(word, known))
        .at(field_of(trait));
}

/// "gtaw 1/8in + smaw", "3G+4G": the first word of each part is the process, or the position.
std::string known_parts(const std::string &text, Trait trait, const KnownWords &known) {
    if (const std::string whole = word_among(text, known.words); !whole.empty()) return whole;
    const std::string field(field_of(trait));
    std::string out;
    for (std::size_t begin = 0; begin <= text.size();) {
        const std::size_t end = std::min(text.find('+', begin), text.size());
        const std::string part(trimmed(std::string_view(text).substr(begin, end - begin)));
        const std::size_t blank = std::min(part.find(' '), part.size());
        if (part.empty()) throw refused(field + " '" + shown(text) + "': a part is empty").at(field);
        out +=
            (out.empty() ? "" : " + ") + known_word(part.substr(0, blank), trait, known) + part.substr(blank);
        begin = end + 1;
    }
    return out;
}

} // namespace

std::string filler_of_several(const CouponRecord &coupon, const std::string &field) {
    const auto parts_in = [](const std::string &text) {
        return text.empty() ? 0 : 1 + std::count(text.begin(), text.end(), '+');
    };
    const std::string given = coupon.get(field), process = coupon.get("process");
    if (given.empty() || parts_in(process) < 2 || parts_in(given) == parts_in(process)) return "";
    return field + " '" + shown(given) + "': it was welded by " + process +
           ", so say it of each process in turn, with + between, also where they are alike, such as '" +
           (field == "filler-group" ? "F6 + F4" : "S + B") + "'";
}

std::string backing_of_later(const CouponRecord &coupon) {
    const auto backing = parts_of_several(coupon.get("backing"));
    if (coupon.get("sides") == "both" && contradict(Trait::backing, backing.front(), "with"))
        return "backing '" + shown(coupon.get("backing")) +
               "' is of a weld from one side, and sides is both: what is welded first backs the other side, "
               "so "
               "write 'with' or 'bs'";
    for (std::size_t p = 1; p < backing.size(); ++p)
        if (contradict(Trait::backing, backing[p], "with"))
            return "backing '" + shown(coupon.get("backing")) +
                   "': what the first process welded backs the next, so write 'with' or 'ss mb' for that";
    return "";
}

std::vector<std::string> known_test_words(Catalogue &catalogue, Trait trait) {
    std::vector<std::string> out;
    for (const auto &name : shipped_range_rule_names())
        for (const auto &word : catalogue.rules(name)->test_words[index_of(trait)])
            if (std::find(out.begin(), out.end(), word) == out.end()) out.push_back(word);
    return out;
}

void take_known_words(Catalogue &catalogue, CouponRecord &coupon, const RangeRules *by) {
    const auto known = [&](Trait trait) {
        return by ? KnownWords{by->test_words[index_of(trait)], false}
                  : KnownWords{known_test_words(catalogue, trait), true};
    };
    if (const std::string process = coupon.get("process"); !process.empty())
        coupon.set("process", known_parts(process, Trait::process, known(Trait::process)));
    if (const std::string position = coupon.get("position"); !position.empty())
        coupon.set("position", known_parts(position, Trait::position, known(Trait::position)));
}

} // namespace beadbook
