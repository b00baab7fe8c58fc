#include "render/json_criteria.hpp"

#include "render/json_check.hpp"
#include "render/json_parts.hpp"
#include "render/json_weld.hpp"
#include "report/boundaries_document.hpp"
#include "report/criteria_document.hpp"
#include "report/own_file.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using Json = nlohmann::json;

/// Which finds it speaks of, under "types" and "exams".
void add_subject(Json &out, const Subject &subject) {
    for (std::size_t t = 0; t < Vocabulary::shipped().size(); ++t)
        if (subject.types[t]) out["types"].push_back(Vocabulary::shipped()[static_cast<TypeId>(t)].name);
    for (const Exam exam : all_exams())
        if (subject.exams[static_cast<std::size_t>(exam)]) out["exams"].push_back(name_of(exam));
}

Json classes_json(const CriteriaSet &set, const std::vector<bool> &speaks) {
    Json out = Json::array();
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        if (speaks[c]) out.push_back(set.classes[c].id);
    return out;
}

Json rule_json(const CriteriaSet &set, const Rule &rule) {
    Json out{
        {"id", rule.id}, {"title", rule.title}, {"clause", rule.clause}, {"measure", measure_words(rule)}};
    if (rule.kind != Rule::Kind::presence && rule.kind != Rule::Kind::coupon)
        out["compare"] = name_of(rule.compare);
    if (const auto words = condition_words(rule.when, rule.where); !words.empty()) out["conditions"] = words;
    if (!rule.windows.empty() && !rule.window_by_class) out["window"] = rule.windows.front().text;
    if (rule.only_with) out["reject only with"] = set.rules[*rule.only_with].id;
    if (rule.linked) out["linked"] = rule.linked->text;
    if (rule.least_group > 1) out["least group"] = rule.least_group;
    if (!rule.reading.empty()) out["reading"] = rule.reading;
    if (!rule.says.empty()) out["says"] = rule.says;
    add_subject(out, rule.subject);
    if (rule.shape != Shape::unknown) out["shape"] = name_of(rule.shape);
    if (rule.prorated) out["in proportion on a shorter weld"] = true;
    if (rule.must_be_measured) out["must be measured"] = true;
    for (const std::size_t other : rule.combined) out["of the rules"].push_back(set.rules[other].id);
    if (!rule.combined.empty())
        out["borderline from"] = print_exact(rule.borderline, Dimension::number, set.unit);
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        Json limit = authority_json("", rule.standings[c]);
        limit.erase("clause");
        limit["limit"] = rule.limits[c].text;
        out["limits"][set.classes[c].id] = std::move(limit);
    }
    for (std::size_t c = 0; rule.window_by_class && c < set.classes.size(); ++c)
        out["limits"][set.classes[c].id]["window"] = rule.windows[c].text;
    return out;
}

Json required_json(const CriteriaSet &set, const RequiredExam &exam) {
    Json out = authority_json(exam.clause, exam.standing);
    out["id"] = exam.id;
    for (const Exam one : exam.one_of) out["one of"].push_back(name_of(one));
    out["classes"] = classes_json(set, exam.classes);
    if (const auto words = condition_words(exam.when); !words.empty()) out["conditions"] = words;
    return out;
}

Json scope_json(const ScopePart &part) {
    Json out = authority_json(part.clause, part.standing);
    out["id"] = part.id;
    out["text"] = part.text;
    if (!part.title.empty()) out["title"] = part.title;
    if (const auto words = condition_words(part.only_if); !words.empty()) out["if"] = words;
    return out;
}

Json counting_json(const std::string &id, const std::string &clause, const Standing &standing,
                   const std::string &text) {
    Json out = authority_json(clause, standing);
    out["id"] = id;
    out["text"] = text;
    return out;
}

