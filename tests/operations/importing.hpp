// Files that are imported into a desk.
#pragma once

#include "catch.hpp"
#include "operations/bulk.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"

namespace beadbook::test {

inline Imported import_into(Desk &desk, const std::string &text, std::optional<Sheet> sheet = {},
                            std::vector<std::string> *notes = nullptr, bool open_files = false) {
    ImportRequest request{sheet, text};
    request.open_files = open_files;
    auto prepared = prepare_import(desk.office, std::move(request));
    auto done = desk.write([&](Writing &w) { return store_import(w, std::move(prepared)); });
    if (notes) *notes = done.notes;
    return done.value;
}

inline std::string refusal_of(Desk &desk, const std::string &text, std::optional<Sheet> sheet = {}) {
    const auto entries = desk.book.ledger().verify().entries;
    try {
        import_into(desk, text, sheet);
    } catch (const Refusal &e) {
        CHECK(e.kind() == Refusal::Kind::data);
        CHECK(desk.book.ledger().verify().entries == entries);
        return e.what();
    }
    return "taken";
}

inline std::string file_of(const std::string &coupons) {
    return R"({"format": "beadbook exchange", "version": 1, "coupons": )" + coupons + "}";
}

inline void register_with_exam(Desk &desk, const std::string &mark, int exams = 1) {
    desk.write([&](Writing &w) {
        register_coupon(w, {mark, {{"weld-length", "8 in"}, {"process", "GTAW"}}});
        ExamRequest request;
        request.coupon = mark;
        request.method = Exam::RT;
        for (int i = 0; i < exams; ++i) record_exam(w, request);
    });
}

/// Rows for exam 1 of a coupon, one find each.
inline std::string rows(const std::string &mark, std::size_t count) {
    std::string out = "coupon,exam,type,size,at\r\n";
    for (std::size_t i = 0; i < count; ++i)
        out += mark + ",1,gas pore,0.0" + std::to_string(10 + i % 90) + "," + std::to_string(i % 8) + "\r\n";
    return out;
}

inline std::vector<int> numbers_of(Desk &desk, const std::string &mark, int exam) {
    std::vector<int> out;
    for (const auto &i : desk.book.coupon(mark).indications)
        if (i.exam == exam) out.push_back(i.number);
    return out;
}

} // namespace beadbook::test
