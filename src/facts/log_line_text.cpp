// Lines of a log as text: what is no find, and a find as it is printed.
#include "facts/log_line.hpp"
#include "measure/text.hpp"

namespace beadbook {

bool is_comment(std::string_view line) {
    const std::string_view bare = trimmed(line);
    if (bare.empty()) return true;
    return bare.front() == '#' && !(bare.size() > 1 && is_digit(bare[1]));
}

std::string_view without_mark(std::string_view text) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    return text.starts_with(mark) ? text.substr(mark.size()) : text;
}

std::string print_log_line(const IndicationRecord &i, const Vocabulary &vocabulary) {
    std::string out = vocabulary[i.type].name;
    for (const auto &key : measure_keys())
        if (const auto found = i.measures.find(key.quantity); found != i.measures.end()) {
            // A bare number is the size: `fillet size 1/4 in`, without saying size twice.
            const bool said = key.quantity == Quantity::size && out.ends_with(" size");
            out += (said ? " " : " " + std::string(key.word) + " ") + found->second.text;
        }
    if (i.at) out += (i.end ? " from " : " at ") + i.at->text;
    if (i.end) out += " to " + i.end->text;
    if (i.middle) out += " mid " + i.middle->text;
    if (i.across) out += std::string(" across ") + (i.across_left ? "left " : "") + i.across->text;
    for (std::size_t a = 0; a < attribute_count; ++a)
        if (i.words[a] > 0) out += " " + info(static_cast<Attribute>(a)).words[i.words[a] - 1u];
    if (!i.remark.empty()) out += " # " + i.remark;
    return out;
}

} // namespace beadbook
