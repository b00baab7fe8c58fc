// Who is at the bench, and letting another browser in.
#include "facts/coupon_record.hpp"
#include "web/form.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

Answer show_person_form(Visit &visit, const Refusal *refused) {
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
             {"POST", "/link", make_link}}};
}

} // namespace beadbook
