#include "criteria/rule_reader.hpp"

#include "criteria/part_reader.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <array>

namespace beadbook {
namespace {

const std::vector<std::string> keys{
    "id",       "title",   "types",    "except",      "exams",       "shape",      "when",
    "where",    "measure", "window",   "linked",      "least group", "short weld", "at most",
    "at least", "under",   "over",     "allowed",     "combine",     "borderline", "must be measured",
    "area",     "clause",  "standing", "standing of", "reading",     "says",       "reject only with"};

constexpr std::array<std::pair<std::string_view, Compare>, 4> compare_keys{{{"at most", Compare::at_most},
                                                                            {"at least", Compare::at_least},
                                                                            {"under", Compare::under},
                                                                            {"over", Compare::over}}};

const std::vector<std::string> limit_words{"none", "no limit", "a person decides", "not said",
                                           "does not apply"};

class RuleReader {
public:
    RuleReader(const Yaml &node, ReadContext &context)
        : context_(context), fields_(node, path_of(node), keys, context.issues) {
        rule_.where_from = node.where;
    }

    std::optional<Rule> read() {
        rule_.id = fields_.needed_text("id");
        rule_.title = fields_.text("title");
        rule_.clause = fields_.needed_text("clause");
        rule_.reading = fields_.text("reading");
        rule_.says = fields_.text("says");
        rule_.standings = read_standings(fields_, context_);
        check_template();
        read_kind();
        if (rule_.kind != Rule::Kind::combine && rule_.kind != Rule::Kind::coupon) {
            rule_.subject = read_subject(fields_, context_, ExamsKey::needed);
            rule_.shape = read_shape(fields_);
        }
        rule_.when = read_conditions(fields_, "when", context_.names, context_.issues);
        refuse_scopes(rule_.when, {Scope::indication, Scope::pair, Scope::group}, true, fields_, "when");
        rule_.where = read_conditions(fields_, "where", context_.names, context_.issues);
        refuse_scopes(rule_.where, {Scope::pair, Scope::group}, false, fields_, "where");
        rule_.as_rectangles = read_as_rectangles(fields_, rule_);
        read_window();
        read_linked();
        read_least_group();
        rule_.must_be_measured = fields_.flag("must be measured", false);
        read_limits();
        read_only_with();
        if (rule_.kind == Rule::Kind::coupon) check_of_coupon();
        note_blanks(rule_, context_.set);
        if (rule_.id.empty()) return std::nullopt;
        return std::move(rule_);
    }

private:
    static std::string path_of(const Yaml &node) {
        const Yaml *id = node.find("id");
        return "rules" + (id && id->kind == Yaml::Kind::scalar ? "." + id->text : "");
    }

    void check_template() {
        static const std::vector<std::string> known{"measured", "limit", "over by"};
        for (std::size_t at = 0; (at = rule_.says.find('{', at)) != std::string::npos; ++at) {
            const std::size_t end = rule_.says.find('}', at);
            const std::string name = end == std::string::npos ? "" : rule_.says.substr(at + 1, end - at - 1);
            if (std::find(known.begin(), known.end(), name) == known.end())
                fields_.error("says", "'{" + shown(name) +
                                          "}' is unknown; expected {measured}, {limit} or {over by}");
        }
    }

    void read_kind() {
        const std::string measure = fields_.text("measure");
        const std::string_view sum = "sum of ";
        if (fields_.get("combine")) {
            rule_.kind = Rule::Kind::combine;
            read_combine();
        } else if (!fields_.get("measure")) {
            const bool of_coupon = !fields_.get("types") && !fields_.get("exams") && fields_.get("when");
            rule_.kind = of_coupon ? Rule::Kind::coupon : Rule::Kind::presence;
        } else if (measure == "count") {
            rule_.kind = Rule::Kind::count;
        } else if (measure == "gap") {
            rule_.kind = Rule::Kind::gap;
        } else if (measure.starts_with(sum)) {
            rule_.kind = Rule::Kind::sum;
            read_summed(measure.substr(sum.size()));
        } else if (auto f = read_formula(*fields_.get("measure"), fields_.path_of("measure"), context_.names,
                                         context_.issues)) {
            rule_.kind = Rule::Kind::each;
            rule_.measure = std::move(*f);
            if (rule_.measure.has_blanks())
                fields_.error("measure", "a blank is no measure; only limits and windows may speak of one");
            if (!uses_scope(rule_.measure, Scope::indication) || uses_scope(rule_.measure, Scope::pair) ||
                uses_scope(rule_.measure, Scope::group))
                fields_.error("measure",
                              "expected a measure of one indication (length, width, depth, height, size, "
                              "angle, area), 'sum of ...', 'count' or 'gap'");
        }
    }

