#pragma once

#include "browser.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/coupons.hpp"
#include "operations/examining.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"

#include <map>

namespace beadbook::test {

/// A small class on record: T-1 by L1 is accepted, T-2 by L2 rejected for a crack, of T-3 by L1 exams lack.
class School : public Browser {
public:
    School() {
        coupon("T-1", "L1");
        coupon("T-2", "L2");
        coupon("T-3", "L1");
        for (const std::string mark : {"T-1", "T-2"})
            for (const Exam method : {Exam::VT, Exam::MT, Exam::RT})
                exam(mark, method, mark == "T-1" || method != Exam::RT);
        desk([&](Writing &w) {
            log_lines(w, {"T-2", 3, "crack 0.2 in at 1 in", "line"});
            finish_exam(w, {"T-2", 3, {}, true});
        });
        exam("T-3", Exam::VT, true);
    }

    void desk(const std::function<void(Writing &)> &work) {
        Book record(book(), Ledger::Mode::create);
        Catalogue catalogue(bench.world().outside);
        Office office(record, catalogue);
        Writing writing(office, "A. Field");
        work(writing);
        commit(writing);
    }
    void coupon(const std::string &mark, const std::string &welder,
                const std::map<std::string, std::string> &more = {}) {
        std::map<std::string, std::string> fields{{"criteria", "mil-hdbk-1890-table-3"},
                                                  {"class", "2"},
                                                  {"joint", "groove"},
                                                  {"form", "tube"},
                                                  {"thickness", "0.150in"},
                                                  {"diameter", "2in"},
                                                  {"weld-length", "8in"},
                                                  {"magnetic", "yes"},
                                                  {"material", "steel"},
                                                  {"process", "GTAW"},
                                                  {"welded", "2026-11-02"},
                                                  {"welder", welder}};
        for (const auto &[name, value] : more) fields[name] = value;
        desk([&](Writing &w) { register_coupon(w, {mark, fields}); });
    }
    void exam(const std::string &mark, Exam method, bool found_none) {
        desk([&](Writing &w) {
            ExamRequest request;
            request.coupon = mark;
            request.method = method;
            request.examiner = "A. Field";
            request.level = "II";
            if (found_none) request.found = 0;
            record_exam(w, request);
        });
    }
    std::optional<Grade> grade_of(const std::string &mark) {
        Book record(book(), Ledger::Mode::read);
        return record.coupon(mark).grade;
    }
};

inline bool says(const Answer &page, const std::string &text) {
    return page.body.find(text) != std::string::npos;
}

} // namespace beadbook::test
