#include "facts/worked_case.hpp"

#include "criteria/owners_copy.hpp"
#include "facts/log_line.hpp"
#include "language/fields.hpp"
#include "measure/parse.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace beadbook {
namespace {

class CasesReader {
public:
    CasesReader(const std::string &text, Issues &issues) : issues_(issues), root_(read_yaml(text, issues)) {}

    WorkedCases read(const SetByName &open) {
        WorkedCases out;
        if (issues_.any_error() && root_.entries.empty()) return out;
        const Fields top(root_, "", {"set", "about", "coupon", "filled", "cases"}, issues_);
        const std::string name = top.needed_text("set");
        if (name.empty()) return out;
        guarded(*top.get("set"), "set", [&] { set_ = open(name); });
        if (!set_) return out;
        out.set = set_;
        top.need("cases");
        for (const Yaml *node : top.items("cases"))
            read_case(*node, top.get("coupon"), top.get("filled"), out);
        return out;
    }

private:
    template <class F>
    void guarded(const Yaml &node, const std::string &path, F f) {
        try {
            f();
        } catch (const Refusal &e) {
            // What all cases share is read anew for each.
            if (told_.insert({node.where.line, node.where.column, e.what()}).second)
                issues_.error(node.where, path, e.what());
        }
    }

    void read_case(const Yaml &node, const Yaml *common, const Yaml *filled, WorkedCases &out) {
        const std::string id = node.find("id") ? node.find("id")->text : "?";
        const std::string path = "cases." + id;
        const Fields fields(node, path,
                            {"id", "coupon", "filled", "finds", "exams", "expect", "decided by", "source"},
                            issues_);
        WorkedCase one;
        one.id = fields.needed_text("id");
        one.source = fields.needed_text("source");
        if (!ids_.insert(one.id).second) fields.error("id", "a case above has the same id");
        one.coupon.id = "case";
        one.coupon.set("units", std::string(name_of(set_->unit)));
        read_coupon(common, fields.get("coupon"), path, one.coupon);
        read_exams(fields, one);
        const WeldLine line = one.coupon.facts().line;
        int number = 0;
        for (const Yaml *find : fields.words("finds"))
            guarded(*find, path + ".finds", [&] {
                one.indications.push_back(read_find(find->text, ++number, one.coupon.unit(), line));
            });
        read_expected(fields, one);
        OwnersCopy copy;
        for (const Yaml *part : {filled, fields.get("filled")})
            if (part) read_filled(*part, path + ".filled", copy);
        one.set = with_owners_copy(set_, copy);
        out.cases.push_back(std::move(one));
    }

    /// What all cases share, then what is this one's.
    void read_coupon(const Yaml *common, const Yaml *own, const std::string &path, CouponRecord &coupon) {
        for (const Yaml *part : {common, own}) {
            if (!part) continue;
            if (part->kind != Yaml::Kind::map)
                issues_.error(part->where, path + ".coupon", "expected `field: value`");
            for (const auto &[key, where, value] : part->entries)
                if (part == own || !own || !own->find(key))
                    guarded(value, (part == own ? path + ".coupon." : "coupon.") + key,
                            [&, &key = key, &value = value] {
                                coupon.set(key,
                                           is_through(key, value) ? thickness_of(common, own) : value.text);
                            });
        }
    }

    /// As `register` takes it: the weld is as thick as the thinner member.
    static bool is_through(const std::string &key, const Yaml &value) {
        return key == "weld-thickness" && trimmed(value.text) == "full";
    }
    static std::string thickness_of(const Yaml *common, const Yaml *own) {
        for (const Yaml *part : {own, common})
            if (const Yaml *thickness = part ? part->find("thickness") : nullptr) return thickness->text;
        throw InputError("a full weld is as thick as the thinner member; say its 'thickness' too");
    }

    /// `{largest-pore: 0.06 in, pore-sum: {A: 0.1 in, B: 0.2 in}}`: what a shop might fill in; one value is
    /// for every class. What the case says comes before what all cases share.
    void read_filled(const Yaml &node, const std::string &path, OwnersCopy &copy) {
        if (node.kind != Yaml::Kind::map)
            return issues_.error(node.where, path, "expected `blank: value`, or `blank: {class: value}`");
        for (const auto &[id, where, value] : node.entries) {
            const Blank *blank = set_->blank(id);
            if (!blank) {
                std::vector<std::string> names;
                for (const auto &one : set_->blanks) names.push_back(one.id);
                issues_.error(where, path,
                              set_->name + " has no blank '" + shown(id) + "'" + did_you_mean(id, names));
                continue;
            }
            if (value.kind == Yaml::Kind::map)
                for (const auto &[class_id, class_where, of_class] : value.entries)
                    fill(*blank, class_id, class_where, of_class, path, copy);
            else
                for (std::size_t c = 0; c < set_->classes.size(); ++c)
                    if (blank->classes[c]) fill(*blank, set_->classes[c].id, where, value, path, copy);
        }
    }

