#include "render/json_judging.hpp"

#include "criteria/provenance.hpp"
#include "operations/told_class.hpp"
#include "records/codecs/facts.hpp"
#include "render/json_parts.hpp"
#include "render/json_proof.hpp"
#include "render/json_standing.hpp"
#include "report/finding_place.hpp"
#include "report/own_file.hpp"
#include "report/standing_document.hpp"
#include "report/standings.hpp"
#include "report/usual_cause.hpp"

namespace beadbook {

namespace {

nlohmann::json finding_json(const Case &c, std::size_t class_index, const Finding &f) {
    nlohmann::json out{{"kind", id_of(f.kind)},
                       {"effect", name_of(f.effect)},
                       {"sentence", sentence(c, class_index, f)},
                       {"authority", authority(c, class_index, f)}};
    if (f.rule >= 0) {
        const Rule &rule = c.set.rules[static_cast<std::size_t>(f.rule)];
        const Standing &standing = rule.standings[class_index];
        out["rule"] = rule.id;
        out["clause"] = rule.clause;
        out["standing"] = name_of(standing.kind);
        out["source"] = standing.source;
        if (!standing.confirmed.empty()) out["confirmed"] = standing.confirmed;
        if (f.missing.has(Missing::blank()))
            for (const Slot slot : c.set.blanks_of(rule, class_index))
                out["blanks"].push_back(c.set.blanks[slot].id);
        if (f.has_numbers) {
            // With as many digits as tell them apart, as in sentences.
            const PrintedPair told = print_against(rule, f.measured, f.limit, c.unit);
            out["measured"] = render::number(f.measured, told.first);
            out["limit"] = render::number(f.limit, told.second);
            out["margin"] = render::number(f.limit - f.measured, rule.dimension(), c.unit);
            if (f.ratio < 1e12) out["ratio"] = f.ratio; // JSON knows no infinity
        }
    }
    if (!f.indications.empty()) out["indications"] = f.indications;
    if (const auto place = laid_place(c, class_index, f))
        out["place"] = {{"from nm", place->from.nm},
                        {"to nm", place->to.nm},
                        {"text", print_place(*place, c.coupon.line, c.unit)}};
    if (f.missing.any()) out["missing"] = names_of(f.missing);
    for (const Exam e : f.exams) out["exams"].push_back(name_of(e));
    return out;
}

nlohmann::json judged_json(const Judged &judged) {
    const Case c = case_of(judged);
    nlohmann::json classes = nlohmann::json::array();
    for (std::size_t k = 0; k < judged.judgement.classes.size(); ++k) {
        const ClassJudgement &one = judged.judgement.classes[k];
        nlohmann::json entry{{"class", c.set.classes[k].id}, {"verdict", name_of(one.verdict)}};
        entry["findings"] = nlohmann::json::array();
        for (const auto &f : one.findings) entry["findings"].push_back(finding_json(c, k, f));
        if (one.nearest) entry["nearest"] = finding_json(c, k, *one.nearest);
        entry["standings"] = render::standings_json(standings_behind(one, c.set, k));
        if (one.proof) entry["proof"] = render::proof_json(c, judged, k);
        classes.push_back(std::move(entry));
    }
    nlohmann::json criteria{{"set", c.set.name},
                            {"edition", c.set.edition},
                            {"hash", c.set.hash},
                            {"shipped", is_shipped_set(c.set.name, c.set.hash)}};
    if (!judged.by_other_text.empty()) criteria["by another text on"] = judged.by_other_text;
    if (!judged.rejected_by_text.empty()) criteria["rejected by another text"] = judged.rejected_by_text;
    if (const auto lacking = lacking_words(c.set); !lacking.empty()) criteria["lacks"] = lacking;
    if (!is_shipped_set(c.set.name, c.set.hash))
        if (const auto passes = own_planar_passes(c.set, judged.sought); !passes.empty())
            criteria["lets cracks pass"] = passes;
    if (const auto doubts = own_doubts(c.set); !doubts.empty()) criteria["doubts"] = doubts;
    if (const auto answers = own_answers(c.set); !answers.empty()) criteria["answers for itself"] = answers;
    if (const auto looser = own_looser(judged); !looser.empty()) criteria["looser"] = looser;
    nlohmann::json out{{"coupon", judged.mark},
                       {"criteria", std::move(criteria)},
                       {"classes", classes},
                       {"verdict", name_of(judged.outcome())}};
    if (!judged.mechanical.empty()) out["mechanical"] = judged.mechanical;
    render::add_taken_back(out, judged.taken_back);
    if (!judged.withdrawn.empty()) out["withdrawn"] = judged.withdrawn;
    if (!judged.said.empty()) out["said"] = judged.said;
    if (const auto cautions = judged.cautions(); !cautions.empty()) out["cautions"] = cautions;
    if (judged.with_cautions()) out["with cautions"] = true;
    for (const auto &one : judged.sure) {
        nlohmann::json sure{{"rules", one.rules}};
        if (one.exam > 0) sure["exam"] = one.exam;
        if (one.number > 0) sure["number"] = one.number;
        out["sure"].push_back(std::move(sure));
    }
    if (judged.sought) out["class"] = c.set.classes[*judged.sought].id;
    return out;
}

nlohmann::json grade_json(const Grade &grade) {
    nlohmann::json out = codec::json_of(grade);
    out["at"] = grade.stamp.at;
    out["by"] = grade.stamp.who;
    return out;
}

nlohmann::json grade_json(const Grade &grade, const GradeStanding &standing) {
    nlohmann::json out = grade_json(grade);
    render::add_standing(out, standing);
    return out;
}

nlohmann::json graded_json(const Graded &g) {
    nlohmann::json out = grade_json(g.grade);
    out["coupon"] = g.mark;
    out["verdict"] = name_of(g.verdict);
    return out;
}

} // namespace

std::string json_text(const Judged &judged, const std::vector<std::string> &notes) {
    return render::finished(judged_json(judged), notes);
}

std::string json_text(const JudgedOrNot &one, const std::vector<std::string> &notes) {
    if (one.judged) return json_text(*one.judged, notes);
    return render::finished({{"coupon", one.mark}, {"not judged", one.why_not}}, notes);
}

std::string json_line(std::size_t number, const Streamed &one) {
    nlohmann::json out{{"error", one.fault}};
    if (one.coupon.judged)
        out = judged_json(*one.coupon.judged);
    else if (one.fault.empty())
        out = {{"coupon", one.coupon.mark}, {"not judged", one.coupon.why_not}};
    out["line"] = number;
    if (!one.notes.empty()) out["notes"] = one.notes;
    return escaped_for_json(out.dump()) + "\n";
}

nlohmann::json render::explained_json(const Explained &e) {
    nlohmann::json out = judged_json(e.judged);
    if (!e.welder.empty()) out["welder"] = e.welder;
    if (e.grade) out["grade"] = grade_json(*e.grade, e.grading);
    render::add_described_since(out, e.described_since);
    if (!e.mechanical_asked_by.empty()) out["mechanical asked by"] = e.mechanical_asked_by;
    for (const auto &r : e.remarks)
        out["remarks"].push_back({{"text", r.text}, {"at", r.stamp.at}, {"by", r.stamp.who}});
    const Case c = case_of(e.judged);
    const std::size_t k = told_class(e.judged);
    auto finding = out["classes"][k]["findings"].begin();
    for (const auto &f : e.judged.judgement.classes[k].findings) {
        if (const std::string said = plain_words(c, f); !said.empty()) (*finding)["says"] = said;
        ++finding;
    }
    for (const auto &one : usual_causes(c, e.judged.judgement.classes[k]))
        out["causes"][one.of] = {{"cause", one.cause}, {"remedy", one.remedy}};
    return out;
}

std::string json_text(const Explained &e, const std::vector<std::string> &notes) {
    return render::finished(render::explained_json(e), notes);
}

namespace {

nlohmann::json compared_json(const ComparedCoupon &one) {
    const auto outcome = one.outcome();
    nlohmann::json out{{"coupon", one.record.id},
                       {"verdict", outcome ? name_of(*outcome) : "not judged"},
                       {"found", nlohmann::json::object()},
                       {"exams", nlohmann::json::array()}};
    if (const std::string welded = one.record.get("welded"); !welded.empty()) out["welded"] = welded;
    for (const Exam exam : one.exams) out["exams"].push_back(name_of(exam));
    for (const auto &[type, count] : one.found) out["found"][type] = count;
    if (!one.said.empty()) out["on record"] = one.said;
    if (one.record.bends_failed()) out["mechanical"] = "failed";
    if (one.cautions) out["with cautions"] = true;
    if (!one.own_file.empty()) out["own file"] = one.own_file;
    if (!one.not_allowed.empty()) out["not allowed"] = one.not_allowed;
    if (one.worst)
        out["worst"] = {{"rule", one.worst->rule},
                        {"percent", static_cast<std::int64_t>(one.worst->percent)},
                        {"minimum", one.worst->least},
                        {"out", one.worst->out}};
    return out;
}

nlohmann::json alike_json(const AlikeCoupons &alike) {
    nlohmann::json out{{"coupons", nlohmann::json::array()}};
    for (const auto &[name, value] :
         {std::pair("criteria", alike.criteria), {"class", alike.class_id}, {"joint", alike.joint}})
        if (!value.empty()) out[name] = value;
    for (const auto &one : alike.coupons) out["coupons"].push_back(compared_json(one));
    return out;
}

} // namespace

std::string json_text(const Learner &learner, const std::vector<std::string> &notes) {
    nlohmann::json coupons = nlohmann::json::array();
    for (const auto &one : learner.coupons) {
        nlohmann::json coupon = codec::json_of(one.record);
        nlohmann::json out{{"id", one.record.id}, {"fields", coupon["fields"]}};
        if (!one.record.withdrawn.empty()) out["withdrawn"] = one.record.withdrawn;
        if (one.explained) {
            out["why"] = render::explained_json(*one.explained);
        } else {
            out["not judged"] = one.why_not;
            if (one.grade) out["grade"] = grade_json(*one.grade, one.grading);
            for (const auto &r : one.remarks)
                out["remarks"].push_back({{"text", r.text}, {"at", r.stamp.at}, {"by", r.stamp.who}});
        }
        render::add_next(out, one.after.next);
        if (!one.after.failed_by.empty()) out["failed by"] = one.after.failed_by;
        for (const auto &held : one.after.unsettled) out["unsettled"].push_back(standing_words(held).plain());
        coupons.push_back(std::move(out));
    }
    nlohmann::json out{{"welder", learner.welder},
                       {"accepted", learner.accepted.count},
                       {"decided", learner.accepted.of},
                       {"coupons", std::move(coupons)}};
    if (!learner.name.empty()) out["name"] = learner.name;
    for (const auto &alike : learner.alike) out["alike"].push_back(alike_json(alike));
    for (const auto &one : learner.said_of_another)
        out["said of another"].push_back(
            {{"coupon", one.coupon}, {"welder", one.welder}, {"failed by", one.failed_by}});
    return render::finished(std::move(out), notes);
}

std::string json_text(const Graded &g, const std::vector<std::string> &notes) {
    return render::finished(graded_json(g), notes);
}

std::string json_text(const GradedMany &done, const std::vector<std::string> &notes) {
    nlohmann::json out{{"graded", nlohmann::json::array()}, {"left out", nlohmann::json::array()}};
    for (const auto &one : done.graded) {
        nlohmann::json graded = graded_json(one.graded);
        graded["decided by"] = deciding_words(one.judged);
        if (one.judged.with_cautions()) graded["with cautions"] = true;
        out["graded"].push_back(std::move(graded));
    }
    for (const auto &one : done.left_out)
        out["left out"].push_back({{"coupon", one.coupon}, {"why", one.why}});
    return render::finished(std::move(out), notes);
}

} // namespace beadbook
