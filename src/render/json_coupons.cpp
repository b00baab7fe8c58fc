#include "render/json_coupons.hpp"

#include "operations/shortcoming_words.hpp"
#include "records/changed_values.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"
#include "render/json_parts.hpp"
#include "render/json_photos.hpp"
#include "report/coupon_document.hpp"

#include <algorithm>

namespace beadbook {
namespace {

nlohmann::json coupon_json(const CouponState &c) {
    nlohmann::json out = codec::json_of(c.record);
    out["exams"] = nlohmann::json::array();
    for (const auto &e : c.exams) {
        nlohmann::json exam = codec::json_of(e);
        if (e.level_as_typed) exam["level as typed"] = true;
        if (!e.invalid.empty()) exam["not valid"] = e.invalid;
        if (!e.open.empty()) exam["does not count"] = e.open;
        if (const auto cautions = e.cautions(); !cautions.empty()) exam["cautions"] = cautions;
        exam["indications"] = nlohmann::json::array();
        for (const auto &i : c.indications)
            if (i.exam == e.number) exam["indications"].push_back(codec::json_of(i));
        for (const auto &gone : c.moved_away())
            if (gone.exam == e.number)
                exam["moved away"].push_back({{"number", gone.number},
                                              {"to coupon", gone.coupon.empty() ? c.record.id : gone.coupon},
                                              {"to exam", gone.to_exam},
                                              {"to number", gone.to_number},
                                              {"why", gone.why}});
        out["exams"].push_back(std::move(exam));
    }
    return out;
}

nlohmann::json stamped(nlohmann::json json, const Stamp &stamp) {
    json["at"] = stamp.at;
    json["by"] = stamp.who;
    if (stamp.signed_in) json["signed in"] = true;
    return json;
}

nlohmann::json exam_json(const std::string &coupon, const ExamRecord &exam) {
    nlohmann::json out = codec::json_of(exam);
    out["coupon"] = coupon;
    if (exam.level_as_typed) out["level as typed"] = true;
    if (!exam.invalid.empty()) out["not valid"] = exam.invalid;
    if (!exam.open.empty()) out["does not count"] = exam.open;
    if (const auto cautions = exam.cautions(); !cautions.empty()) out["cautions"] = cautions;
    return out;
}

nlohmann::json all_of(const std::vector<CouponRecord> &coupons) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &coupon : coupons) out.push_back(codec::json_of(coupon));
    return out;
}

} // namespace

std::string json_text(const Registered &done, const std::vector<std::string> &notes) {
    return render::finished(codec::json_of(done.coupon), notes);
}

std::string json_text(const RegisteredMany &done, const std::vector<std::string> &notes) {
    return render::finished(all_of(done.coupons), notes);
}

std::string json_text(const Changed &done, const std::vector<std::string> &notes) {
    return render::finished(codec::json_of(done.coupon), notes);
}

std::string json_text(const ChangedMany &done, const std::vector<std::string> &notes) {
    return render::finished(all_of(done.coupons), notes);
}

std::string json_text(const CouponWithdrawn &done, const std::vector<std::string> &notes) {
    return render::finished(
        {{"withdrawn", "coupon"}, {"coupon", done.coupon.id}, {"why", done.coupon.withdrawn}}, notes);
}

std::string json_text(const CouponRestored &done, const std::vector<std::string> &notes) {
    return render::finished(codec::json_of(done.coupon), notes);
}

std::string json_text(const Moved &done, const std::vector<std::string> &notes) {
    nlohmann::json now = codec::json_of(done.now);
    now["line"] = print_log_line(done.now);
    return render::finished({{"coupon", done.coupon}, {"indication", now}}, notes);
}

std::string json_text(const Remark &done, const std::vector<std::string> &notes) {
    return render::finished(stamped(codec::json_of(done), done.stamp), notes);
}

