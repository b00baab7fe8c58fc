#include "report/weld_strip.hpp"

#include "measure/print.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace beadbook {
namespace {

constexpr std::int64_t cells = 64;

std::set<int> rejecting(const ClassJudgement &judged) {
    std::set<int> out;
    for (const auto &f : judged.findings)
        if (f.effect == Verdict::reject) out.insert(f.indications.begin(), f.indications.end());
    return out;
}

/// Words at their places in one line; one that would stand in another is moved behind it.
std::string line_of(const std::map<std::size_t, std::string> &words) {
    std::string out;
    for (const auto &[at, word] : words) {
        if (out.size() < at) out.resize(at, ' ');
        out += word + " ";
    }
    out.pop_back();
    return out;
}

/// What stands under the weld: both ends, and on a girth weld the hours between.
std::string scale_of(const Case &c, std::int64_t end) {
    const std::string far =
        c.coupon.line.length ? print(end, Dimension::length, c.unit) : "(length not known)";
    if (!c.coupon.line.closed || !c.coupon.line.length)
        return line_of({{0, "0"}, {cells - far.size() + 1, far}});
    return line_of({{0, "12:00"},
                    {cells / 4, "3"},
                    {cells / 2, "6"},
                    {3 * cells / 4, "9"},
                    {cells - 4, "12:00"}}) +
           "  (" + far + " round)";
}

} // namespace

std::string weld_strip(const Case &c, const ClassJudgement &judged) {
    std::int64_t end = c.coupon.line.length ? c.coupon.line.length->nm : 0;
    bool any = false;
    for (const auto &i : c.indications) {
        if (!i.place) continue;
        any = true;
        if (!c.coupon.line.length) end = std::max(end, i.place->to.nm);
    }
    if (!any || end == 0) return "";
    const std::set<int> out = rejecting(judged);
    std::string bar(static_cast<std::size_t>(cells) + 1, '-');
    std::map<std::size_t, std::string> numbers;
    for (const auto &i : c.indications) {
        if (!i.place) continue;
        const auto cell = [&](std::int64_t nm) {
            return static_cast<std::size_t>(static_cast<Int128>(nm) * cells / end);
        };
        const bool rejects = out.contains(i.number);
        const std::size_t first = cell(i.place->from.nm) % bar.size();
        const std::size_t wide =
            cell(i.place->to.nm) - cell(i.place->from.nm); // over the datum of a girth weld too
        for (std::size_t k = first; k <= first + std::min<std::size_t>(wide, cells); ++k) {
            char &mark = bar[k % bar.size()];
            if (rejects || mark == '-') mark = rejects ? 'X' : '=';
        }
        auto &label = numbers[first];
        label += (label.empty() ? "#" : ",") + std::to_string(i.number);
    }
    return "    " + line_of(numbers) + "\n    " + bar + "\n    " + scale_of(c, end) + "\n" +
           (out.empty() ? "" : "    X rejects, = does not\n");
}

} // namespace beadbook
