#include "web/selection_fields.hpp"

#include "criteria/shipped.hpp"
#include "measure/text.hpp"
#include "operations/known_words.hpp"
#include "render/html.hpp"
#include "web/refusal_page.hpp"

#include <algorithm>

namespace beadbook {
namespace {

std::string said_in(const SentFields &fields, const std::string &name) {
    return std::string(trimmed(fields.text(name)));
}

std::optional<Day> day_said(const SentFields &fields, const std::string &name) {
    const std::string text = said_in(fields, name);
    if (text.empty()) return std::nullopt;
    try {
        return parse_day(text);
    } catch (const Refusal &e) {
        throw refused(e.what()).at(name);
    }
}

template <class Value>
std::vector<std::string> names_of_all(const std::vector<Value> &values) {
    std::vector<std::string> out;
    for (const Value value : values) out.emplace_back(name_of(value));
    return out;
}

template <class Value>
std::optional<Value> one_said(const SentFields &fields, const std::string &name,
                              const std::vector<Value> &values) {
    const std::string text = said_in(fields, name);
    if (text.empty()) return std::nullopt;
    for (const Value value : values)
        if (same_word(text, name_of(value))) return value;
    throw refused("'" + shown(text) + "'; expected " + listed(names_of_all(values), "or")).at(name);
}

const std::vector<Verdict> verdicts{Verdict::accept, Verdict::reject, Verdict::cannot_say};
const std::vector<GradeState> grade_states{GradeState::none, GradeState::again, GradeState::passed,
                                           GradeState::failed};

/// "none" alone would not say of what.
std::string grade_choice(const std::string &name) {
    if (name == name_of(GradeState::none)) return "none yet";
    return name == name_of(GradeState::again) ? "to be given again" : name;
}

/// The controls of one form.
class SelectionControls {
public:
    SelectionControls(const SentFields &sent, const Refusal *refused) : sent_(sent), refused_(refused) {}

    void text(const std::string &name, const std::string &label, const std::vector<std::string> &known = {}) {
        std::string list, input = "<input autocomplete=\"off\"" + named(name) + value_of(name);
        if (!known.empty()) {
            input += " list=\"l-" + name + "\"";
            list = "<datalist id=\"l-" + name + "\">";
            for (const auto &one : known) list += "<option value=\"" + escaped(one) + "\"></option>";
            list += "</datalist>";
        }
        put(name, label, input + ">" + list);
    }
    void day(const std::string &name, const std::string &label) {
        put(name, label, "<input type=\"date\"" + named(name) + value_of(name) + ">");
    }
    void choice(const std::string &name, const std::string &label, const std::vector<std::string> &values,
                std::string (*called)(const std::string &) = nullptr) {
        std::string out = "<select" + named(name) + "><option value=\"\">all</option>";
        for (const auto &one : values)
            out += "<option value=\"" + escaped(one) + "\"" +
                   (same_word(said_in(sent_, name), one) ? " selected" : "") + ">" +
                   escaped(called ? called(one) : one) + "</option>";
        put(name, label, out + "</select>");
    }
    void tick(const std::string &name, const std::string &label) {
        out_ += "<div class=\"field tick\"><input type=\"checkbox\" value=\"yes\"" + named(name) +
                (said_in(sent_, name).empty() ? "" : " checked") + "><label for=\"s-" + name + "\">" +
                escaped(label) + "</label></div>\n";
    }
    std::string html() const { return out_; }
    bool marked() const { return marked_; }

private:
    bool is_refused(const std::string &name) const { return refused_ && refused_->field() == name; }
    std::string named(const std::string &name) const {
        return " id=\"s-" + name + "\" name=\"" + name + "\"" +
               (is_refused(name) ? " aria-invalid=\"true\" aria-describedby=\"e-" + name + "\"" : "");
    }
    std::string value_of(const std::string &name) const {
        return " value=\"" + escaped(said_in(sent_, name)) + "\"";
    }
    void put(const std::string &name, const std::string &label, const std::string &control) {
        out_ += "<div class=\"field\"><label for=\"s-" + name + "\">" + escaped(label) + "</label>" + control;
        if (is_refused(name)) {
            marked_ = true;
            out_ += "<div id=\"e-" + name + "\">" + refusal_html(*refused_) + "</div>";
        }
        out_ += "</div>\n";
    }

    const SentFields &sent_;
    const Refusal *refused_;
    std::string out_;
    bool marked_ = false;
};

} // namespace

Selection selection_in(const SentFields &fields) {
    Selection out{said_in(fields, "welder"),  said_in(fields, "cohort"), said_in(fields, "class"),
                  said_in(fields, "process"), day_said(fields, "from"),  day_said(fields, "to")};
    if (const std::string method = said_in(fields, "method"); !method.empty()) {
        out.method = exam_named(method);
        if (!out.method)
            throw refused("'" + shown(method) + "' is no exam; expected " + exam_names_text()).at("method");
    }
    out.verdict = one_said(fields, "verdict", verdicts);
    out.grade = one_said(fields, "graded", grade_states);
    out.unfinished = !said_in(fields, "unfinished").empty();
    out.criteria = said_in(fields, "for-criteria");
    return out;
}

std::string query_with(const std::string &query, const std::string &name, const std::string &value) {
    return query + (query.empty() ? "?" : "&") + name + "=" + url_word(value);
}

std::string query_of(const Selection &of) {
    std::string out;
    const auto say = [&](const std::string &name, const std::string &value) {
        if (!value.empty()) out = query_with(out, name, value);
    };
    say("welder", of.welder);
    say("cohort", of.cohort);
    say("for-criteria", of.criteria);
    say("class", of.class_id);
    say("process", of.process);
    say("from", of.from ? print(*of.from) : "");
    say("to", of.to ? print(*of.to) : "");
    say("method", of.method ? std::string(name_of(*of.method)) : "");
    say("verdict", of.verdict ? std::string(name_of(*of.verdict)) : "");
    say("graded", of.grade ? std::string(name_of(*of.grade)) : "");
    say("unfinished", of.unfinished ? "yes" : "");
    return out;
}

std::string selection_form(const std::string &path, const SentFields &sent, Catalogue &catalogue,
                           const Refusal *refused, const std::string &more) {
    SelectionControls controls(sent, refused);
    controls.text("cohort", "Cohort");
    controls.text("welder", "Welder");
    controls.day("from", "Welded from");
    controls.day("to", "Welded until");
    controls.text("process", "Process", known_test_words(catalogue, Trait::process));
    controls.text("for-criteria", "Criteria", shipped_sets());
    controls.text("class", "Class sought");
    controls.choice("verdict", "Verdict", names_of_all(verdicts));
    controls.choice("graded", "Grade", names_of_all(grade_states), grade_choice);
    std::vector<std::string> methods;
    for (const auto &method : method_table) methods.emplace_back(method.name);
    controls.choice("method", "Examined by", methods);
    controls.tick("unfinished", "Not examined to the end");
    return "<details class=\"selection\"" + std::string(refused ? " open" : "") +
           "><summary>Which coupons</summary><form method=\"get\" action=\"" + escaped(path) +
           "\"><div class=\"fields\">" + controls.html() + more + "</div>" +
           (refused && !controls.marked() ? refusal_html(*refused) : "") +
           "<p class=\"deeds\"><button>Show these</button>" +
           (sent.empty() ? std::string()
                         : "<a class=\"button\" href=\"" + escaped(path) + "\">All again</a>") +
           "</p></form></details>\n";
}

} // namespace beadbook
