#include "operations/accounts.hpp"

#include "measure/text.hpp"
#include "operations/password.hpp"

namespace beadbook {
namespace {

PersonRecord person_on_record(Office &office, const std::string &name) {
    const auto person = person_named(office, name);
    if (!person)
        throw refused("'" + shown(name) + "' is not on record" + did_you_mean(name, office.book().people()))
            .mend({"person", {name}, {"role"}});
    return *person;
}

/// A line of the log: when, who, whose account, and what was done with it; never the password.
std::string told_of(Office &office, const AccountRequest &request, const std::string &person) {
    const std::string by = checked_text(request.by, "name");
    if (by.empty()) throw refused("who changes this account?").give("by");
    std::vector<std::string> done;
    if (request.password) done.emplace_back("password set");
    if (request.locked) done.emplace_back(*request.locked ? "locked" : "unlocked");
    return office.outside().now() + "\t" + by + "\t" + person + "\t" + joined(done, ", ");
}

} // namespace

AccountSheet show_account(Office &office, AccountFile &accounts, const std::string &name) {
    const PersonRecord person = person_on_record(office, name);
    const auto account = accounts.find(person.name);
    return {person.name, person.roles, account.has_value(), account && account->locked};
}

AccountSheet write_account(Office &office, AccountFile &accounts, const AccountRequest &request) {
    const PersonRecord person = person_on_record(office, request.name);
    if (person.roles.empty())
        throw refused(person.name + " has no role, and could do nothing at the bench")
            .mend({"person", {person.name}, {"role"}});
    auto account = accounts.find(person.name);
    if (!account) {
        if (!request.password) throw refused(person.name + " has no password yet").give("password");
        account = Account{person.name, "", false, 0};
    }
    if (request.password) account->hash = hash_of_password(*request.password);
    if (request.locked) account->locked = *request.locked;
    accounts.keep(*account, told_of(office, request, person.name));
    return show_account(office, accounts, person.name);
}

std::optional<SignedIn> may_sign_in(Office &office, AccountFile &accounts, const std::string &name) {
    const auto person = person_named(office, name);
    const auto account = person ? accounts.find(person->name) : std::nullopt;
    if (!account || account->locked || person->roles.empty()) return std::nullopt;
    return SignedIn{person->name, person->roles, account->changed};
}

std::optional<SignedIn> signed_in_by(Office &office, AccountFile &accounts, const std::string &name,
                                     const std::string &password) {
    const auto person = person_named(office, name);
    const auto account = person ? accounts.find(person->name) : std::nullopt;
    if (!is_password(password, account ? account->hash : "")) return std::nullopt;
    // Read again, because the password may have been changed while it was tried.
    const auto now = may_sign_in(office, accounts, name);
    return now && now->changed == account->changed ? now : std::nullopt;
}

std::vector<std::string> own_marks(Office &office, const std::string &person) {
    std::vector<std::string> by_name;
    for (const auto &mark : office.book().welders()) {
        if (same_word(mark, person)) return {mark};
        if (same_word(office.book().welder(mark).record.name, person)) by_name.push_back(mark);
    }
    if (by_name.size() > 1) return {};
    // Somebody who is not enrolled, and stands on coupons by a mark alone.
    if (by_name.empty() && !office.book().coupons_of(person).empty()) return {person};
    return by_name;
}

} // namespace beadbook
