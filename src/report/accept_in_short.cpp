#include "report/accept_in_short.hpp"

#include "measure/text.hpp"
#include "report/proof_document.hpp"
#include "report/standings.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace beadbook {
namespace {

/// "VT and PT: A. Field's level as typed, nobody on record vouches for it".
std::string unvouched_words(const Judged &judged) {
    std::vector<std::string> methods;
    for (const auto &exam : judged.exam_records) {
        std::string method(name_of(exam.method));
        if (exam.level_as_typed && std::find(methods.begin(), methods.end(), method) == methods.end())
            methods.push_back(std::move(method));
    }
    return methods.empty()
               ? ""
               : listed(methods) + ": the examiner's level as typed, nobody on record vouches for it";
}

} // namespace

std::vector<std::string> accept_in_short(const Judged &judged) {
    const auto k = class_to_prove(judged);
    if (!k) return {};
    std::vector<std::string> out{
        standing_words(standings_behind(judged.judgement.classes[*k], *judged.set, *k))};
    for (std::string words : {unvouched_words(judged), not_covered_words(judged)})
        if (!words.empty()) out.push_back(std::move(words));
    return out;
}

AcceptsInShort accepts_in_short(const std::vector<std::pair<std::string, std::vector<std::string>>> &said) {
    std::map<std::string, std::size_t> coupons;
    std::map<std::pair<std::string, std::string>, std::size_t> times;
    std::vector<std::pair<std::string, std::string>> in_order;
    for (const auto &[set, sentences] : said) {
        ++coupons[set];
        for (const auto &words : sentences)
            if (++times[{set, words}] == 1) in_order.emplace_back(set, words);
    }
    const auto is_of_all = [&](const std::string &set, const std::string &words) {
        return coupons[set] > 1 && times[{set, words}] == coupons[set];
    };
    AcceptsInShort out;
    std::map<std::string, std::string> of_set;
    for (const auto &[set, words] : in_order)
        if (is_of_all(set, words)) of_set[set] += " " + words + ".";
    for (const auto &[set, words] : of_set) out.of_sets.push_back("Each by " + set + ":" + words);
    for (const auto &[set, sentences] : said) {
        std::vector<std::string> left;
        for (const auto &words : sentences)
            if (!is_of_all(set, words)) left.push_back(words);
        out.of_each.push_back(std::move(left));
    }
    return out;
}

} // namespace beadbook