Json gap_json(const CriteriaSet &set, const Gap &gap) {
    Json out{{"text", gap.text}, {"beside rules", gap.beside_rules}};
    if (gap.subject) add_subject(out, *gap.subject);
    if (!gap.beside_rules) return out;
    out["classes"] = classes_json(set, gap.classes);
    if (const auto words = condition_words(gap.when, gap.where); !words.empty()) out["conditions"] = words;
    if (gap.shape != Shape::unknown) out["shape"] = name_of(gap.shape);
    return out;
}

/// What its symbols and names stand for.
Json names_json(const CriteriaSet &set) {
    Json out{{"quantities", Json::object()}, {"formulas", Json::object()}, {"tables", Json::array()}};
    for (const auto &one : set.declared)
        out["quantities"][one.name] = info(static_cast<Quantity>(one.slot)).name;
    for (const auto &one : set.formulas) out["formulas"][one.name] = one.text;
    for (const auto &table : set.tables) {
        Json rows = Json::array();
        for (const auto &row : table->rows) rows.push_back({{"where", row.text}, {"value", row.value.text}});
        out["tables"].push_back({{"name", table->name}, {"by", table->by.text}, {"rows", std::move(rows)}});
        if (table->step > Exact(0))
            out["tables"].back()["rounded to"] = render::number(table->step, table->by.dimension(), set.unit);
    }
    if (set.linear) {
        out["linear"] = authority_json(set.linear_clause, set.linear_standing);
        out["linear"]["text"] = set.linear->text;
    }
    return out;
}

Json blank_json(const CriteriaSet &set, const Blank &blank) {
    Json out{{"id", blank.id},         {"clause", blank.clause}, {"kind", name_of(blank.kind)},
             {"limits", blank.limits}, {"open", Json::array()},  {"filled", Json::object()}};
    if (!blank.plausible_text.empty()) out["plausible"] = blank.plausible_text;
    for (std::size_t c = 0; c < set.classes.size(); ++c) {
        if (!blank.classes[c]) continue;
        const std::string &id = set.classes[c].id;
        const auto filled = std::find_if(set.fillings.begin(), set.fillings.end(), [&](const Filling &f) {
            return f.blank == blank.id && f.class_id == id;
        });
        if (filled == set.fillings.end())
            out["open"].push_back(id);
        else
            out["filled"][id] = {{"value", render::number(filled->value, blank.dimension(), set.unit)},
                                 {"by", filled->by}};
    }
    return out;
}

Json tried_json(const TriedCases &tried) {
    Json cases = Json::array(), untried = Json::array();
    for (const auto &one : tried.cases) {
        Json verdicts = Json::object(), expected = Json::object();
        for (std::size_t c = 0; c < tried.set->classes.size(); ++c)
            verdicts[tried.set->classes[c].id] = name_of(one.judgement.classes[c].verdict);
        for (const auto &[id, verdict] : one.worked.expected) expected[id] = name_of(verdict);
        cases.push_back({{"case", one.worked.id},
                         {"source", one.worked.source},
                         {"holds", one.holds()},
                         {"expected", std::move(expected)},
                         {"verdicts", std::move(verdicts)}});
        if (!one.worked.decided_by.empty()) cases.back()["decided by"] = one.worked.decided_by;
    }
    for (const auto &limit : tried.untried)
        untried.push_back({{"rule", limit.rule},
                           {"class", limit.class_id},
                           {"within", limit.within},
                           {"over", limit.over}});
    return {{"set", tried.set->name},
            {"cases", std::move(cases)},
            {"failed", tried.failed()},
            {"never decisive", tried.never_decisive},
            {"not tried from both sides", std::move(untried)}};
}

