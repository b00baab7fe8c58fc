// Source: welding-process training texts, read: tungsten comes from a tungsten electrode, slag from a flux.
#include "technique/plausible.hpp"

#include "measure/text.hpp"

#include <algorithm>
#include <array>
#include <sstream>

namespace beadbook {
namespace {

constexpr std::array<std::string_view, 8> with_tungsten{"GTAW", "PAW", "141", "142",
                                                        "143",  "145", "15",  "TIG"};
constexpr std::array<std::string_view, 10> without_flux{"GTAW", "PAW", "EBW", "LBW", "141",
                                                        "142",  "145", "15",  "TIG", "OFW"};

/// The first word of each part of "GTAW 1/8in + SMAW 3/8in".
std::vector<std::string> processes_of(const std::string &text) {
    std::vector<std::string> out;
    std::string rest = text;
    std::replace(rest.begin(), rest.end(), '+', '\n');
    std::istringstream parts(rest);
    for (std::string part; std::getline(parts, part);)
        if (const auto words = words_of(part); !words.empty()) out.emplace_back(words.front());
    return out;
}

template <std::size_t N>
bool among(const std::string &process, const std::array<std::string_view, N> &list) {
    return std::find(list.begin(), list.end(), process) != list.end();
}

} // namespace

std::string implausible(const Vocabulary &v, TypeId type, const std::string &process) {
    const auto all = processes_of(process);
    if (all.empty()) return "";
    const auto is = [&](const char *name) { return v.is_a(type, *v.find(name)); };
    if (is("tungsten inclusion") &&
        std::none_of(all.begin(), all.end(), [](const auto &p) { return among(p, with_tungsten); }))
        return "a tungsten inclusion, but " + process + " has no tungsten electrode; a slip?";
    if ((is("slag inclusion") || is("flux inclusion")) &&
        std::all_of(all.begin(), all.end(), [](const auto &p) { return among(p, without_flux); }))
        return "slag, but " + process + " has no flux; a slip?";
    return "";
}

} // namespace beadbook
