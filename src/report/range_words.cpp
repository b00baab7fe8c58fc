#include "report/range_words.hpp"

#include "measure/print.hpp"
#include "measure/text.hpp"

namespace beadbook {
namespace {

/// How far the work's size is from what the part allows: "0.07 in over".
std::string distance(const RangePart &part, const Exact &value, Unit unit) {
    const Dimension d = info(*info(part.rule->of).size).dimension;
    for (const auto &[compare, edge] : part.edges) {
        if (holds(value, compare, edge)) continue;
        if (value == edge) return ", exactly at the end that is not included";
        const PrintedPair pair = print_pair(value, edge, d, unit);
        return ", " + pair.difference + (is_maximum(compare) ? " over" : " under");
    }
    return "";
}

/// Where several rules speak of one trait, each says for which tests it holds.
Bullet part_item(const RangePart &part, Unit unit, bool among_others) {
    std::string words = print(part, unit);
    if (among_others && !part.rule->test.text.empty()) words += ", as the test is of " + part.rule->test.text;
    if (!part.rule->work.text.empty()) words += ", for " + part.rule->work.text;
    if (part.rule->kind == RangeRule::Kind::unread) return {Words(words, Tone::cannot_say), "", {}};
    if (part.applies == Truth::unknown) words += "; cannot say without " + lacks_words(part.lacks);
    Bullet out{std::move(words), authority(part.rule->clause, part.rule->standing), {}};
    if (!part.rule->reading.empty()) out.under.push_back({"our reading: " + part.rule->reading, "", {}});
    return out;
}

} // namespace

std::string lacks_words(const std::vector<Lack> &lacks) {
    std::vector<std::string> names;
    for (const auto &lack : lacks) names.push_back(name_of(lack));
    return listed(names);
}

std::vector<Bullet> range_items(const std::vector<VariableRange> &range, Unit unit) {
    std::vector<Bullet> out;
    for (const auto &one : range) {
        if (!may_matter(range, *one.variable)) continue;
        std::string name(info(one.variable->of).name);
        if (!one.variable->work.text.empty()) name += " (in work with " + one.variable->work.text + ")";
        Bullet item{name + ":", "", {}};
        if (one.parts.empty()) item.under.push_back({"nothing: no rule speaks of such a test", "", {}});
        for (const auto &part : one.parts) item.under.push_back(part_item(part, unit, one.parts.size() > 1));
        out.push_back(std::move(item));
    }
    return out;
}

std::vector<Bullet> rounded_items(const std::vector<VariableRange> &range, const EndComparison &ends,
                                  Unit unit) {
    std::vector<Bullet> out;
    for (const auto &one : range)
        for (const auto &part : one.parts)
            if (part.rounded())
                out.push_back({std::string(info(one.variable->of).name) + ": " + print(part, unit),
                               ends.from ? authority(*ends.from) : "",
                               {}});
    return out;
}

std::string shortfall_words(const VariableCover &fail, const VariableRange &allows, const Weld &work,
                            Unit unit) {
    const Trait of = fail.variable->of;
    const std::string name(info(of).name);
    if (fail.covered == Truth::unknown) return name + ": cannot say without " + lacks_words(fail.lacks);
    const std::string has = !work.knows(of) ? "?"
                            : is_size(of)   ? print(of, *work.size(of), unit)
                                            : work.word(of);
    std::string out;
    for (const auto &part : allows.parts) {
        if (part.applies != Truth::yes) continue;
        out += (out.empty() ? "this test allows " : "; ") + print(part, unit);
        if (is_size(of) && work.knows(of)) out += distance(part, *work.size(of), unit);
        if (!part.rule->work.text.empty()) out += ", for " + part.rule->work.text;
        out += " [" + authority(part.rule->clause, part.rule->standing) + "]";
    }
    return name + " " + has + ": " + (out.empty() ? "no rule lets this test qualify any" : out);
}

} // namespace beadbook
