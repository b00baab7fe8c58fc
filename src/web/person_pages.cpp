// Who is at the bench, and letting another browser in.
#include "facts/coupon_record.hpp"
#include "measure/text.hpp"
#include "web/form.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

/// The name is what was signed in with; it changes by signing out.
Answer account_of_visitor(Visit &visit, const Refusal *refused) {
    const std::string main = "<h1>" + escaped(visit.person()) + "</h1>\n<p>Signed in; " +
                             escaped(listed(visit.account()->roles)) +
                             ". What is entered from now on is entered under this name.</p>\n" +
                             deed(visit, "/sign-out", "Sign out") + "<h2>Change the password</h2>\n" +
                             Form(visit, "/person/password", refused)
                                 .add({"old", "The password until now", "", Control::Kind::password})
                                 .add({"password", "The new one", "", Control::Kind::password})
                                 .add({"again", "The new one once more", "", Control::Kind::password})
                                 .html("Change the password");
    return page_of(visit, {"Signed in", main, "", {}, refused ? status_of(*refused, true) : 200});
}

Answer sign_out(Visit &visit) {
    visit.bench().sessions().end(visit.session());
    return see_other("/sign-in");
}

/// Whoever finds a tablet signed in does not take the account over by that: the old password is asked.
Answer change_password(Visit &visit) {
    try {
        const std::string word = visit.request.form.text("password");
        if (word != visit.request.form.text("again"))
            throw refused("the new password is not the same twice").at("again");
        const std::string address = visit.request.address;
        if (!visit.bench().attempts().begin(visit.person(), address, visit.bench().world().clock()))
            throw refused("too many attempts failed; wait a quarter of an hour").at("old");
        AccountFile accounts(visit.bench().world().book);
        if (!signed_in_by(visit.office(), accounts, visit.person(), visit.request.form.text("old")))
            throw refused("that is not the password until now").at("old");
        visit.bench().attempts().succeeded(visit.person(), address);
        write_account(visit.office(), accounts, {visit.person(), word, {}, visit.person()});
        return sign_out(visit);
    } catch (const Refusal &e) {
        return account_of_visitor(visit, &e);
    }
}

Answer show_person_form(Visit &visit, const Refusal *refused) {
    if (visit.account()) return account_of_visitor(visit, refused);
    std::vector<std::string> known;
    if (visit.has_record()) known = visit.office().book().people();
    const std::string main =
        "<h1>Who is at the bench?</h1>\n<p>What is entered from now on is entered under this name.</p>\n" +
        Form(visit, "/person", refused)
            .add({"by", "Name", visit.person(), Control::Kind::text, "", known})
            .html("Sit down") +
        "<h2>Another browser</h2>\n<p>A link lets one browser of this machine in, once.</p>\n" +
        deed(visit, "/link", "Make a link");
    return page_of(visit, {"Who is at the bench?", main, "", {}, refused ? status_of(*refused, true) : 200});
}

Answer sit_down(Visit &visit) {
    try {
        const std::string name = checked_text(visit.field("by"), "name");
        if (name.empty()) throw refused("who does this?").give("by");
        visit.bench().sessions().sit_down(visit.session(), name);
        return see_other("/");
    } catch (const Refusal &e) {
        return show_person_form(visit, &e);
    }
}

Answer make_link(Visit &visit) {
    return page_of(visit, {"A link", "<h1>A link for one browser</h1>\n<p class=\"wide\"><code>" +
                                         escaped(visit.bench().link()) + "</code></p>\n"});
}

} // namespace

PageFamily person_pages() {
    return {"",
            "",
            {{"GET", "/person", [](Visit &v) { return show_person_form(v, nullptr); }},
             {"POST", "/person", sit_down},
             {"POST", "/link", make_link},
             {"POST", "/person/password", change_password},
             {"POST", "/sign-out", sign_out}}};
}

} // namespace beadbook
