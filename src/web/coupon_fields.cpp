#include "web/coupon_fields.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"
#include "operations/known_words.hpp"
#include "operations/reading.hpp"
#include "render/html.hpp"
#include "web/refusal_page.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// What nearly every coupon has; the order is that of the form.
const std::vector<std::string> first_fields{"criteria", "class",       "welder",   "joint",
                                            "form",     "process",     "position", "thickness",
                                            "diameter", "weld-length", "units",    "welded"};

/// weld-length: "Weld length".
std::string label_of(std::string name) {
    std::replace(name.begin(), name.end(), '-', ' ');
    if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') name[0] = static_cast<char>(name[0] - 'a' + 'A');
    return name;
}

std::vector<std::string> names_of(const std::vector<std::shared_ptr<const CriteriaSet>> &sets) {
    std::vector<std::string> out;
    for (const auto &set : sets) out.push_back(set->name);
    return out;
}

std::vector<std::string> suggestions(const std::string &field, Catalogue &catalogue,
                                     const CouponRecord &known) {
    if (field == "criteria") return names_of(all_criteria(catalogue));
    if (field == "process") return known_test_words(catalogue, Trait::process);
    if (field == "position") return known_test_words(catalogue, Trait::position);
    if (field != "class" || known.get("criteria").empty()) return {};
    try {
        return catalogue.criteria(known.get("criteria"))->class_names();
    } catch (const Refusal &) {
        return {}; // a file that is not there any more suggests nothing
    }
}

/// Of a set in a file of this machine, whose path is nothing for a page: which one it is.
std::string title_of_file(Catalogue &catalogue, const std::string &criteria) {
    if (!means_file(criteria)) return "";
    try {
        return catalogue.criteria(criteria)->title;
    } catch (const Refusal &) {
        return "a file that is not there any more";
    }
}

Control control_of(const CouponField &field, Catalogue &catalogue, const CouponRecord &known) {
    Control out{field.name,          label_of(field.name),   known.get(field.name),
                Control::Kind::text, page_words(field.help), suggestions(field.name, catalogue, known)};
    if (field.name == "criteria") {
        out.value = criteria_name(out.value);
        if (const std::string title = title_of_file(catalogue, known.get("criteria")); !title.empty())
            out.help = out.value + ": " + title;
    }
    if (field.kind == CouponField::Kind::fact) {
        out.kind = Control::Kind::choice;
        out.choices = info(field.fact).words;
        out.choices.insert(out.choices.begin(), "");
    } else if (field.kind == CouponField::Kind::unit) {
        out.kind = Control::Kind::choice;
        out.choices = {"", "in", "mm"};
    } else if (field.kind == CouponField::Kind::day) {
        out.kind = Control::Kind::day;
    }
    return out;
}

} // namespace

void add_coupon_fields(Form &form, Catalogue &catalogue, const CouponRecord &known) {
    form.put("<div class=\"fields\">");
    for (const auto &name : first_fields) form.add(control_of(*coupon_field(name), catalogue, known));
    std::vector<const CouponField *> more;
    for (const auto &field : coupon_fields())
        if (std::find(first_fields.begin(), first_fields.end(), field.name) == first_fields.end())
            more.push_back(&field);
    // What is filled in already is never hidden.
    const bool filled = std::any_of(
        more.begin(), more.end(), [&](const CouponField *field) { return !known.get(field->name).empty(); });
    form.put("</div>\n<details" + std::string(filled ? " open" : "") +
             "><summary>More about the coupon</summary><div class=\"fields\">");
    for (const CouponField *field : more) form.add(control_of(*field, catalogue, known));
    form.put("</div></details>\n");
}

std::map<std::string, std::string> coupon_fields_in(const Visit &visit, const CouponRecord &known) {
    std::map<std::string, std::string> out;
    for (const auto &field : coupon_fields())
        if (const std::string value = visit.field(field.name); !value.empty()) out[field.name] = value;
    // A file is shown by its name alone: what stands there unchanged is that file.
    if (const std::string criteria = known.get("criteria");
        !criteria.empty() && visit.field("criteria") == criteria_name(criteria))
        out["criteria"] = criteria;
    return out;
}

} // namespace beadbook
