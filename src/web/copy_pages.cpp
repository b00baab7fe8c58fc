// The shop's own copy of the standards: what sets leave blank, what is confirmed, and the forms that enter
// it.
#include "report/owners_copy_document.hpp"
#include "web/form.hpp"
#include "web/keeper_parts.hpp"
#include "web/linked_rows.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"

#include "criteria/shipped.hpp"

namespace beadbook {
namespace {

const std::string copy_path = "/keeper/copy";
std::string copy_path_of(const std::string &set) { return copy_path + "/" + url_word(set); }

/// A set that is shipped: an address is no way to a file of this machine.
std::string set_of_page(const Visit &visit) {
    const std::string &name = visit.word("set");
    if (means_file(name)) throw DataError("a file has no page here; only what is shipped does");
    return name;
}

/// As it stands in the record; where there is none, all is open.
CopySheet sheet_of(Visit &visit, const std::string &set) {
    if (visit.has_record()) return copy_sheet(visit.office(), set);
    CopySheet out;
    out.set = visit.catalogue().criteria(set);
    return out;
}

/// Which of the forms of the page is meant.
enum class Deed : std::uint8_t { fill, confirm, withdraw };
struct Refused {
    Deed deed;
    const Refusal &why;
};

void add_where_read(Form &form, const std::string &second_help) {
    form.add({"edition", "Edition of the copy", "", Control::Kind::text, "AWS D17.1:2017, say"});
    form.add({"page", "Page"});
    form.add({"second", "Second person", "", Control::Kind::text, second_help});
}

Control class_control(const CriteriaSet &set) {
    std::vector<std::string> classes{""};
    for (const auto &id : set.class_names()) classes.push_back(id);
    return {"class", "Class", "", Control::Kind::choice, "", classes};
}

Control why_control() {
    return {"why", "The reason", "", Control::Kind::text,
            "Of a change; it is kept with what was said before."};
}

std::string form_of(Visit &visit, const CriteriaSet &set, Deed deed, const std::optional<Refused> &refused) {
    const Refusal *why = refused && refused->deed == deed ? &refused->why : nullptr;
    const char *names[] = {"fill", "confirm", "withdraw"};
    Form form(visit, copy_path_of(set.name) + "/" + names[static_cast<std::size_t>(deed)], why);
    std::vector<std::string> blanks{""}, rules{""};
    for (const auto &one : set.blanks) blanks.push_back(one.id);
    for (const auto &one : set.rules) rules.push_back(one.id);
    switch (deed) {
    case Deed::fill:
        form.add({"blank", "Blank", "", Control::Kind::choice, "", blanks});
        form.add(class_control(set));
        form.add({"value", "Value", "", Control::Kind::text, "With its unit, as it is printed: 0.060 in"});
        add_where_read(form, "Another one than who enters it; without a second person nothing is filled.");
        return form.add(why_control()).html("Fill");
    case Deed::confirm:
        form.add({"rule", "Rule", "", Control::Kind::choice, "", rules});
        form.add(class_control(set));
        add_where_read(form, "Who countersigns, if somebody does.");
        return form.add(why_control()).html("Confirm");
    case Deed::withdraw: break;
    }
    for (const auto &one : set.blanks) rules.push_back(one.id);
    form.add({"rule", "Rule or blank", "", Control::Kind::choice, "", rules});
    form.add(class_control(set));
    return form.add(why_control()).html("Withdraw");
}

Answer copy_page(Visit &visit, const std::string &name, const std::optional<Refused> &refused) {
    const CopySheet sheet = sheet_of(visit, name);
    std::string main = "<p class=\"deeds\">" + button_to(visit, copy_path, "All sets") +
                       button_to(visit, "/keeper/criteria/" + url_word(name), "The set") + "</p>\n" +
                       wide_tables(part_of(document_of(sheet), "copy"));
    if (!sheet.set->blanks.empty())
        main += "<h2>Fill a blank</h2>\n" + form_of(visit, *sheet.set, Deed::fill, refused);
    main += "<h2>Confirm a limit</h2>\n" + form_of(visit, *sheet.set, Deed::confirm, refused) +
            "<h2>Withdraw what was filled or confirmed</h2>\n" +
            form_of(visit, *sheet.set, Deed::withdraw, refused);
    return page_of(visit, {"The shop's copy: " + sheet.set->name,
                           main,
                           keeper_path,
                           {},
                           refused ? status_of(refused->why, true) : 200});
}

Answer copies_page(Visit &visit) {
    std::vector<CopySheet> sheets;
    if (visit.has_record())
        sheets = copy_sheets(visit.office());
    else
        for (const auto &name : shipped_sets())
            if (!visit.catalogue().criteria(name)->blanks.empty()) sheets.push_back(sheet_of(visit, name));
    std::vector<std::string> names;
    for (const auto &one : sheets) names.push_back(one.set->name);
    return page_of(visit, {"Blanks and confirmed limits",
                           "<h1>Blanks and confirmed limits</h1>\n<p class=\"deeds\">" +
                               button_to(visit, keeper_path, "Keeper") + "</p>\n" +
                               linked_rows(document_of(sheets), names, copy_path_of, "copies"),
                           keeper_path});
}

std::vector<std::string> class_sent(const Visit &visit) {
    const std::string id = visit.field("class");
    return id.empty() ? std::vector<std::string>{} : std::vector<std::string>{id};
}

/// Enters it; a refusal is shown in the form that was sent.
template <class Work>
Answer enter_copy(Visit &visit, Deed deed, Work work) {
    const std::string set = set_of_page(visit);
    try {
        visit.may_begin_record();
        const std::string next = copy_path_of(set);
        return visit.enter(next, [&](Writing &w) { return work(w, set); });
    } catch (const Refusal &e) {
        if (visit.request.part || e.kind() == Refusal::Kind::record) return refusal_page(visit, e);
        return copy_page(visit, set, Refused{deed, e});
    }
}

Answer fill_by_form(Visit &visit) {
    return enter_copy(visit, Deed::fill, [&](Writing &w, const std::string &set) {
        auto done = fill_blank(w, {set, visit.field("blank"), visit.field("value"), class_sent(visit),
                                   visit.field("edition"), visit.field("page"), visit.field("second"),
                                   visit.field("why")});
        done.notes.insert(done.notes.begin(), "blank " + done.value.blank + " is filled");
        return std::move(done.notes);
    });
}

Answer confirm_by_form(Visit &visit) {
    return enter_copy(visit, Deed::confirm, [&](Writing &w, const std::string &set) {
        auto done = confirm_limit(w, {set, visit.field("rule"), class_sent(visit), visit.field("edition"),
                                      visit.field("page"), visit.field("second"), visit.field("why")});
        done.notes.insert(done.notes.begin(), done.value.part + " is confirmed");
        return std::move(done.notes);
    });
}

Answer withdraw_by_form(Visit &visit) {
    return enter_copy(visit, Deed::withdraw, [&](Writing &w, const std::string &set) {
        auto done = retract_copy(w, {set, visit.field("rule"), class_sent(visit), visit.field("why")});
        done.notes.insert(done.notes.begin(), done.value.part + " is withdrawn; the old entry is kept");
        return std::move(done.notes);
    });
}

} // namespace

PageFamily copy_pages() {
    return {
        "",
        "",
        {{"GET", copy_path, copies_page},
         {"GET", copy_path + "/:set", [](Visit &v) { return copy_page(v, set_of_page(v), std::nullopt); }},
         {"POST", copy_path + "/:set/fill", fill_by_form},
         {"POST", copy_path + "/:set/confirm", confirm_by_form},
         {"POST", copy_path + "/:set/withdraw", withdraw_by_form}}};
}

} // namespace beadbook
