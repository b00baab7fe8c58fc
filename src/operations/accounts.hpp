#pragma once

#include "operations/people.hpp"
#include "records/account_file.hpp"

namespace beadbook {

/// What may change of how a person signs in; what is absent stays.
struct AccountRequest {
    std::string name;
    std::optional<std::string> password;
    std::optional<bool> locked;
    std::string by = {}; ///< who changes it
};

/// How a person of the record signs in at the bench; the hash is told to nobody.
struct AccountSheet {
    std::string person;
    std::vector<std::string> roles; ///< as on record: what may be done is theirs
    bool has_password = false, locked = false;
};

/// Throws Refusal: nobody of that name is on record.
AccountSheet show_account(Office &office, AccountFile &accounts, const std::string &name);
/// Sessions of that person end, and the log of the accounts tells it. Throws Refusal: nobody of that name is
/// on record, a person without a role, a password that is too short, a lock without a password.
AccountSheet write_account(Office &office, AccountFile &accounts, const AccountRequest &request);

/// Somebody who may sign in, as it stands now: what is compared to tell whether a session still holds.
struct SignedIn {
    std::string person;
    std::vector<std::string> roles;
    std::int64_t changed = 0; ///< of the account
    friend bool operator==(const SignedIn &, const SignedIn &) = default;
};
/// Nothing if there is no such account, it is locked, or its person has no role.
std::optional<SignedIn> may_sign_in(Office &office, AccountFile &accounts, const std::string &name);
/// The same if the password is right. It takes as long for a name that is none.
std::optional<SignedIn> signed_in_by(Office &office, AccountFile &accounts, const std::string &name,
                                     const std::string &password);

/// Marks of welders that a person is: the one that the name is, or the one enrolled under that name. Where
/// several welders have the name, none: no one of them is to see another's.
std::vector<std::string> own_marks(Office &office, const std::string &person);

} // namespace beadbook
