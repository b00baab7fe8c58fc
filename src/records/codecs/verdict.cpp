#include "records/codecs/verdict.hpp"

#include "records/codecs/typed.hpp"

#include <map>

namespace beadbook::codec {
namespace {

std::vector<std::string> ids_of(const Missing &missing) {
    std::vector<std::string> out;
    const auto put = [&](Missing one, std::string_view id) {
        if (missing.has(one)) out.emplace_back(id);
    };
    for (std::size_t q = 0; q < quantity_count; ++q) {
        const auto quantity = static_cast<Quantity>(q);
        put(lack_of(quantity), info(quantity).name);
    }
    for (std::size_t f = 0; f < fact_count; ++f) {
        const auto fact = static_cast<Fact>(f);
        put(lack_of(fact), info(fact).name);
    }
    for (std::size_t a = 0; a < attribute_count; ++a) {
        const auto attribute = static_cast<Attribute>(a);
        put(lack_of(attribute), info(attribute).name);
    }
    put(Missing::place(), "place");
    put(Missing::across(), "across");
    put(Missing::shape(), "shape");
    put(Missing::table_value(), "table value");
    put(Missing::exact_number(), "exact number");
    put(Missing::blank(), "blank");
    return out;
}

nlohmann::json json_of(const CriteriaSet &set, const Finding &f) {
    nlohmann::json out{{"kind", id_of(f.kind)}, {"effect", name_of(f.effect)}};
    if (f.rule >= 0) out["rule"] = set.rules[static_cast<std::size_t>(f.rule)].id;
    if (f.clause >= 0) {
        const auto index = static_cast<std::size_t>(f.clause);
        if (f.kind == Finding::Kind::exam_missing)
            out["required"] = set.required[index].id;
        else if (f.kind == Finding::Kind::outside_scope || f.kind == Finding::Kind::scope_unknown)
            out["scope"] = set.scope[index].id;
        else
            out["gap"] = index;
    }
    if (f.has_numbers) {
        out["measured"] = exact_text(f.measured);
        out["limit"] = exact_text(f.limit);
    }
    if (!f.indications.empty()) out["indications"] = f.indications;
    if (f.place) out["place"] = {f.place->from.nm, f.place->to.nm};
    if (f.missing.any()) out["missing"] = ids_of(f.missing);
    for (const Exam e : f.exams) out["exams"].push_back(name_of(e));
    return out;
}

/// Ids and numbers of what an accept rests on. Rules that do not apply or do not speak of an entry follow
/// from the set and the record, and are left out.
nlohmann::json json_of(const CriteriaSet &set, const Proof &proof) {
    const auto rule_id = [&](int rule) { return set.rules[static_cast<std::size_t>(rule)].id; };
    nlohmann::json out{{"compared", proof.compared}, {"gaps", proof.gaps}};
    for (const int part : proof.scope) out["scope"].push_back(set.scope[static_cast<std::size_t>(part)].id);
    for (const auto &exam : proof.exams) {
        nlohmann::json one{{"method", name_of(exam.method)}, {"exam", exam.number}};
        if (exam.required >= 0) one["required"] = set.required[static_cast<std::size_t>(exam.required)].id;
        if (exam.called_for) one["called for"] = true;
        out["exams"].push_back(std::move(one));
    }
    for (const auto &row : proof.entries) {
        if (row.how == ProvenEntry::How::not_relevant) {
            out["not relevant"].push_back(
                {{"entry", row.entry}, {"by", set.relevance[static_cast<std::size_t>(row.rule)].id}});
            continue;
        }
        if (!decides(row)) continue;
        nlohmann::json one{{"rule", rule_id(row.rule)}};
        if (row.entry != 0) one["entry"] = row.entry;
        if (row.has_numbers) {
            one["measured"] = exact_text(row.measured);
            one["limit"] = exact_text(row.limit);
        }
        out["judged"].push_back(std::move(one));
    }
    for (const auto &one : proof.measured)
        out["measured"].push_back({{"rule", rule_id(one.rule)}, {"entry", one.entry}});
    return out;
}

} // namespace

std::string verdict_body(const CriteriaSet &set, const Judgement &judgement, std::optional<bool> own,
                         const Vocabulary &vocabulary) {
    nlohmann::json classes = nlohmann::json::array();
    for (std::size_t k = 0; k < judgement.classes.size(); ++k) {
        const ClassJudgement &one = judgement.classes[k];
        nlohmann::json entry{{"class", set.classes[k].id}, {"verdict", name_of(one.verdict)}};
        entry["findings"] = nlohmann::json::array();
        for (const auto &f : one.findings) entry["findings"].push_back(json_of(set, f));
        if (one.nearest) entry["nearest"] = json_of(set, *one.nearest);
        if (one.proof) entry["proof"] = json_of(set, *one.proof);
        classes.push_back(std::move(entry));
    }
    nlohmann::json out{{"form", 2},
                       {"criteria", {{"set", set.name}, {"edition", set.edition}, {"hash", set.hash}}},
                       {"vocabulary", vocabulary.hash()},
                       {"engine", engine_number},
                       {"classes", classes}};
    if (own) out["own"] = *own;
    for (const auto &one : set.fillings)
        out["filled"].push_back({{"blank", one.blank},
                                 {"class", one.class_id},
                                 {"value", exact_text(one.value)},
                                 {"entry", one.entry}});
    return canonical(out);
}

std::vector<VerdictDifference> differences(const std::string &stored, const std::string &again) {
    if (stored == again) return {};
    nlohmann::json was = parsed(stored), now = parsed(again);
    std::vector<VerdictDifference> out;
    const auto by_class = [](const nlohmann::json &body) {
        std::map<std::string, const nlohmann::json *> found;
        for (const auto &one : body.at("classes")) found[one.at("class").get<std::string>()] = &one;
        return found;
    };
    const auto before = by_class(was), after = by_class(now);
    const auto word = [](const auto &classes, const std::string &id) {
        const auto at = classes.find(id);
        return at == classes.end() ? "" : at->second->at("verdict").template get<std::string>();
    };
    for (const auto &[id, one] : before)
        if (const auto at = after.find(id); at == after.end() || *one != *at->second)
            out.push_back({id, word(before, id), word(after, id)});
    for (const auto &[id, one] : after)
        if (!before.contains(id)) out.push_back({id, "", word(after, id)});
    // All else: the criteria, and the order or number of the classes.
    if (out.empty() && was["classes"] != now["classes"]) out.push_back({});
    for (auto *body : {&was, &now})
        for (const char *key : {"engine", "vocabulary", "own", "classes"}) body->erase(key);
    if (was != now) out.push_back({});
    return out;
}

StoredVerdict verdict_from(const Entry &e) {
    const nlohmann::json body = parsed(e.body);
    StoredVerdict out;
    out.seq = e.seq;
    out.stamp = stamp_of(e);
    out.form = body.value("form", 1);
    out.set = body.at("criteria").at("set").get<std::string>();
    out.edition = body["criteria"].value("edition", "");
    out.hash = body["criteria"].at("hash").get<std::string>();
    out.vocabulary = body.value("vocabulary", "");
    out.engine = body.value("engine", 0);
    out.own = body.value("own", false);
    out.own_said = body.contains("own");
    for (const auto &c : body.at("classes"))
        out.classes.push_back({c.at("class").get<std::string>(), c.at("verdict").get<std::string>()});
    for (const auto &one : body.value("filled", nlohmann::json::array()))
        out.filled.push_back({one.at("blank").get<std::string>(), one.at("class").get<std::string>(),
                              exact_from(one.at("value").get<std::string>()),
                              one.value("entry", std::string()), ""});
    out.body = without_sign_in(e.body); // what was judged is the same whoever asked
    return out;
}

} // namespace beadbook::codec