    void read_summed(const std::string &what) {
        constexpr std::array summable{Quantity::length, Quantity::size, Quantity::width, Quantity::height,
                                      Quantity::area};
        const auto found =
            std::find_if(summable.begin(), summable.end(), [&](Quantity q) { return info(q).name == what; });
        if (found == summable.end())
            fields_.error("measure", "'sum of " + shown(what) +
                                         "'; expected sum of length, size, width, height or area");
        else
            rule_.summed = *found;
    }

    void read_combine() {
        for (const Yaml *word : fields_.words("combine")) {
            const auto &rules = context_.set.rules;
            const auto found =
                std::find_if(rules.begin(), rules.end(), [&](const Rule &r) { return r.id == word->text; });
            std::vector<std::string> ids;
            for (const auto &r : rules) ids.push_back(r.id);
            if (found == rules.end())
                context_.issues.error(word->where, fields_.path_of("combine"),
                                      "no rule above is called '" + shown(word->text) + "'" +
                                          did_you_mean(word->text, ids));
            else if (found->kind == Rule::Kind::presence || found->kind == Rule::Kind::combine ||
                     found->kind == Rule::Kind::coupon)
                context_.issues.error(word->where, fields_.path_of("combine"),
                                      "rule '" + word->text +
                                          "' has no measure that could be at the borderline");
            else
                rule_.combined.push_back(static_cast<std::size_t>(found - rules.begin()));
        }
        const Yaml *share = fields_.need("borderline");
        if (!share) return;
        if (auto f = read_formula(*share, fields_.path_of("borderline"), context_.names, context_.issues)) {
            rule_.borderline = f->constant_value();
            if (!f->is_constant() || f->dimension() != Dimension::number || rule_.borderline <= Exact(0) ||
                rule_.borderline > Exact(1))
                fields_.error("borderline", "expected a share of the limit such as 90 %");
        }
    }

    bool without_measure() const {
        return rule_.kind == Rule::Kind::presence || rule_.kind == Rule::Kind::coupon;
    }

    /// A rule on the coupon itself says what it may not be, and nothing of a find.
    void check_of_coupon() {
        for (const char *key : {"except", "shape", "where", "window", "linked", "must be measured"})
            if (fields_.get(key)) fields_.error(key, "a rule without 'types' speaks of the coupon only");
        for (const auto &limit : rule_.limits)
            if (limit.kind == Limit::Kind::free)
                return fields_.error("allowed", "'no limit' permits nothing here; write 'does not apply'");
    }

    /// Two rules on what one exam finds that reject only if both are over.
    void read_only_with() {
        if (!fields_.get("reject only with")) return;
        const std::string id = fields_.text("reject only with");
        auto &rules = context_.set.rules;
        std::vector<std::string> ids;
        for (const auto &r : rules) ids.push_back(r.id);
        const auto found = std::find(ids.begin(), ids.end(), id);
        if (found == ids.end())
            return fields_.error("reject only with",
                                 "no rule above is called '" + shown(id) + "'" + did_you_mean(id, ids));
        Rule &other = rules[static_cast<std::size_t>(found - ids.begin())];
        const auto measures = [](const Rule &r) {
            return r.kind == Rule::Kind::each || r.kind == Rule::Kind::gap || r.kind == Rule::Kind::sum ||
                   r.kind == Rule::Kind::count;
        };
        if (!measures(rule_) || !measures(other))
            return fields_.error("reject only with", "both rules need a measure");
        if (other.only_with || (other.subject.exams & rule_.subject.exams).none())
            return fields_.error("reject only with",
                                 other.only_with ? "rule '" + id + "' is held together with another one"
                                                 : "no exam finds what both speak of");
        rule_.only_with = static_cast<std::size_t>(found - ids.begin());
        other.only_with = rules.size();
    }

    bool summing() const { return rule_.kind == Rule::Kind::sum || rule_.kind == Rule::Kind::count; }

