#include "records/codecs/line.hpp"

#include "records/codecs/parts.hpp"

namespace beadbook::codec {
namespace {

void put(PartsWriter &to, const Exact &value) {
    if (value == Exact(0)) return to.put("");
    constexpr int half = 64;
    to.put_number(static_cast<std::int64_t>(value.num() >> half));
    to.put_number(static_cast<std::int64_t>(value.num()));
    to.put_number(value.den());
}

/// Sizes by their number: they were read and checked when the line was written.
Exact value_from(PartsReader &from) {
    PartsReader ahead = from;
    if (ahead.next().empty()) {
        from = ahead;
        return 0;
    }
    constexpr int half = 64;
    const Int128 high = from.number();
    const auto low = static_cast<std::uint64_t>(from.number());
    const Int128 number = high * (static_cast<Int128>(1) << half) + static_cast<Int128>(low);
    const std::int64_t below = from.number();
    return below == 1 ? Exact::whole(number) : Exact::fraction(number, below);
}

void put(PartsWriter &to, const CouponRecord &record) {
    to.put(record.id);
    to.put(record.withdrawn);
    to.put_all(record.fields, [&](const auto &field) {
        to.put(field.first);
        to.put(field.second.text);
        put(to, field.second.value);
    });
    to.put_all(record.sure, [&](const auto &rule) { to.put(rule); });
    to.put(carried_cell(record.before));
}

CouponRecord record_from(PartsReader &from) {
    CouponRecord out;
    out.id = from.text();
    out.withdrawn = from.text();
    from.each([&] {
        CouponValue &given = out.fields.emplace_hint(out.fields.end(), from.next(), CouponValue{})->second;
        given.text = from.text();
        given.value = value_from(from);
    });
    from.each([&] { out.sure.push_back(from.text()); });
    out.before = carried_from_cell(from.text());
    return out;
}

void put(PartsWriter &to, const Grade &grade, const GradeStanding &standing) {
    for (const bool one :
         {grade.passed, grade.against_verdict, grade.against_mechanical, grade.after_fail, grade.after_turn})
        to.put(one ? "1" : "");
    for (const std::string *text : {&grade.class_id, &grade.remark, &grade.stamp.at, &grade.stamp.who})
        to.put(*text);
    to.put_number(grade.seq);
    to.put_number(static_cast<int>(standing.state));
    to.put_number(static_cast<int>(standing.now));
    to.put(standing.was);
    to.put(standing.why);
    to.put(standing.by_other);
}

void take_grade(CouponLine &out, PartsReader &from) {
    Grade &grade = out.grade.emplace();
    for (bool *one : {&grade.passed, &grade.against_verdict, &grade.against_mechanical, &grade.after_fail,
                      &grade.after_turn})
        *one = !from.next().empty();
    for (std::string *text : {&grade.class_id, &grade.remark, &grade.stamp.at, &grade.stamp.who})
        *text = from.text();
    grade.seq = from.number();
    GradeStanding &standing = out.grade_standing;
    standing.state = static_cast<GradeStanding::State>(from.number());
    standing.now = static_cast<Verdict>(from.number());
    standing.was = from.text();
    standing.why = from.text();
    standing.by_other = from.text();
}

} // namespace

std::string body_of(const CouponLine &line) {
    PartsWriter to;
    put(to, line.record);
    to.put_all(line.exams, [&](const ExamAtAGlance &exam) {
        to.put_number(static_cast<int>(exam.method));
        to.put(exam.open ? "1" : "");
        to.put(exam.counts ? "1" : "");
    });
    to.put(line.unfinished ? "1" : "");
    to.put_number(static_cast<std::int64_t>(line.indications));
    to.put(line.verdict ? std::to_string(static_cast<int>(*line.verdict)) : "");
    to.put(line.why_not);
    to.put(line.own_file);
    to.put(line.cautions ? "1" : "");
    to.put(line.written_beside ? "1" : "");
    to.put_all(line.said_otherwise, [&](const std::string &field) { to.put(field); });
    to.put_all(line.finds, [&](const CouponLine::Find &find) {
        to.put(find.imperfection);
        to.put_number(static_cast<int>(find.part));
        to.put(find.rejects ? "1" : "");
        to.put(find.held ? "1" : "");
        to.put(find.unjudged ? "1" : "");
    });
    to.put_all(line.rejected_by, [&](const std::string &rule) { to.put(rule); });
    to.put(line.grade ? "1" : "");
    if (line.grade) put(to, *line.grade, line.grade_standing);
    return std::move(to).text();
}

CouponLine line_from(const std::string &body) {
    PartsReader from(body);
    CouponLine out;
    const auto yes = [&] { return !from.next().empty(); };
    out.record = record_from(from);
    from.each([&] {
        ExamAtAGlance &exam = out.exams.emplace_back();
        exam.method = static_cast<Exam>(from.number());
        exam.open = yes();
        exam.counts = yes();
    });
    out.unfinished = yes();
    out.indications = static_cast<std::size_t>(from.number());
    if (const auto verdict = from.next(); !verdict.empty())
        out.verdict = static_cast<Verdict>(verdict.front() - '0');
    out.why_not = from.text();
    out.own_file = from.text();
    out.cautions = yes();
    out.written_beside = yes();
    from.each([&] { out.said_otherwise.push_back(from.text()); });
    from.each([&] {
        CouponLine::Find &find = out.finds.emplace_back();
        find.imperfection = from.text();
        find.part = static_cast<WeldPart>(from.number());
        find.rejects = yes();
        find.held = yes();
        find.unjudged = yes();
    });
    from.each([&] { out.rejected_by.push_back(from.text()); });
    if (yes()) take_grade(out, from);
    if (!from.at_end()) throw StoreError("what lists say of a coupon cannot be read: more stands behind it");
    return out;
}

} // namespace beadbook::codec
