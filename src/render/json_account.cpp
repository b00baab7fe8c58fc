#include "render/json_account.hpp"

#include <nlohmann/json.hpp>

namespace beadbook {

std::string json_text(const AccountSheet &account, const std::vector<std::string> &notes) {
    nlohmann::json out{{"name", account.person},
                       {"roles", account.roles},
                       {"password", account.has_password},
                       {"locked", account.locked}};
    if (!notes.empty()) out["notes"] = notes;
    return out.dump(2) + "\n";
}

} // namespace beadbook