    void fill(const Blank &blank, const std::string &class_id, Where where, const Yaml &value,
              const std::string &path, OwnersCopy &copy) {
        const auto index = set_->class_index(class_id);
        if (!index || !blank.classes[*index])
            return issues_.error(where, path,
                                 "no limit of class '" + shown(class_id) + "' hangs on blank " + blank.id);
        guarded(value, path + "." + blank.id, [&] {
            Filling one{blank.id, class_id, parse_typed(value.text, blank.dimension(), set_->unit).value, "",
                        "the worked case"};
            if (const std::string fault = blank.fault_of(one.value, set_->unit); !fault.empty())
                throw InputError(fault);
            std::erase_if(copy.fillings, [&](const Filling &f) {
                return f.blank == one.blank && f.class_id == one.class_id;
            });
            copy.fillings.push_back(std::move(one));
        });
    }

    /// All methods, if nothing is said.
    void read_exams(const Fields &fields, WorkedCase &one) {
        one.exams_said = fields.get("exams") != nullptr;
        if (!one.exams_said)
            for (std::size_t e = 0; e < exam_count; ++e)
                one.exams.push_back({static_cast<Exam>(e), true, "", false});
        for (const Yaml *word : fields.words("exams")) {
            const auto exam = exam_named(word->text);
            if (exam)
                one.exams.push_back({*exam, true, "", false});
            else
                fields.error_at(word->where, fields.path_of("exams"),
                                "'" + shown(word->text) + "' is no method; expected " + exam_names_text());
        }
    }

    /// `RT gas pore 0.050 at 1`: the method, then a line as it is logged.
    static Indication read_find(const std::string &text, int number, Unit unit, const WeldLine &line) {
        const std::size_t space = text.find(' ');
        const auto method = exam_named(text.substr(0, space));
        if (!method || space == std::string::npos)
            throw InputError("'" + shown(text) + "' does not begin with the method that found it (" +
                             exam_names_text() + ")");
        IndicationRecord record = parse_log_line(std::string_view(text).substr(space + 1), line, unit);
        record.number = number;
        return record.facts(*method, line);
    }

    void read_expected(const Fields &fields, WorkedCase &one) {
        const Yaml *expect = fields.need("expect");
        if (!expect) return;
        const Fields verdicts(*expect, fields.path_of("expect"), set_->class_names(), issues_);
        for (const auto &[id, where, value] : expect->entries) {
            static const std::vector<std::string> words{std::string(name_of(Verdict::accept)),
                                                        std::string(name_of(Verdict::cannot_say)),
                                                        std::string(name_of(Verdict::reject))};
            const auto word = std::find(words.begin(), words.end(), value.text);
            if (word == words.end())
                verdicts.error_at(value.where, verdicts.path_of(id),
                                  "'" + shown(value.text) + "' is no verdict; expected " +
                                      listed(words, "or"));
            else
                one.expected[id] = static_cast<Verdict>(word - words.begin());
        }
        if (one.expected.empty()) fields.error("expect", "no class is named");
        one.decided_by = fields.text("decided by");
        if (one.decided_by.empty()) return;
        if (std::none_of(set_->rules.begin(), set_->rules.end(),
                         [&](const Rule &rule) { return rule.id == one.decided_by; }))
            fields.error("decided by", "'" + shown(one.decided_by) + "' is no rule of " + set_->name);
        else if (std::all_of(one.expected.begin(), one.expected.end(),
                             [](const auto &of) { return of.second == Verdict::accept; }))
            fields.error("decided by",
                         "every class of this case is expected to be accepted, and only what keeps a "
                         "case from that can be named: leave it out");
    }

    Issues &issues_;
    Yaml root_;
    std::shared_ptr<const CriteriaSet> set_;
    std::set<std::string> ids_;
    std::set<std::tuple<int, int, std::string>> told_;
};

} // namespace

LoadedCases load_worked_cases(const std::string &text, const SetByName &open) {
    Issues issues;
    WorkedCases cases = CasesReader(text, issues).read(open);
    issues.sort_by_place();
    LoadedCases out;
    if (!issues.any_error()) out.cases = std::move(cases);
    out.issues = issues.all();
    return out;
}

} // namespace beadbook
