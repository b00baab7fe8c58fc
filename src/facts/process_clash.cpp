#include "facts/process_clash.hpp"

#include "criteria/weld_words.hpp"
#include "facts/each_process.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

bool one_of(std::string_view word, std::initializer_list<std::string_view> list) {
    return std::any_of(list.begin(), list.end(), [&](auto one) { return same_word(one, word); });
}

bool has_no_transfer(const std::string &process, const std::string &word) {
    const std::string_view called = process_called(process);
    return !called.empty() && !word.empty() && !means_none(word) && !one_of(called, {"GMAW", "FCAW", "EGW"});
}

bool flux_falls_off(const std::string &process, std::string_view position) {
    return process_called(process) == "SAW" && !position_called(position).empty() &&
           !one_of(position, {"1G", "2G", "1F", "2F", "PA", "PB", "PC"});
}

bool spoils(const std::string &process, std::string_view metal) {
    const std::string_view called = process_called(process);
    return metal == "titanium"    ? one_of(called, {"SMAW", "FCAW", "OFW"})
           : metal == "magnesium" ? one_of(called, {"SMAW", "FCAW"})
                                  : false;
}

} // namespace

std::string transfer_of_another_process(const CouponRecord &coupon) {
    return clashes_with_process(coupon, "transfer", has_no_transfer);
}

std::string position_of_another_process(const CouponRecord &coupon) {
    // Positions with a plus between them are of all processes, not of each in turn.
    const auto processes = processes_of(coupon);
    const std::string said = coupon.get("position");
    if (processes.empty() || said.empty()) return "";
    const auto positions = parts_of_several(said);
    const bool falls = std::all_of(processes.begin(), processes.end(), [&](const std::string &process) {
        return std::any_of(positions.begin(), positions.end(),
                           [&](const std::string &one) { return flux_falls_off(process, one); });
    });
    return falls ? "position " + shown(said) + ", process " + shown(coupon.get("process")) : "";
}

std::string metal_of_another_process(const CouponRecord &coupon) {
    const std::string material = coupon.get("material");
    const WordBits named = materials_in(material);
    for (const std::string_view metal : {std::string_view("titanium"), std::string_view("magnesium")}) {
        if (named != WordBits{1} << word_index(info(Fact::material), metal)) continue;
        for (const auto &process : processes_of(coupon))
            if (spoils(process, metal))
                return "process " + shown(coupon.get("process")) + ", material " + shown(material);
    }
    return "";
}

} // namespace beadbook