    void read_window() {
        const Yaml *node = fields_.get("window");
        const std::string proration = fields_.text("short weld");
        if (!proration.empty() && proration != "in proportion" && proration != "as it is")
            fields_.error("short weld",
                          "found '" + shown(proration) + "'; expected 'in proportion' or 'as it is'");
        rule_.prorated = proration == "in proportion";
        if (!node) {
            if (summing() && !fields_.get("linked"))
                fields_.error("measure", "a sum or count needs a 'window' or 'linked'");
            if (rule_.prorated) fields_.error("short weld", "there is no window");
            return;
        }
        if (!summing()) fields_.error("window", "only a sum or a count has a window");
        rule_.window_by_class = node->kind == Yaml::Kind::map;
        if (rule_.window_by_class) check_class_keys(*node, fields_.path_of("window"), context_);
        for (const auto &one : context_.set.classes) {
            const Yaml *of_class = rule_.window_by_class ? node->find(one.id) : node;
            rule_.windows.push_back(of_class ? read_one_window(*of_class) : Window{});
            if (!rule_.window_by_class) break;
        }
        if (!rule_.window_by_class && !rule_.windows.empty())
            rule_.windows.resize(context_.set.classes.size(), rule_.windows.front());
    }

    Window read_one_window(const Yaml &node) {
        Window window;
        window.text = scalar_text(node, fields_.path_of("window"), context_.issues).value_or("");
        if (window.text != "whole weld") read_stretch(node, window);
        if (rule_.prorated && window.kind != Window::Kind::length)
            fields_.error("short weld", "only a window of a length can be prorated");
        return window;
    }

    /// `12 x T`, or `6 in2, longest side 6 in`.
    void read_stretch(const Yaml &node, Window &window) {
        constexpr std::string_view side = ", longest side ";
        Yaml first = node;
        const std::size_t comma = window.text.find(side);
        first.text = window.text.substr(0, comma);
        auto f = read_formula(first, fields_.path_of("window"), context_.names, context_.issues);
        if (!f) return;
        if (f->dimension() == Dimension::length && comma == std::string::npos) {
            window.kind = Window::Kind::length;
            if (uses_scope(*f, Scope::indication) || uses_scope(*f, Scope::pair) ||
                uses_scope(*f, Scope::group))
                fields_.error("window", "a window is made of the coupon's quantities only");
            window.length = std::move(*f);
            return;
        }
        Yaml second = node;
        second.text = comma == std::string::npos ? "" : window.text.substr(comma + side.size());
        const auto longest = comma == std::string::npos ? std::nullopt
                                                        : read_formula(second, fields_.path_of("window"),
                                                                       context_.names, context_.issues);
        if (f->dimension() != Dimension::area || !f->is_constant() || !longest || !longest->is_constant() ||
            longest->dimension() != Dimension::length || rule_.kind != Rule::Kind::count)
            return fields_.error("window",
                                 "expected a length (1 in, 12 x T), 'whole weld', or for a count an area "
                                 "such as '6 in2, longest side 6 in'");
        window.kind = Window::Kind::area;
        window.area = f->constant_value();
        window.longest_side = longest->constant_value();
    }

    void read_linked() {
        const Yaml *node = fields_.get("linked");
        if (!node) return;
        auto c = read_condition(*node, fields_.path_of("linked"), context_.names, context_.issues);
        if (!c) return;
        const bool gap = c->edges.size() == 1 && c->left.lone_quantity() == slot_of(Quantity::gap) &&
                         is_maximum(c->edges[0].compare);
        if (!gap || !summing())
            return fields_.error("linked",
                                 "expected, for a sum or count, 'gap at most ...' or 'gap under ...'");
        refuse_blanks(*c, fields_, "linked");
        const Formula &limit = c->edges[0].right;
        if (uses_scope(limit, Scope::indication) || uses_scope(limit, Scope::pair))
            fields_.error("linked", "a group is linked by the coupon's quantities or by 'longest'");
        if (std::any_of(rule_.windows.begin(), rule_.windows.end(),
                        [](const Window &w) { return w.kind == Window::Kind::area; }))
            fields_.error("linked", "an area window takes no groups");
        rule_.linked = std::move(*c);
    }

    /// "Four or more in a line": fewer are no group, and the rule does not speak of them.
    void read_least_group() {
        if (!fields_.get("least group")) return;
        const std::string text = fields_.text("least group");
        const bool number =
            !text.empty() && text.size() < 4 && text.find_first_not_of("0123456789") == std::string::npos;
        rule_.least_group = number ? std::stoul(text) : 0;
        if (rule_.least_group < 2)
            fields_.error("least group", "found '" + shown(text) + "'; expected a whole number from 2 up");
        else if (!fields_.get("linked"))
            fields_.error("least group", "without 'linked' there is no group");
    }

