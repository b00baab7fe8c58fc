#include "render/json_list.hpp"

#include <string_view>

namespace beadbook {
namespace {

constexpr std::string_view line_end = "\n", begins = "[\n", between = ",\n", ends = "\n]\n", empty = "[]\n";

} // namespace

std::string JsonListInParts::operator()(const std::string &element) {
    std::string out(any_ ? between : begins);
    any_ = true;
    return out.append(element, 0, element.size() - line_end.size());
}

std::string JsonListInParts::all_of(const std::string &list) {
    if (list == empty) return "";
    return (*this)(list.substr(begins.size(), list.size() - begins.size() - ends.size() + line_end.size()));
}

std::string JsonListInParts::end() const { return std::string(any_ ? ends : empty); }

} // namespace beadbook
