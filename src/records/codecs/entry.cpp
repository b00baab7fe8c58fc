#include "records/entry.hpp"

#include "measure/sha256.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook {

Family family_of(const std::string &kind) {
    for (const char *one : {"coupon", "exam", "indication", "remark", "verdict", "grade"})
        if (kind == one) return Family::coupon;
    return Family::welder;
}

std::string hash_of(const Entry &e) {
    const auto or_null = [](const auto &value) { return value ? nlohmann::json(*value) : nlohmann::json(); };
    return sha256(nlohmann::json::array({e.previous, e.seq, e.at, e.who, e.kind, e.subject, or_null(e.exam),
                                         or_null(e.number), or_null(e.supersedes), e.reason, e.body})
                      .dump());
}

std::string withdrawal(std::optional<int> number) {
    nlohmann::json out{{"withdrawn", true}};
    if (number) out["number"] = *number;
    return codec::canonical(out);
}

bool is_withdrawal(const Entry &entry) {
    // Text first: only a body that could be one is parsed.
    return entry.body.find("\"withdrawn\"") != std::string::npos &&
           codec::parsed(entry.body).contains("withdrawn");
}

} // namespace beadbook