std::string json_text(const CouponList &list, const std::vector<std::string> &notes) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &one : list.coupons) {
        const std::string bends = one.record.get("mechanical");
        const auto outcome = one.outcome();
        nlohmann::json line{
            {"id", one.record.id},
            {"fields", codec::json_of(one.record)["fields"]},
            {"exams", one.exams.size()},
            {"indications", one.indications},
            {"verdict", !one.record.withdrawn.empty() ? "withdrawn"
                        : outcome                     ? std::string(name_of(*outcome))
                                                      : one.why_not},
            {"grade",
             one.grade ? one.grade->decision() +
                             (against_text(*one.grade).empty() ? "" : " (" + against_text(*one.grade) + ")")
                       : ""}};
        if (!bends.empty()) line["mechanical"] = bends;
        if (one.cautions) line["with cautions"] = true;
        if (one.written_beside) line["written beside"] = true;
        if (!one.said_otherwise.empty()) line["said otherwise"] = one.said_otherwise;
        if (!one.own_file.empty()) line["own file"] = one.own_file;
        for (const auto &exam : one.exams) {
            if (exam.open) line["open exams"].push_back(name_of(exam.method));
            if (!exam.open && !exam.counts) line["exams that do not count"].push_back(name_of(exam.method));
        }
        if (!one.record.withdrawn.empty()) line["withdrawn"] = one.record.withdrawn;
        render::add_standing(line, one.grade_standing);
        out.push_back(std::move(line));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const CouponSheet &sheet, const std::vector<std::string> &notes) {
    const CouponState &c = sheet.coupon;
    nlohmann::json out = coupon_json(c);
    for (const auto &v : c.verdicts) {
        out["verdicts"].push_back(stamped({{"entry", v.seq}, {"verdict", codec::parsed(v.body)}}, v.stamp));
        if (std::find(sheet.older_than_filled.begin(), sheet.older_than_filled.end(), v.seq) !=
            sheet.older_than_filled.end())
            out["verdicts"].back()["older than filled"] = true;
    }
    for (const auto &r : c.remarks) out["remarks"].push_back(stamped(codec::json_of(r), r.stamp));
    render::add_photos(out, c.photos);
    if (c.grade) {
        out["grade"] = stamped(codec::json_of(*c.grade), c.grade->stamp);
        out["grade"]["remark"] = c.grade->remark;
        out["grade"]["against verdict"] = c.grade->against_verdict;
        render::add_standing(out["grade"], sheet.grade_standing);
    }
    if (!sheet.mechanical_asked_by.empty()) out["mechanical asked by"] = sheet.mechanical_asked_by;
    if (!sheet.said_before_correction.empty()) out["said before correction"] = sheet.said_before_correction;
    render::add_described_since(out, sheet.described_since);
    render::add_taken_back(out, sheet.taken_back);
    for (const auto &held : sheet.qualified) {
        nlohmann::json one{{"welder", held.mark},
                           {"number", held.record.number},
                           {"rules", held.rules->name},
                           {"state", name_of(held.validity.state)},
                           {"with caution", held.validity.with_caution}};
        for (const auto &aside : held.aside) one["rests on"].push_back(words_of(aside, held.rules.get()));
        out["qualifications"].push_back(std::move(one));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const std::vector<Entry> &history, const std::vector<std::string> &notes) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &e : history) {
        nlohmann::json one{{"entry", e.seq}, {"at", e.at},
                           {"by", e.who},    {"signed in", stamp_of(e).signed_in},
                           {"kind", e.kind}, {"body", codec::parsed(e.body)},
                           {"hash", e.hash}};
        if (e.exam) one["exam"] = *e.exam;
        if (e.number) one["number"] = *e.number;
        if (e.supersedes) one["supersedes"] = *e.supersedes, one["reason"] = e.reason;
        for (const auto &change : changed_values(history, e)) {
            nlohmann::json value{{"name", change.name}};
            if (!change.before.empty()) value["before"] = change.before;
            if (!change.now.empty()) value["now"] = change.now;
            one["changes"].push_back(std::move(value));
        }
        out.push_back(std::move(one));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const ExamsRecorded &done, const std::vector<std::string> &notes) {
    nlohmann::json out = nlohmann::json::array();
    for (std::size_t i = 0; i < done.exams.size(); ++i)
        out.push_back(exam_json(done.coupons[i], done.exams[i]));
    return render::finished(std::move(out), notes);
}

std::string json_text(const SheetTaken &done, const std::vector<std::string> &notes) {
    nlohmann::json out = nlohmann::json::array();
    for (const auto &part : done.parts) {
        nlohmann::json exam = exam_json(part.coupon, part.exam);
        exam["indications"] = nlohmann::json::array();
        for (const auto &found : part.found) exam["indications"].push_back(codec::json_of(found));
        out.push_back(std::move(exam));
    }
    return render::finished(std::move(out), notes);
}

std::string json_text(const ExamRecorded &done, const std::vector<std::string> &notes) {
    return render::finished(exam_json(done.coupon, done.exam), notes);
}

std::string json_text(const ExamFinishedNow &done, const std::vector<std::string> &notes) {
    return render::finished(exam_json(done.coupon, done.exam), notes);
}

std::string json_text(const ExamsFinished &done, const std::vector<std::string> &notes) {
    nlohmann::json out = nlohmann::json::array();
    for (std::size_t i = 0; i < done.exams.size(); ++i)
        out.push_back(exam_json(done.coupons[i], done.exams[i]));
    return render::finished(std::move(out), notes);
}

std::string json_text(const ExamReopened &done, const std::vector<std::string> &notes) {
    return render::finished(exam_json(done.coupon, done.exam), notes);
}

std::string json_text(const FinishedAll &done, const std::vector<std::string> &notes) {
    return render::finished({{"finished", done.exams}}, notes);
}

std::string json_text(const Logged &done, const std::vector<std::string> &notes) {
    nlohmann::json found = nlohmann::json::array();
    for (const auto &i : done.indications) {
        nlohmann::json one = codec::json_of(i);
        one["line"] = print_log_line(i);
        found.push_back(std::move(one));
    }
    nlohmann::json out{
        {"coupon", done.coupon}, {"exam", done.exam}, {"exams", done.exams()}, {"indications", found}};
    if (done.finished) out["finished"] = {{"found", *done.finished}};
    if (!done.none.empty()) out["none"] = done.none;
    return render::finished(std::move(out), notes);
}

std::string json_text(const Corrected &done, const std::vector<std::string> &notes) {
    return render::finished({{"corrected", done.now.number}, {"line", print_log_line(done.now)}}, notes);
}

std::string json_text(const Withdrawn &done, const std::vector<std::string> &notes) {
    return render::finished({{"withdrawn", done.what}, {"number", done.number}}, notes);
}

} // namespace beadbook
