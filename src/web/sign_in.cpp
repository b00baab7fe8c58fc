// Signing in, and what a role may do: the parts of the bench that are there for tablets.
#include "operations/accounts.hpp"
#include "web/bench.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"
#include "web/roles.hpp"

#include <algorithm>

namespace beadbook {
namespace {

Answer sign_in_page(int status, const std::string &said) {
    return bare_page(
        status, "Sign in", said,
        "<form method=\"post\" action=\"/sign-in\"><div class=\"field\"><label for=\"f-name\">Name</label>"
        "<input id=\"f-name\" name=\"name\" autocomplete=\"username\" required></div><div "
        "class=\"field\"><label for=\"f-password\">Password</label><input id=\"f-password\" "
        "type=\"password\" "
        "name=\"password\" autocomplete=\"current-password\" required></div><p "
        "class=\"deeds\"><button>Sign in</button></p></form>\n");
}

/// One answer for what is another's and for what is not there: nobody learns which marks there are.
Refusal not_yours() { return refused("there is nothing of yours under this address"); }

/// Where a welder is sent on from an address of the others; empty if the address is his own. Throws Refusal:
/// it is not his, or there is none.
std::string own_page(Visit &visit, const std::vector<std::string> &own) {
    const auto is_own = [&](const std::string &mark) {
        return std::find(own.begin(), own.end(), mark) != own.end();
    };
    if (visit.has_word("welder") && !is_own(visit.word("welder"))) throw not_yours();
    if (!visit.has_word("mark")) return visit.request.path == "/" ? "/welders" : "";
    const std::string &mark = visit.word("mark");
    if (!visit.office().book().knows_coupon(mark)) throw not_yours();
    const std::string welder = visit.office().coupon(mark).record.get("welder");
    if (!is_own(welder) || (visit.has_word("welder") && visit.word("welder") != welder)) throw not_yours();
    return visit.has_word("welder") ? "" : "/welder/" + url_word(welder) + "/coupon/" + url_word(mark);
}

} // namespace

Answer Bench::sign_in(const Request &request) {
    if (request.method == "GET") return sign_in_page(200, "With the name that is on record for you.");
    // There is no session yet whose word could be repeated: the browser must say where the form came from.
    if (request.method != "POST" || request.origin.empty() || !is_our_origin(request.origin))
        return bare_page(403, "Nobody is signed in", "Another page tried to sign in here.");
    if (request.too_long) return bare_page(413, "Nobody is signed in", "More was sent than the bench takes.");
    const std::string name = request.form.text("name");
    const auto now = world_.clock();
    if (!attempts_.begin(name, request.address, now)) {
        Answer out =
            sign_in_page(429, "Too many attempts failed. Wait a quarter of an hour, then try again.");
        out.headers.emplace_back("Retry-After", std::to_string(Attempts::window.count()));
        return out;
    }
    try {
        Book book(world_.book, Ledger::Mode::read);
        Catalogue catalogue(world_.outside);
        Office office(book, catalogue);
        AccountFile accounts(world_.book);
        const auto account = signed_in_by(office, accounts, name, request.form.text("password"));
        if (!account)
            return sign_in_page(403, "Name and password do not belong together, or the account is locked.");
        attempts_.succeeded(name, request.address);
        sessions_.end(request.cookies.text(cookie()));
        Answer out = see_other("/");
        out.headers.emplace_back("Set-Cookie", cookie() + "=" + sessions_.sign_in(*account, now).id +
                                                   "; Secure; HttpOnly; SameSite=Strict; Path=/");
        return out;
    } catch (const Refusal &) {
        // What is wrong with the record is nothing for somebody unknown.
        return sign_in_page(503, "The record cannot be read just now. Try again, or tell the keeper.");
    }
}

Answer Bench::checked_by_role(Visit &visit, const Route &route) {
    AccountFile accounts(world_.book);
    const auto now = may_sign_in(visit.office(), accounts, visit.person());
    if (!visit.account() || now != *visit.account()) {
        sessions_.end(visit.session());
        Answer ended = bare_page(403, "This session has ended",
                                 "Password, roles or account were changed. Sign in again.",
                                 "<p>" + link_to("/sign-in", "Sign in") + "</p>");
        ended.headers.emplace_back("X-Bench-Wants", "sign-in");
        return ended;
    }
    const Access access = access_to(route.method, route.pattern, now->roles);
    if (access == Access::none) {
        const Refusal no = refused("this is not for the role that you have: " + listed(now->roles));
        return page_of(visit, {"Not for this role",
                               "<h1>Not for this role</h1>\n" + refusal_html(no),
                               "",
                               {},
                               visit.writes() ? 422 : 403});
    }
    if (access == Access::own) {
        visit.only(own_marks(visit.office(), visit.person()));
        if (const std::string page = own_page(visit, *visit.own()); !page.empty()) return see_other(page);
    }
    return route.handler(visit);
}

} // namespace beadbook
