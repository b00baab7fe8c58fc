#include "technique/practice.hpp"

#include "criteria/read_once.hpp"
#include "criteria/rule_reader.hpp"
#include "criteria/shipped.hpp"
#include "language/fields.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"

#include <set>
#include <stdexcept>

namespace beadbook {
namespace {

class PracticeReader {
public:
    PracticeReader(const std::string &text, Issues &issues)
        : issues_(issues), root_(read_yaml(text, issues)) {
        practice_.text = text;
        practice_.hash = sha256(text);
    }

    Practice read() {
        if (issues_.any_error() && root_.entries.empty()) return std::move(practice_);
        const Fields top(root_, "",
                         {"practice", "title", "edition", "source", "notes", "method", "rules", "gaps"},
                         issues_);
        practice_.name = top.needed_name("practice");
        practice_.title = top.needed_text("title");
        practice_.edition = top.needed_text("edition");
        practice_.source = top.text("source");
        practice_.notes = top.text("notes");
        const std::string method = top.needed_text("method");
        if (const auto exam = exam_named(method))
            practice_.method = *exam;
        else if (!method.empty())
            top.error("method", "'" + shown(method) + "' is no method; expected " + exam_names_text());
        top.need("rules");
        for (const Yaml *node : top.items("rules")) read_rule(*node);
        // With none, every exam would be valid.
        if (const Yaml *rules = top.get("rules");
            rules && rules->kind == Yaml::Kind::list && rules->items.empty())
            top.error("rules", "there is no rule, so every exam would be valid; say what must hold");
        for (const Yaml *gap : top.items("gaps")) read_gap(*gap);
        return std::move(practice_);
    }

private:
    void read_rule(const Yaml &node) {
        static const std::vector<std::string> keys{"id",      "when",   "must",     "repeat",
                                                   "warning", "clause", "standing", "reading"};
        const std::string name = node.find("id") ? node.find("id")->text : "?";
        const Fields fields(node, "rules." + name, keys, issues_);
        PracticeRule out;
        out.id = fields.needed_text("id");
        out.clause = fields.needed_text("clause");
        out.standing = read_standing(fields, issues_);
        out.reading = fields.text("reading");
        out.repeat = fields.text("repeat");
        out.warning = fields.flag("warning", false);
        if (!ids_.insert(out.id).second) fields.error("id", "a rule above has the same id");
        out.when = read_conditions(fields, "when", practice_names(), issues_);
        if (const Yaml *must = fields.need("must"))
            if (auto c = read_condition(*must, fields.path_of("must"), practice_names(), issues_))
                out.must = std::move(*c);
        practice_.rules.push_back(std::move(out));
    }

    /// A text alone bears on every exam.
    void read_gap(const Yaml &node) {
        if (node.kind == Yaml::Kind::scalar) {
            practice_.gaps.push_back({node.text, {}, ""});
            return;
        }
        const Fields fields(node, "gaps", {"what", "when", "harmless"}, issues_);
        PracticeGap out{fields.needed_text("what"),
                        read_conditions(fields, "when", practice_names(), issues_), fields.text("harmless")};
        if (!out.when.empty() && !out.harmless.empty())
            fields.error("harmless", "a gap that bears on no exam has no 'when'");
        practice_.gaps.push_back(std::move(out));
    }

    Issues &issues_;
    Yaml root_;
    Practice practice_;
    std::set<std::string> ids_;
};

} // namespace

LoadedPractice load_practice(const std::string &text) {
    Issues issues;
    auto practice = std::make_shared<Practice>(PracticeReader(text, issues).read());
    issues.sort_by_place();
    LoadedPractice out;
    if (!issues.any_early_error()) out.kept = std::move(practice);
    if (!issues.any_error()) out.practice = out.kept;
    out.issues = issues.all();
    return out;
}

const std::vector<std::string> &shipped_practice_names() {
    static const auto names = shipped_in("technique/");
    return names;
}

std::shared_ptr<const Practice> shipped_practice(const std::string &name) {
    static ReadOnce<Practice> all;
    return all.get(name, [](const std::string &practice) {
        LoadedPractice loaded = load_practice(shipped_file("technique/" + practice + ".yaml"));
        if (!loaded.practice)
            throw std::logic_error("built-in practice " + practice + ": " + loaded.issues.front().text);
        return loaded.practice;
    });
}

} // namespace beadbook