    void read_limits() {
        std::string key;
        for (const auto &[name, compare] : compare_keys) {
            if (!fields_.get(name)) continue;
            if (!key.empty()) fields_.error(name, "a rule has one limit; '" + key + "' stands here too");
            key = std::string(name);
            rule_.compare = compare;
        }
        const bool presence = without_measure();
        if (presence && key.empty()) key = "allowed";
        const Yaml *node = fields_.need(key.empty() ? "at most" : key);
        if (!node) return;
        if (presence && key != "allowed" && fields_.get("measure")) return; // which was told
        if (presence && key != "allowed") fields_.error(key, "a limit needs a 'measure'");
        if (!presence && fields_.get("allowed"))
            fields_.error("allowed", "a rule with a measure has 'at most' or the like");
        const bool lower = !is_maximum(rule_.compare);
        if (lower && (summing() || rule_.kind == Rule::Kind::combine))
            fields_.error(key, "a sum or a count has 'at most' or 'under'");
        if (!lower && rule_.kind == Rule::Kind::gap) fields_.error(key, "a gap has 'at least' or 'over'");
        if (node->kind == Yaml::Kind::map) check_class_keys(*node, fields_.path_of(key), context_);
        for (std::size_t c = 0; c < context_.set.classes.size(); ++c) {
            const Yaml *one = node->kind == Yaml::Kind::map ? node->find(context_.set.classes[c].id) : node;
            const std::size_t told = context_.issues.all().size();
            rule_.limits.push_back(one ? read_limit(*one, key, c) : Limit{});
            if (one != node || context_.issues.all().size() == told) continue;
            rule_.limits.resize(context_.set.classes.size()); // one limit for all: told once
            break;
        }
    }

    Limit read_limit(const Yaml &node, const std::string &key, std::size_t class_index) {
        Limit limit;
        const std::string path = fields_.path_of(key) + "." + context_.set.classes[class_index].id;
        const auto text = scalar_text(node, path, context_.issues);
        if (!text) return limit;
        limit.text = *text;
        const auto word = std::find(limit_words.begin(), limit_words.end(), *text);
        if (word != limit_words.end()) {
            constexpr std::array kinds{Limit::Kind::none, Limit::Kind::free, Limit::Kind::ask,
                                       Limit::Kind::not_said, Limit::Kind::other};
            limit.kind = kinds[static_cast<std::size_t>(word - limit_words.begin())];
            if (limit.kind == Limit::Kind::none && rule_.kind == Rule::Kind::combine)
                context_.issues.error(node.where, path, "'none' counts nothing here; write the number 0");
            return limit;
        }
        if (without_measure()) {
            context_.issues.error(node.where, path,
                                  "found '" + shown(*text) + "'; expected " + listed(limit_words, "or") +
                                      did_you_mean(*text, limit_words));
            return limit;
        }
        context_.names.limits.clear();
        static const std::vector<Rule> none; // few speak of another's
        for (const auto &rule : text->find("limit") == std::string::npos ? none : context_.set.rules)
            if (class_index < rule.limits.size() && rule.limits[class_index].kind == Limit::Kind::value)
                context_.names.limits.emplace(rule.id, rule.limits[class_index].formula);
        if (auto f = read_formula(node, path, context_.names, context_.issues)) {
            check_limit(*f, node, path);
            limit.kind = Limit::Kind::value;
            limit.formula = std::move(*f);
        }
        return limit;
    }

    void check_limit(const Formula &f, const Yaml &node, const std::string &path) {
        if (f.dimension() != rule_.dimension())
            context_.issues.error(
                node.where, path,
                "the limit is " + std::string(name_of(f.dimension())) + " but the measure is " +
                    std::string(name_of(rule_.dimension())) +
                    (f.dimension() == Dimension::number && f.is_constant() ? "; a unit is missing" : ""));
        const bool each = rule_.kind == Rule::Kind::each;
        const bool gap = rule_.kind == Rule::Kind::gap;
        if ((uses_scope(f, Scope::indication) && !each) || (uses_scope(f, Scope::pair) && !gap) ||
            (uses_scope(f, Scope::group)))
            context_.issues.error(node.where, path,
                                  "the limit speaks of something that is not known in this rule");
        // By the smaller neighbour, a small pore between two large ones would hide that they are too near.
        for (const Quantity q : {Quantity::gap, Quantity::smaller_size, Quantity::shorter_length})
            if (gap && f.uses(slot_of(q)))
                context_.issues.error(node.where, path,
                                      "a spacing limit may use 'larger size' or 'longer length' only");
    }

    ReadContext &context_;
    Fields fields_;
    Rule rule_;
};

} // namespace

std::optional<Rule> read_rule(const Yaml &node, ReadContext &context) {
    return RuleReader(node, context).read();
}

} // namespace beadbook
