#include "web/form.hpp"

#include "render/html.hpp"
#include "web/refusal_page.hpp"

namespace beadbook {
namespace {

std::string hidden_field(const std::string &name, const std::string &value) {
    return "<input type=\"hidden\" name=\"" + escaped(name) + "\" value=\"" + escaped(value) + "\">";
}

std::string opening(const std::string &action, const Visit &visit, const std::string &attributes) {
    return "<form method=\"post\" action=\"" + escaped(action) + "\"" +
           (attributes.empty() ? "" : " " + attributes) + ">" + hidden_field("token", visit.token()) +
           hidden_field("key", secret_word()) + // pressed twice, it is entered once
           hidden_field("sits", visit.person());
}

std::string options_of(const Control &control, const std::string &value) {
    std::string out;
    for (const auto &choice : control.choices)
        out += "<option" + std::string(choice == value ? " selected" : "") + " value=\"" + escaped(choice) +
               "\">" + (choice.empty() ? "not said" : escaped(choice)) + "</option>";
    return out;
}

std::string input_of(const Control &c, const std::string &value, const std::string &more) {
    const std::string named = "id=\"f-" + escaped(c.name) + "\" name=\"" + escaped(c.name) + "\"" + more;
    switch (c.kind) {
    case Control::Kind::choice: return "<select " + named + ">" + options_of(c, value) + "</select>";
    case Control::Kind::lines: return "<textarea rows=\"4\" " + named + ">" + escaped(value) + "</textarea>";
    case Control::Kind::tick:
        return "<input type=\"checkbox\" value=\"yes\" " + named + (value.empty() ? "" : " checked") + ">";
    case Control::Kind::day: return "<input type=\"date\" " + named + " value=\"" + escaped(value) + "\">";
    case Control::Kind::number:
        return "<input inputmode=\"numeric\" pattern=\"[0-9]*\" " + named + " value=\"" + escaped(value) +
               "\">";
    // What was sent does not come back.
    case Control::Kind::password: return "<input type=\"password\" autocomplete=\"off\" " + named + ">";
    // The form is to be sent in parts then.
    case Control::Kind::photo:
        return "<input type=\"file\" accept=\"image/*\" capture=\"environment\" required " + named + ">";
    case Control::Kind::text: break;
    }
    if (c.choices.empty())
        return "<input autocomplete=\"off\" " + named + " value=\"" + escaped(value) + "\">";
    return "<input autocomplete=\"off\" list=\"l-" + escaped(c.name) + "\" " + named + " value=\"" +
           escaped(value) + "\"><datalist id=\"l-" + escaped(c.name) + "\">" + options_of(c, "") +
           "</datalist>";
}

} // namespace

Form &Form::add(const Control &c) {
    const bool refused = refused_ && refused_->field() == c.name;
    marked_ = marked_ || refused;
    // A tick that was taken away is not sent; any other field that is not was not asked.
    const bool sent = visit_.writes() && (c.kind == Control::Kind::tick || visit_.request.form.has(c.name));
    const std::string value = sent && !c.anew ? visit_.request.form.text(c.name) : c.value;
    std::string more, about;
    if (!c.help.empty()) about += "h-" + c.name;
    if (refused) about += (about.empty() ? "" : " ") + std::string("e-") + c.name;
    if (!about.empty()) more += " aria-describedby=\"" + escaped(about) + "\"";
    if (refused) more += " aria-invalid=\"true\" autofocus";
    const std::string label = "<label for=\"f-" + escaped(c.name) + "\">" + escaped(c.label) + "</label>";
    inside_ +=
        "<div class=\"field" + std::string(c.kind == Control::Kind::tick ? " tick" : "") + "\">" +
        (c.kind == Control::Kind::tick ? input_of(c, value, more) + label : label + input_of(c, value, more));
    if (!c.help.empty())
        inside_ += "<p class=\"help\" id=\"h-" + escaped(c.name) + "\">" + escaped(c.help) + "</p>";
    if (refused) inside_ += "<div id=\"e-" + escaped(c.name) + "\">" + refusal_html(*refused_) + "</div>";
    inside_ += "</div>\n";
    return *this;
}

Form &Form::hidden(const std::string &name, const std::string &value) {
    inside_ += hidden_field(name, value);
    return *this;
}

Form &Form::seen(std::int64_t entry) {
    const bool repeated = refused_ && refused_->field() != "seen" && visit_.request.form.has("seen");
    return hidden("seen", repeated ? visit_.field("seen") : std::to_string(entry));
}

Form &Form::put(const std::string &html) {
    inside_ += html;
    return *this;
}

std::string Form::html(const std::string &button, const std::string &attributes) const {
    if (!visit_.may("POST", action_)) return "";
    // What is asked about at first sight, or lacks what the form does not ask for, is asked for here.
    const std::string asked = refused_ && !marked_
                                  ? "<div class=\"asked\" tabindex=\"-1\" autofocus>" +
                                        refusal_html(*refused_) + asked_for(visit_, *refused_) + "</div>\n"
                                  : "";
    return opening(action_, visit_, attributes) + inside_ + asked +
           (button.empty() ? "" : "<p class=\"deeds\"><button>" + escaped(button) + "</button></p>") +
           "</form>\n";
}

std::string sent_again(Visit &visit, const Refusal &asked, const std::string &button) {
    Form form(visit, visit.request.path, &asked);
    for (const auto &[name, value] : visit.request.form.pairs())
        if (name != "token" && name != "key" && name != "sits" && !is_question(name))
            form.hidden(name, value);
    return form.html(button);
}

std::string deed(const Visit &visit, const std::string &action, const std::string &button,
                 const std::vector<std::pair<std::string, std::string>> &fields, const std::string &look) {
    if (!visit.may("POST", action)) return "";
    std::string out = opening(action, visit, "class=\"deed\"");
    for (const auto &[name, value] : fields) out += hidden_field(name, value);
    return out + "<button" + (look.empty() ? "" : " class=\"" + look + "\"") + ">" + escaped(button) +
           "</button></form>\n";
}

} // namespace beadbook
