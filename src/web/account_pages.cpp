// How people sign in: the keeper gives passwords, and locks accounts.
#include "report/account_document.hpp"
#include "web/form.hpp"
#include "web/keeper_parts.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

Answer account_page(Visit &visit, const Refusal *refused) {
    AccountFile accounts(visit.bench().world().book);
    const AccountSheet sheet = show_account(visit.office(), accounts, visit.word("name"));
    const std::string path = "/keeper/account/" + url_word(sheet.person);
    std::string main = "<h1>How " + escaped(sheet.person) + " signs in</h1>\n" +
                       part_of(document_of(sheet), "account") +
                       Form(visit, path, refused)
                           .add({"password", "A password", "", Control::Kind::password,
                                 "At least 10 characters; it is changed by its owner after signing in."})
                           .html("Give this password");
    if (sheet.has_password)
        main += deed(visit, path, sheet.locked ? "Unlock" : "Lock", {{"lock", sheet.locked ? "no" : "yes"}});
    return page_of(visit, {"How " + sheet.person + " signs in",
                           main,
                           keeper_path,
                           {},
                           refused ? status_of(*refused, true) : 200});
}

Answer change_account(Visit &visit) {
    try {
        visit.must_sit_still();
        AccountRequest request{visit.word("name"), {}, {}, visit.person()};
        if (visit.request.form.has("lock"))
            request.locked = visit.field("lock") == "yes";
        else
            request.password = visit.request.form.text("password");
        AccountFile accounts(visit.bench().world().book);
        const AccountSheet sheet = write_account(visit.office(), accounts, request);
        visit.tell({request.password ? "the password is changed"
                    : sheet.locked   ? "the account is locked"
                                     : "the account is open again"});
        return see_other("/keeper/account/" + url_word(sheet.person));
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record || e.field() != "password") throw;
        return account_page(visit, &e);
    }
}

} // namespace

PageFamily account_pages() {
    return {"",
            "",
            {{"GET", "/keeper/account/:name", [](Visit &v) { return account_page(v, nullptr); }},
             {"POST", "/keeper/account/:name", change_account}}};
}

} // namespace beadbook
