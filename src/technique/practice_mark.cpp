#include "technique/practice_mark.hpp"

#include "criteria/provenance.hpp"
#include "technique/practice.hpp"

#include <map>

namespace beadbook {
namespace {

/// By name; each is read once.
const std::map<std::string, std::string> &shipped_hashes() {
    static const auto out = [] {
        std::map<std::string, std::string> all;
        for (const auto &name : shipped_practice_names()) all.emplace(name, shipped_practice(name)->hash);
        return all;
    }();
    return out;
}

} // namespace

std::string own_practice_mark(const std::string &name, const std::string &hash) {
    if (hash.empty()) return "";
    const auto known = shipped_hashes().find(name);
    if (known != shipped_hashes().end() && known->second == hash) return "";
    return own_file_mark(known != shipped_hashes().end(), hash);
}

} // namespace beadbook
