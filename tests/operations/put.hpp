#pragma once

#include "desk.hpp"
#include "operations/described.hpp"
#include "records/codecs/facts.hpp"
#include "records/codecs/typed.hpp"

namespace beadbook::test {

/// Puts a coupon on record as it is described, by no operation.
inline void put_coupon(OpenBook &desk, const std::string &id,
                       const std::map<std::string, std::string> &fields) {
    CouponRecord coupon = described_coupon(fields);
    coupon.id = id;
    desk.write([&](Writing &writing) {
        Entry entry;
        entry.kind = "coupon";
        entry.subject = id;
        entry.body = codec::canonical(codec::json_of(coupon));
        writing.add(std::move(entry));
    });
}

inline void put_exam(OpenBook &desk, const std::string &id, const ExamRecord &exam) {
    desk.write([&](Writing &writing) {
        Entry entry;
        entry.kind = "exam";
        entry.subject = id;
        entry.exam = exam.number;
        entry.body = codec::canonical(codec::json_of(exam));
        writing.add(std::move(entry));
    });
}

} // namespace beadbook::test
