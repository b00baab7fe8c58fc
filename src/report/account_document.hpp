#pragma once

#include "operations/accounts.hpp"
#include "report/document.hpp"

namespace beadbook {

Document document_of(const AccountSheet &account);

} // namespace beadbook
