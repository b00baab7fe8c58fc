#include "operations/logging.hpp"

#include "measure/text.hpp"
#include "operations/finishing.hpp"
#include "records/codecs/bodies.hpp"
#include "technique/plausible.hpp"

#include <sstream>

namespace beadbook {
std::vector<std::string> doubts_about(const CouponRecord &coupon,
                                      const std::vector<IndicationRecord> &indications) {
    std::vector<std::string> out;
    for (const auto &i : indications)
        if (const std::string doubt = implausible(Vocabulary::shipped(), i.type, coupon.get("process"));
            !doubt.empty())
            out.push_back("#" + std::to_string(i.number) + ": " + doubt);
    return out;
}

std::vector<IndicationRecord> parse_log(const std::string &text, const std::string &name,
                                        const WeldLine &weld, Unit unit) {
    constexpr int most_named = 20;
    std::vector<IndicationRecord> out;
    std::string faults;
    int bad = 0, number = 0;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        ++number;
        const std::string_view bare = trimmed(line);
        if (bare.empty() || bare.front() == '#') continue;
        const auto name_fault = [&](const std::string &column, const char *what) {
            if (++bad <= most_named)
                faults += "\n" + name + ":" + std::to_string(number) + column + ": " + what;
        };
        try {
            out.push_back(parse_log_line(line, weld, unit));
        } catch (const InputError &e) {
            name_fault(":" + std::to_string(e.column + 1), e.what());
        } catch (const DataError &e) {
            name_fault("", e.what());
        }
    }
    if (bad > most_named) faults += "\nand " + std::to_string(bad - most_named) + " more";
    if (bad > 0)
        throw refused(std::to_string(bad) + (bad == 1 ? " line" : " lines") +
                      " cannot be taken, nothing was stored:" + faults);
    return out;
}

int exam_for(const CouponState &coupon, int number) {
    const std::string &mark = coupon.record.id;
    if (coupon.exams.empty())
        throw refused("coupon " + mark + " has no exam yet").mend({"exam", {mark, "VT"}, {}});
    const auto refuse_finished = [&](int exam) {
        return refused("exam " + std::to_string(exam) + " of coupon " + mark +
                       " is finished; nothing more is logged under it")
            .mend({"reopen", {mark, std::to_string(exam)}, {"why"}})
            .mend({"exam", {mark, "VT"}, {}});
    };
    if (number > 0) {
        if (coupon.needed_exam(number).finished) throw refuse_finished(number);
        return number;
    }
    // A find filed under somebody else's exam is worse than a question: only one open exam is clear.
    const auto open = coupon.open_exams();
    if (open.empty()) throw refuse_finished(coupon.exams.back().number);
    if (open.size() > 1)
        throw refused("which exam found it? coupon " + mark + " has open: " + named(open)).give("exam");
    return open.front()->number;
}

std::vector<int> add_indications(Writing &writing, const std::string &coupon, int exam,
                                 std::vector<IndicationRecord> indications) {
    exam_for(writing.coupon(coupon), exam);
    std::vector<int> numbers;
    for (auto &i : indications) {
        i.number = std::max(i.number, writing.coupon(coupon).last_indication + 1);
        i.exam = exam;
        writing.add(codec::entry_of(coupon, i));
        numbers.push_back(i.number);
    }
    return numbers;
}

Done<Logged> log_lines(Writing &writing, const LogRequest &request) {
    const CouponState &state = writing.coupon(request.coupon);
    const CouponRecord coupon = state.record;
    Logged out{request.coupon, exam_for(state, request.exam), {}, {}};
    out.indications = parse_log(request.text, request.name, coupon.facts().line, coupon.unit());
    if (out.indications.empty()) throw refused("there is no line to log");
    const auto numbers = add_indications(writing, request.coupon, out.exam, out.indications);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
        out.indications[i].number = numbers[i];
        out.indications[i].exam = out.exam;
    }
    auto notes = doubts_about(coupon, out.indications);
    return {std::move(out), std::move(notes)};
}

Done<Logged> correct_indication(Writing &writing, const std::string &coupon, int number,
                                const std::string &line, const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    const CouponRecord record = state.record;
    auto parsed = parse_log(line, "line", record.facts().line, record.unit());
    if (parsed.size() != 1) throw refused("a correction is exactly one line");
    IndicationRecord &now = parsed.front();
    now.number = number;
    now.exam = state.needed_indication(number).exam;
    Entry e = codec::entry_of(coupon, now);
    e.supersedes = state.indication_seq.at(number);
    e.reason = needed_reason(why);
    writing.add(std::move(e));
    auto notes = doubts_about(record, parsed);
    return {{coupon, now.exam, parsed, {}}, std::move(notes)};
}

void withdraw_indication(Writing &writing, const std::string &coupon, int number, const std::string &why) {
    const CouponState &state = writing.coupon(coupon);
    Entry e;
    e.kind = "indication";
    e.subject = coupon;
    e.exam = state.needed_indication(number).exam;
    e.number = number;
    e.supersedes = state.indication_seq.at(number);
    e.reason = needed_reason(why);
    e.body = withdrawal(number);
    writing.add(std::move(e));
}

} // namespace beadbook
