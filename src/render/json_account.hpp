#pragma once

#include "report/account_document.hpp"

namespace beadbook {

std::string json_text(const AccountSheet &account, const std::vector<std::string> &notes = {});

} // namespace beadbook
