#include "operations/streaming.hpp"

#include "measure/text.hpp"
#include "operations/bulk.hpp"
#include "records/fold.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// An import names how many lines are bad, and which; here it is this one.
std::string of_this_line(const std::string &fault) {
    std::string out;
    for (std::size_t at = fault.find('\n'); at != std::string::npos; at = fault.find('\n', at + 1)) {
        std::string one = fault.substr(at + 1, fault.find('\n', at + 1) - at - 1);
        if (one.starts_with("line 1: ")) one.erase(0, 8);
        out += (out.empty() ? "" : "; ") + one;
    }
    return out.empty() ? fault : out;
}

/// A stream has no record of people: of an examiner whose exam counts it knows what the line says.
void note_unasked(const CouponState &coupon, std::vector<std::string> &notes) {
    std::vector<std::string> examiners;
    for (const auto &exam : coupon.exams)
        if (exam.done().counts &&
            std::find(examiners.begin(), examiners.end(), exam.examiner) == examiners.end())
            examiners.push_back(exam.examiner);
    if (!examiners.empty())
        notes.push_back("no record says here whether " + listed(examiners) +
                        (examiners.size() == 1 ? " was" : " were") +
                        " entitled, or welded the coupon: this stands as the line says");
}

} // namespace

Streamed Stream::judge(const std::string &line) {
    Streamed out;
    if (!valid_utf8(line)) {
        out.fault = "not UTF-8 text";
        return out;
    }
    PreparedImport prepared;
    try {
        prepared = prepare_import(office_, {{}, line, request_.sure, false, request_.open_files, true});
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        out.fault = of_this_line(e.what());
        return out;
    }
    for (const auto &practice : prepared.practices)
        if (practices_.insert(practice->hash).second) {
            Ledger::Transaction keeping(office_.ledger());
            office_.ledger().keep_criteria(practice->hash, practice->name, practice->text);
            keeping.commit();
        }
    out.notes = std::move(prepared.done.notes);
    CouponState coupon = fold_coupon(prepared.entries);
    for (auto &exam : coupon.exams) {
        office_.check_exam_of(coupon, exam);
        office_.check_means_of(coupon.record, exam);
    }
    note_unasked(coupon, out.notes);
    out.coupon = judge_or_tell(office_, coupon, request_.by);
    return out;
}

} // namespace beadbook
