#include "report/account_document.hpp"

#include "measure/text.hpp"

namespace beadbook {

Document document_of(const AccountSheet &account) {
    return Document{}
        .line(account.person + (account.roles.empty() ? ", without a role" : ", " + listed(account.roles)))
        .line(!account.has_password ? "has no password, and cannot sign in at the bench"
              : account.locked      ? "has a password, and is locked: cannot sign in at the bench"
                                    : "signs in at the bench by name and password");
}

} // namespace beadbook
