#include "facts/filler_words.hpp"

#include "criteria/weld_words.hpp"
#include "facts/each_process.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <cctype>

namespace beadbook {
namespace {

bool is_any_of(std::string_view word, std::initializer_list<std::string_view> list) {
    return std::any_of(list.begin(), list.end(), [&](auto one) { return same_word(one, word); });
}

/// "tbd" and "n/a" are no words by which somebody says that none was used.
bool says_no_filler(std::string_view word) {
    return is_any_of(word, {"none", "no", "no filler", "without", "without filler", "autogenous", "nm"});
}
bool names_filler(std::string_view word) {
    return !word.empty() && !says_no_filler(word) && !means_none(word);
}

/// How it is said of one process that no filler was used: "filler none"; empty if it is not.
std::string no_filler_of(const CouponRecord &coupon, std::size_t p, const std::vector<std::string> &all) {
    if (all[p] == "142") return "process 142";
    for (const char *field : {"filler", "filler-type", "filler-group"})
        if (const std::string said = said_of_process(coupon, field, p, all.size(), true);
            says_no_filler(said))
            return std::string(field) + " " + shown(said);
    return "";
}

/// The digits at the beginning of a text.
std::string digits_of(std::string_view text) {
    const auto end = std::find_if(text.begin(), text.end(), [](char c) { return !is_digit(c); });
    return {text.begin(), end};
}

/// Letters and digits alone, in small letters: "F-No. 6" is "fno6".
std::string plain_of(std::string_view text) {
    std::string out;
    for (const char c : lowered(text))
        if (std::isalnum(static_cast<unsigned char>(c)) != 0) out += c;
    return out;
}

/// The metal of a group of fillers: F6, "F-No. 23", FM5. Empty: it is none that is known.
std::string_view metal_of_group(std::string_view group) {
    std::string plain = plain_of(group);
    if (plain.starts_with("fno")) plain.erase(1, 2);
    const bool iso = plain.starts_with("fm");
    const std::string number = plain.starts_with("f") ? plain.substr(iso ? 2 : 1) : "";
    if (number.empty() || number.size() > 2 || digits_of(number) != number) return "";
    const int n = std::stoi(number);
    const auto within = [&](int first, int last) { return first <= n && n <= last; };
    if (iso) return within(1, 5) ? "steel" : n == 6 ? "nickel" : "";
    if (within(1, 6)) return "steel";
    if (within(21, 26)) return "aluminium";
    if (within(31, 37)) return "copper";
    if (within(41, 46)) return "nickel";
    return within(51, 56) ? "titanium" : "";
}

enum class FillerForm : std::uint8_t { unknown, covered, bare, cored };
struct KnownFiller {
    std::string_view metal; ///< empty: not known
    FillerForm form = FillerForm::unknown;
};

/// An AWS designation: ER70S-6, E7018-1, E71T-1, ER4043, ERTi-2. E4043 tells no metal: other countries call
/// steel so.
KnownFiller filler_called(std::string_view word) {
    const std::string low = lowered(word);
    if (low.starts_with("er") && low.size() > 4) {
        const std::string name = low.substr(2), digits = digits_of(name);
        if (digits.size() == 4 && (name[0] == '4' || name[0] == '5')) return {"aluminium", FillerForm::bare};
        for (const auto &[begin, metal] :
             {std::pair("ti", "titanium"), {"cu", "copper"}, {"ni", "nickel"}, {"az", "magnesium"}})
            if (name.starts_with(begin)) return {metal, FillerForm::bare};
        const bool steel = digits.size() == 3 || (digits.size() == 2 && name.size() > 2 && name[2] == 's');
        return steel ? KnownFiller{"steel", FillerForm::bare} : KnownFiller{};
    }
    if (!low.starts_with("e")) return {};
    const std::string digits = digits_of(std::string_view(low).substr(1));
    const std::string_view rest = std::string_view(low).substr(1 + digits.size());
    if (digits.empty()) return {};
    if (digits.size() < 4 && rest.starts_with("t")) return {"steel", FillerForm::cored};
    const bool strength =
        (digits.size() == 4 && digits[0] >= '6') || (digits.size() == 5 && digits[0] == '1');
    if (strength && (rest.empty() || rest[0] == '-')) return {"steel", FillerForm::covered};
    return {};
}

bool light(std::string_view metal) { return is_any_of(metal, {"aluminium", "titanium", "magnesium"}); }

/// The one metal that the material names; empty if there is none, or several.
std::string_view base_metal_of(const CouponRecord &coupon) {
    const WordBits named = materials_in(coupon.get("material"));
    if (!std::has_single_bit(named)) return "";
    return info(Fact::material).words[static_cast<std::size_t>(std::countr_zero(named)) - 1];
}

bool type_clashes(const std::string &process, const std::string &type) {
    const std::string_view called = process_called(process);
    const bool covered = is_any_of(type, {"A", "C", "RA", "RB", "RC", "RR"});
    if (called == "SMAW") return is_any_of(type, {"S", "M", "P", "V", "W", "Y", "Z"});
    return covered && is_any_of(called, {"GTAW", "GMAW", "FCAW", "SAW", "PAW", "OFW"});
}

bool filler_clashes(const std::string &process, const std::string &filler) {
    const std::string_view called = process_called(process);
    const FillerForm form = filler_called(filler.substr(0, filler.find(' '))).form;
    if (called == "SMAW") return form == FillerForm::bare || form == FillerForm::cored;
    if (called == "FCAW") return form == FillerForm::bare || form == FillerForm::covered;
    return form == FillerForm::covered && is_any_of(called, {"GTAW", "GMAW", "SAW", "PAW", "OFW"});
}

} // namespace

std::string filler_beside_none(const CouponRecord &coupon) {
    const auto all = processes_of(coupon);
    const std::size_t count = std::max<std::size_t>(all.size(), 1);
    for (std::size_t p = 0; p < count; ++p) {
        const std::string none = no_filler_of(coupon, p, all.empty() ? std::vector<std::string>{""} : all);
        if (none.empty()) continue;
        for (const char *field : {"filler", "filler-group", "filler-type"})
            if (const std::string said = said_of_process(coupon, field, p, count, false); names_filler(said))
                return none + ", " + field + " " + shown(said);
    }
    return "";
}

std::string electrode_beside_none(const CouponRecord &coupon) {
    const auto all = processes_of(coupon);
    for (std::size_t p = 0; p < all.size(); ++p) {
        const std::string none = no_filler_of(coupon, p, all);
        if (!none.empty() && is_any_of(process_called(all[p]), {"SMAW", "GMAW", "FCAW", "SAW", "EGW", "ESW"}))
            return none + ", process " + shown(all[p]);
    }
    return "";
}

std::string fillet_beside_none(const CouponRecord &coupon) {
    auto all = processes_of(coupon);
    if (all.empty()) all.emplace_back();
    std::string none;
    for (std::size_t p = 0; p < all.size(); ++p)
        if (none = no_filler_of(coupon, p, all); none.empty()) return "";
    for (const char *field : {"fillet-size", "leg", "throat"})
        if (const std::string size = coupon.get(field); !size.empty())
            return none + ", " + field + " " + size;
    return "";
}

std::string filler_of_another_metal(const CouponRecord &coupon) {
    const std::string_view base = base_metal_of(coupon);
    if (base.empty()) return "";
    for (const char *field : {"filler-group", "filler"}) {
        const std::string said = coupon.get(field);
        for (const auto &part : parts_of_several(said)) {
            const std::string_view metal = std::string_view(field) == "filler"
                                               ? filler_called(part.substr(0, part.find(' '))).metal
                                               : metal_of_group(part);
            if (!metal.empty() && metal != base && (light(metal) || light(base)))
                return std::string(field) + " " + shown(said) + ", material " + shown(coupon.get("material"));
        }
    }
    return "";
}

std::string filler_of_another_process(const CouponRecord &coupon) {
    std::string out = clashes_with_process(coupon, "filler-type", type_clashes);
    return out.empty() ? clashes_with_process(coupon, "filler", filler_clashes) : out;
}

} // namespace beadbook