/// Of a limit, or of how long a window is.
Json boundary_json(const CriteriaSet &set, const BoundaryCase &one, bool of_window) {
    const Rule &rule = set.rules[one.rule];
    const Dimension dimension = of_window ? Dimension::length : rule.dimension();
    Json coupon = Json::object(), tries = Json::array();
    for (const Quantity q : one.varied)
        coupon[std::string(info(q).name)] =
            render::number(Exact(one.coupon.values[q]), info(q).dimension, set.unit);
    for (const auto &tried : one.tries)
        tries.push_back({{"value", render::number(tried.value, dimension, set.unit)},
                         {"written", tried.rejects ? "outside" : "within"},
                         {"judged", words_of(tried.found)}});
    if (one.word)
        coupon[std::string(info(*one.word).name)] =
            info(*one.word).words[one.coupon.facts[static_cast<std::size_t>(*one.word)] - 1];
    return {
        {"rule", rule.id},
        {"class", set.classes[one.class_index].id},
        {"clause", rule.clause},
        {"standing", name_of(rule.standings[one.class_index].kind)},
        {"as written", of_window ? rule.window(one.class_index)->text : rule.limits[one.class_index].text},
        {"compare", name_of(rule.compare)},
        {"coupon", std::move(coupon)},
        {of_window ? "window" : "limit", render::number(one.limit, dimension, set.unit)},
        {"tries", std::move(tries)}};
}

} // namespace

nlohmann::json blanks_json(const CriteriaSet &set) {
    Json out = Json::array();
    for (const auto &blank : set.blanks) out.push_back(blank_json(set, blank));
    return out;
}

