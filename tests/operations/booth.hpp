#pragma once

#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/judging.hpp"
#include "operations/logging.hpp"

namespace beadbook::test {

/// A record where coupons are registered, examined and judged.
class Booth : public Desk {
public:
    using Fields = std::map<std::string, std::string>;

    CouponRecord put(const std::string &mark, const Fields &fields = {}) {
        return write([&](Writing &w) { return register_coupon(w, {mark, fields}); }).value;
    }
    /// A groove weld for class 2 of its criteria, 8 in long; `more` sets fields or, empty, leaves them out.
    void coupon(const std::string &mark = "T-1", const Fields &more = {}) {
        Fields fields{{"criteria", "mil-hdbk-1890-table-3"},
                      {"class", "2"},
                      {"joint", "groove"},
                      {"form", "tube"},
                      {"seam", "longitudinal"},
                      {"thickness", "0.150in"},
                      {"diameter", "2in"},
                      {"weld-length", "8in"},
                      {"magnetic", "yes"},
                      {"material", "steel"},
                      {"process", "GTAW"}};
        for (const auto &[name, value] : more)
            if (value.empty())
                fields.erase(name);
            else
                fields[name] = value;
        put(mark, fields);
    }
    /// A fillet weld of 1/4 in, 6 in long, by criteria that want its size measured.
    void fillet() {
        put("T-1", {{"criteria", "ufgs-15216n"},
                    {"joint", "fillet"},
                    {"joint-form", "tee"},
                    {"form", "plate"},
                    {"seam", "straight"},
                    {"weld-length", "6in"},
                    {"thickness", "1/4in"},
                    {"fillet-size", "1/4in"},
                    {"magnetic", "no"},
                    {"process", "GTAW"},
                    {"material", "stainless steel"}});
    }
    Done<ExamRecord> exam(Exam method, const std::function<void(ExamRequest &)> &more = {},
                          const std::string &mark = "T-1") {
        ExamRequest request;
        request.coupon = mark;
        request.method = method;
        request.examiner = "A. Field";
        request.level = "II";
        if (more) more(request);
        return write([&](Writing &w) { return record_exam(w, request); });
    }
    /// All that its criteria ask for: VT and MT found nothing, the RT, its third, is open.
    void exams(const std::string &mark = "T-1") {
        for (const Exam method : {Exam::VT, Exam::MT}) exam(method, found_none, mark);
        exam(Exam::RT, {}, mark);
    }
    static void found_none(ExamRequest &request) { request.found = 0; }
    Done<Logged> log(const std::string &text, const std::string &mark = "T-1", int exam = 0) {
        return write([&](Writing &w) { return log_lines(w, {mark, exam, text, "line"}); });
    }
    void finish(int exam = 3, const std::string &mark = "T-1") {
        write([&](Writing &w) { return finish_exam(w, {mark, exam, {}, true}); });
    }
    void reopen(int exam = 3, const std::string &mark = "T-1") {
        write([&](Writing &w) { return reopen_exam(w, mark, exam, "one more look"); });
    }
    /// More finds of the RT, which is finished with them.
    void finds(const std::string &text, const std::string &mark = "T-1") {
        if (office.coupon(mark).needed_exam(3).finished) reopen(3, mark);
        if (!text.empty()) log(text, mark, 3);
        finish(3, mark);
    }
    /// One find of the RT less.
    void take_back(int number) {
        write([&](Writing &w) { withdraw_indication(w, "T-1", number, "gone"); });
        finds("");
    }
    Verdict verdict(const JudgeRequest &request = {}, const std::string &mark = "T-1") {
        return judge_coupon(office, office.coupon(mark), request).verdict();
    }

    std::size_t entries() { return static_cast<std::size_t>(book.ledger().verify().entries); }

    /// What it was refused with. The test fails if it was not, or if something was stored.
    template <class F>
    Refusal refusal(F &&what) {
        const auto before = entries();
        std::optional<Refusal> out;
        try {
            what();
        } catch (const Refusal &e) {
            out = e;
        }
        if (!out) throw std::logic_error("nothing was refused");
        if (entries() != before)
            throw std::logic_error(std::string("stored, though refused: ") + out->what());
        return *out;
    }
};

/// The field of a refusal: "criteria" if it was wrong, "give criteria" if it was missing.
inline std::string field_of(const Refusal &refusal) {
    return (refusal.missing() ? "give " : "") + refusal.field();
}

/// The remedies as words: "change T-1 criteria why".
inline std::string remedies_of(const Refusal &refusal) {
    std::string out;
    for (const auto &remedy : refusal.remedies()) {
        out += (out.empty() ? "" : "; ") + remedy.operation;
        for (const auto &word : remedy.on) out += " " + word;
        for (const auto &field : remedy.fields) out += " " + field;
    }
    return out;
}

} // namespace beadbook::test
