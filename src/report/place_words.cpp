// What a sentence calls a place on the weld, and the finds that it is about.
#include "measure/print.hpp"
#include "measure/text.hpp"
#include "report/sentence.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string clock_of(Length at, const WeldLine &line) {
    const Exact minutes = Exact(at.nm) * Exact(720) / Exact(line.length->nm);
    auto m = static_cast<std::int64_t>(minutes.rounded()) % 720;
    const std::int64_t hour = m / 60 == 0 ? 12 : m / 60;
    m %= 60;
    return std::to_string(hour) + (m < 10 ? ":0" : ":") + std::to_string(m);
}

} // namespace

std::string print_stretch(const Span &place, const WeldLine &line, Unit unit) {
    const std::string from = print(place.from.nm, Dimension::length, unit);
    if (place.to <= place.from) return "at " + from;
    const std::int64_t around = line.closed && line.length ? line.length->nm : 0;
    const bool over_datum =
        around > 0 && place.from.nm < around && place.to.nm > around && place.to.nm - place.from.nm < around;
    return "from " + from + (over_datum ? " over the datum to " : " to ") +
           print(place.to.nm - (over_datum ? around : 0), Dimension::length, unit);
}

std::string print_place(const Span &place, const WeldLine &line, Unit unit) {
    std::string out = print_stretch(place, line, unit);
    if (line.closed && line.length) out += " (" + clock_of(place.from, line) + " o'clock)";
    return out;
}

std::string print_indications(const Case &c, const std::vector<int> &numbers) {
    std::vector<std::string> tags, types, exams;
    constexpr std::size_t most = 12;
    for (const int n : numbers) {
        if (tags.size() < most) tags.push_back("#" + std::to_string(n));
        if (const Indication *i = c.find(n)) {
            const std::string &name = c.vocabulary[i->type].name;
            if (std::find(types.begin(), types.end(), name) == types.end()) types.push_back(name);
            const std::string exam(name_of(i->exam));
            if (std::find(exams.begin(), exams.end(), exam) == exams.end()) exams.push_back(exam);
        }
    }
    if (numbers.size() > most) tags.push_back(std::to_string(numbers.size() - most) + " more");
    std::string out = listed(tags) + " " + listed(types) + (exams.empty() ? "" : " (" + listed(exams) + ")");
    if (numbers.size() == 1)
        if (const Indication *i = c.find(numbers[0]); i && i->place)
            out += " " + print_place(*i->place, c.coupon.line, c.unit);
    return out;
}

} // namespace beadbook