std::string json_text(const Boundaries &all, const std::vector<std::string> &notes) {
    Json limits = Json::array(), windows = Json::array(), none = Json::array();
    for (const auto &one : all.cases) limits.push_back(boundary_json(*all.set, one, false));
    for (const auto &one : all.windows) windows.push_back(boundary_json(*all.set, one, true));
    for (const auto &one : all.none) {
        none.push_back({{"rule", all.set->rules[one.rule].id},
                        {"class", all.set->classes[one.class_index].id},
                        {"why", words_of(one.why)}});
        if (one.named) none.back()["at"] = named_words(*all.set, *one.named);
    }
    Json out{{"set", all.set->name},
             {"boundaries", std::move(limits)},
             {"windows", std::move(windows)},
             {"judged otherwise", all.disagreeing()},
             {"without", std::move(none)}};
    if (all.written) {
        const Json written = tried_json(*all.written);
        for (const char *key : {"never decisive", "not tried from both sides"}) out[key] = written[key];
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const std::vector<std::shared_ptr<const CriteriaSet>> &sets,
                      const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &set : sets)
        out.push_back({{"set", set->name},
                       {"title", set->title},
                       {"edition", set->edition},
                       {"classes", set->class_names()},
                       {"rules", set->rules.size()},
                       {"hash", set->hash}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const CriteriaSet &set, const std::vector<std::string> &notes) {
    Json rules = Json::array(), gaps = Json::array(), required = Json::array(), relevance = Json::array(),
         merges = Json::array(), scope = Json::array(), open = Json::array(), titles = Json::object();
    for (const auto &one : set.classes)
        if (!one.title.empty()) titles[one.id] = one.title;
    for (const auto &gap : set.gaps) open.push_back(gap_json(set, gap));
    for (const auto &part : set.scope) scope.push_back(scope_json(part));
    for (const auto &rule : set.rules) rules.push_back(rule_json(set, rule));
    for (const auto &gap : set.gaps) gaps.push_back(gap.text);
    for (const auto &exam : set.required) required.push_back(required_json(set, exam));
    for (const auto &one : set.relevance) {
        relevance.push_back(counting_json(one.id, one.clause, one.standing, one.text));
        relevance.back()["classes"] = classes_json(set, one.classes);
        add_subject(relevance.back(), one.subject);
    }
    for (const auto &one : set.merges) {
        merges.push_back(counting_json(one.id, one.clause, one.standing, one.when.text));
        if (!one.reading.empty()) merges.back()["reading"] = one.reading;
        add_subject(merges.back(), one.subject);
    }
    Json out{{"set", set.name},
             {"title", set.title},
             {"edition", set.edition},
             {"source", set.source},
             {"about", set.notes},
             {"classes", set.class_names()},
             {"class titles", std::move(titles)},
             {"strictest first", set.ordered && set.classes.size() > 1},
             {"units", name_of(set.unit)},
             {"hash", set.hash},
             {"names", names_json(set)},
             {"scope", std::move(scope)},
             {"scope said", set.scope_said},
             {"rules", std::move(rules)},
             {"required exams", std::move(required)},
             {"not counted", std::move(relevance)},
             {"counted as one", std::move(merges)},
             {"gaps", std::move(gaps)},
             {"gaps in full", std::move(open)}};
    if (!set.extends.empty()) out["extends"] = {{"set", set.extends}, {"edition", set.extends_edition}};
    if (!set.inherited.empty()) out["extends"]["inherited at most"] = set.inherited;
    for (const auto &one : set.silences)
        out["silence"].push_back(one.check + " of " + one.of + ": " + one.reason);
    if (!set.blanks.empty()) out["blanks"] = blanks_json(set);
    return render::finished(std::move(out), notes);
}

std::string json_text(const LimitCurves &curves, const std::vector<std::string> &notes) {
    const CriteriaSet &set = *curves.set;
    const auto named = [&](const Rule &rule) {
        return Json{{"id", rule.id}, {"title", rule.title}, {"clause", rule.clause}};
    };
    Json thickness = Json::array(), rules = Json::array(), others = Json::array();
    for (const std::int64_t nm : curves.thickness)
        thickness.push_back(render::number(nm, Dimension::length, set.unit));
    for (const auto &curved : curves.rules) {
        const Rule &rule = set.rules[curved.rule];
        Json one = named(rule);
        one["measure"] = measure_words(rule);
        one["compare"] = name_of(rule.compare);
        if (const auto words = condition_words(rule.when, rule.where); !words.empty())
            one["conditions"] = words;
        for (const auto &curve : curved.curves) {
            Json limits = Json::array();
            for (const auto &at : curve.at)
                limits.push_back(at ? render::number(*at, rule.dimension(), set.unit) : Json(nullptr));
            for (const std::size_t k : curve.classes)
                one["limits"][set.classes[k].id] = {{"standing", name_of(rule.standings[k].kind)},
                                                    {"at", limits}};
        }
        rules.push_back(std::move(one));
    }
    for (const auto &other : curves.others) {
        others.push_back(named(set.rules[other.rule]));
        others.back()["why"] = why_no_curve(curves, other);
    }
    return render::finished({{"set", set.name},
                             {"edition", set.edition},
                             {"thickness", std::move(thickness)},
                             {"over thickness", std::move(rules)},
                             {"without a curve", std::move(others)}},
                            notes);
}

std::string json_text(const Vocabulary &vocabulary, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (std::size_t t = 0; t < vocabulary.size(); ++t) {
        const ImperfectionType &type = vocabulary[static_cast<TypeId>(t)];
        Json one{{"name", type.name}, {"also", type.also}, {"measured", type.measured}};
        if (!type.quick.empty()) one["quick"] = type.quick;
        if (!type.iso.empty()) one["iso 6520-1"] = type.iso;
        if (type.under) one["under"] = vocabulary[*type.under].name;
        if (type.shape != Shape::unknown) one["shape"] = name_of(type.shape);
        out.push_back(std::move(one));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const CheckedCriteria &checked, const std::vector<std::string> &notes) {
    Json out = check_json(checked, "rules", checked.value ? checked.value->rules.size() : 0);
    if (checked.value) {
        if (const auto lacking = lacking_words(*checked.value); !lacking.empty()) out["lacks"] = lacking;
        if (const auto looser = own_looser(*checked.value); !looser.empty()) out["looser"] = looser;
    }
    if (checked.coverage) {
        out["always cannot say"] = Json::object();
        for (const auto &one : *checked.coverage)
            out["always cannot say"][std::string(name_of(one.exam))] = one.types;
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const TriedCases &tried, const std::vector<std::string> &notes) {
    return render::finished(tried_json(tried), notes);
}

std::string json_text(const std::vector<TriedCases> &all, const std::vector<std::string> &notes) {
    Json out = Json::array();
    for (const auto &tried : all) out.push_back(tried_json(tried));
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
