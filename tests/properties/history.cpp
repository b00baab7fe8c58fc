#include "properties/history.hpp"

#include "measure/text.hpp"
#include "operations/booth.hpp"
#include "operations/record_sheet.hpp"
#include "render/text.hpp"
#include "report/record_document.hpp"

#include <algorithm>
#include <set>

namespace beadbook::test {

History::History(Pick pick, HistoryTally &tally) : pick_(std::move(pick)), tally_(tally) {
    yard_.write([](Writing &w) { return enrol(w, {"L2", "S. Helm", {}, {}, ""}); });
    write_file(yard_.file("two.yaml"),
               "rules: two\ntitle: t\nedition: e\nunits: in\nvariables: [thickness]\n"
               "ranges: [{id: a, of: thickness, allows: same, clause: c, standing: {house: x}}]\n"
               "examinations: [{id: v, one of: [VT], clause: \"5\", standing: {house: x}}]\n"
               "validity: [{id: v, use every: 6 months, clause: c, standing: {house: x}}]\n"
               "retest: {immediate: {coupons: 2, clause: \"7\", standing: {house: x}}}\n"
               "renewal: {coupons: 1, clause: \"8\", standing: {house: x}}\n");
    write_file(yard_.file("longer.yaml"),
               "rules: longer\ntitle: t\nedition: e\nunits: in\nvariables: [thickness]\n"
               "ranges: [{id: a, of: thickness, allows: same, clause: c, standing: {house: x}}]\n"
               "validity: [{id: v, lasts: 2 years, clause: c, standing: {house: x}, extension: {welds: 2, "
               "within: 6 months, adds: 2 years, clause: d, standing: {house: x}}}]\n");
}

void History::step() {
    struct Way {
        const char *name;
        void (History::*run)();
        int weight;
    };
    static const Way ways[] = {{"weld a test", &History::weld, 7},
                               {"weld and leave it unexamined", &History::weld_only, 1},
                               {"examine", &History::examine, 2},
                               {"log more", &History::log_more, 4},
                               {"correct a find", &History::correct_find, 2},
                               {"withdraw a find", &History::withdraw_find, 2},
                               {"withdraw an exam", &History::withdraw_one_exam, 1},
                               {"reopen an exam", &History::reopen, 1},
                               {"finish", &History::finish, 2},
                               {"change a coupon", &History::change, 3},
                               {"grade", &History::grade, 6},
                               {"qualify", &History::qualify, 6},
                               {"qualify by override", &History::qualify_by_override, 2},
                               {"renew", &History::renew_one, 5},
                               {"renew by override", &History::renew_by_override, 4},
                               {"extend", &History::extend_one, 3},
                               {"use", &History::use, 1},
                               {"train", &History::train, 1},
                               {"revoke", &History::revoke_one, 1},
                               {"retract", &History::retract_one, 1}};
    int all = 0;
    for (const auto &way : ways) all += way.weight;
    int at = pick(0, all - 1);
    const Way *way = ways;
    while (at >= way->weight) at -= (way++)->weight;
    trail_ += std::string(trail_.empty() ? "" : ", ") + way->name;
    try {
        (this->*way->run)();
        ++tally_.done[way->name];
    } catch (const Refusal &e) {
        if (e.kind() == Refusal::Kind::record) throw;
        trail_ += " (refused)"; // most steps at random are
        tally_.refused[way->name] = e.what();
    }
}

std::vector<std::string> History::faults() {
    std::vector<std::string> out;
    for (const char *mark : {"L1", "L2"}) {
        const WelderStanding standing = standing_of(yard_.office, mark);
        for (const auto &held : standing.held) {
            ++tally_.seen[std::string(name_of(held.validity.state))];
            if (held.validity.state == Validity::State::valid) look_at(standing, held, out);
        }
    }
    return out;
}

std::string History::mark() {
    const auto all = yard_.book.coupons();
    if (all.empty()) throw InputError("no coupon yet");
    return all[static_cast<std::size_t>(pick(0, static_cast<int>(all.size()) - 1))];
}

std::string History::day() {
    static const char *const days[] = {"2025-03-01", "2025-05-10", "2026-06-20",
                                       "2026-08-01", "2026-10-05", "2026-11-20"};
    return days[pick(0, 5)];
}

std::string History::rules() {
    const int n = pick(0, 3);
    return n == 0 ? yard_.file("longer.yaml") : n == 1 ? "asme-ix" : yard_.file("two.yaml");
}

int History::exam_of(const std::string &coupon) {
    const CouponState state = yard_.office.coupon(coupon);
    if (state.exams.empty()) throw InputError("no exam yet");
    return state.exams[static_cast<std::size_t>(pick(0, static_cast<int>(state.exams.size()) - 1))].number;
}

int History::find_of(const std::string &coupon) {
    const CouponState state = yard_.office.coupon(coupon);
    if (state.indications.empty()) throw InputError("no find yet");
    return state
        .indications[static_cast<std::size_t>(pick(0, static_cast<int>(state.indications.size()) - 1))]
        .number;
}

std::string History::find() {
    return one_in(2) ? "crack 0.1 at 1 in" : "pore 0.01 at " + std::to_string(pick(1, 4)) + " in";
}

int History::held_number(const std::string &who) {
    const auto held = yard_.book.welder(who).qualifications;
    if (held.empty()) throw InputError("nothing held");
    return held[static_cast<std::size_t>(pick(0, static_cast<int>(held.size()) - 1))].number;
}

int History::held_number(const std::string &who, Validity::State state, bool extension) {
    std::vector<int> numbers;
    for (const auto &held : held_by(yard_.office, who, yard_.outside.today()))
        if (held.validity.state == state && (!extension || held.way().extension))
            numbers.push_back(held.record.number);
    if (numbers.empty()) throw InputError("nothing held stands so");
    return numbers[static_cast<std::size_t>(pick(0, static_cast<int>(numbers.size()) - 1))];
}

void History::weld() {
    const std::string id = "Q-" + std::to_string(++coupons_);
    Yard::Fields fields{{"welder", welder()}, {"metal-group", ""}};
    if (one_in(2)) fields.insert({{"criteria", "mil-hdbk-1890-table-3"}, {"class", "3"}});
    yard_.coupon(id, day(), !one_in(6), fields,
                 one_in(6) ? std::vector<Exam>{Exam::VT} : std::vector<Exam>{Exam::VT, Exam::MT, Exam::RT});
}

void History::weld_only() {
    const std::string id = "Q-" + std::to_string(++coupons_);
    yard_.coupon(id, day(), true, {{"welder", welder()}}, {});
}

void History::examine() {
    ExamRequest request;
    request.coupon = mark();
    request.method = static_cast<Exam>(pick(0, 3));
    request.examiner = one_in(5) ? "" : "A. Field";
    request.level = one_in(5) ? "I" : "II";
    if (one_in(2)) request.found = 0;
    yard_.write([&](Writing &w) { return record_exam(w, request); });
}

void History::log_more() {
    const std::string coupon = mark();
    const int exam = exam_of(coupon);
    yard_.write([&](Writing &w) {
        if (w.coupon(coupon).needed_exam(exam).finished) reopen_exam(w, coupon, exam, "one more look");
        log_lines(w, {coupon, exam, find(), "line"});
        if (!one_in(3)) finish_exam(w, {coupon, exam, {}, true});
    });
}

void History::correct_find() {
    const std::string coupon = mark();
    const int number = find_of(coupon);
    yard_.write([&](Writing &w) { return correct_indication(w, coupon, number, find(), "read wrong"); });
}

void History::withdraw_find() {
    const std::string coupon = mark();
    const int number = find_of(coupon);
    yard_.write([&](Writing &w) {
        const int exam = w.coupon(coupon).needed_indication(number).exam;
        withdraw_indication(w, coupon, number, "ground out");
        if (one_in(2)) return;
        reopen_exam(w, coupon, exam, "one find less");
        finish_exam(w, {coupon, exam, {}, true});
    });
}

void History::withdraw_one_exam() {
    const std::string coupon = mark();
    const int exam = exam_of(coupon);
    yard_.write([&](Writing &w) { withdraw_exam(w, coupon, exam, "of another coupon"); });
}

void History::reopen() {
    const std::string coupon = mark();
    const int exam = exam_of(coupon);
    yard_.write([&](Writing &w) { return reopen_exam(w, coupon, exam, "one more look"); });
}

void History::finish() {
    const std::string coupon = mark();
    const CouponState state = yard_.office.coupon(coupon);
    const auto open = state.open_exams();
    const int exam = open.empty() ? 0 : open.front()->number;
    yard_.write([&](Writing &w) { return finish_exam(w, {coupon, exam, {}, true}); });
}

void History::change() {
    static const Yard::Fields changes[] = {{{"mechanical", "failed"}}, {{"mechanical", "passed"}},
                                           {{"purpose", "practice"}},  {{"purpose", "test"}},
                                           {{"thickness", "0.05in"}},  {{"thickness", "0.15in"}},
                                           {{"magnetic", "no"}},       {{"class", "1"}},
                                           {{"welder", "L2"}},         {{"welder", "L1"}}};
    yard_.change(mark(), changes[pick(0, 9)]);
}

void History::qualify_with(const std::string &override_why) {
    yard_.write([&](Writing &w) {
        return beadbook::qualify(w, {mark(), rules(), "", {{"metal-group", "P1"}}, override_why});
    });
}

void History::renew_with(const std::string &override_why) {
    const std::string who = "L1";
    const int number = held_number(who, Validity::State::lapsed);
    yard_.write([&](Writing &w) {
        return renew(w, {who, number, {mark()}, {{"metal-group", "P1"}}, override_why});
    });
}

void History::extend_one() {
    const std::string who = "L1";
    const int number = held_number(who, Validity::State::valid, true);
    yard_.write([&](Writing &w) {
        return extend(w, {who,
                          number,
                          {},
                          {"2026-10-01 RT accepted by A. Field, job 4"},
                          {mark()},
                          one_in(2) ? why_aside : ""});
    });
}

void History::use() {
    yard_.write([&](Writing &w) { return log_use(w, {welder(), "GTAW", {}, "job 4"}); });
}

void History::train() {
    yard_.write([&](Writing &w) { return log_training(w, {welder(), "GTAW", {}, "six hours"}); });
}

void History::revoke_one() {
    const std::string who = welder();
    const int number = held_number(who);
    yard_.write([&](Writing &w) { return revoke(w, {who, number, {}, "bad welds"}); });
}

void History::retract_one() {
    const std::string who = welder();
    const auto entries = yard_.book.welder_history(who);
    const auto &entry = entries[static_cast<std::size_t>(pick(0, static_cast<int>(entries.size()) - 1))];
    yard_.write([&](Writing &w) { return retract(w, who, entry.seq, "a slip"); });
}

std::string History::against(const std::string &coupon, const std::string &welder) {
    const CouponState state = yard_.office.coupon(coupon);
    if (!state.grade) return "not graded";
    if (!state.grade->passed) return "graded failed";
    if (state.record.get("welder") != welder) return "of another welder";
    if (state.record.get("purpose") == "practice") return "practice";
    if (state.record.get("mechanical") == "failed") return "bends failed";
    const Judged fresh = judge_by(state, yard_.catalogue.criteria(state.record.get("criteria")));
    const auto index = fresh.set->class_index(state.grade->class_id);
    if (!index) return "graded for a class that its criteria do not have";
    const Verdict verdict = fresh.judgement.classes[*index].verdict;
    return verdict == Verdict::accept ? "" : "verdict " + std::string(name_of(verdict));
}

void History::look_at(const WelderStanding &standing, const HeldQualification &held,
                      std::vector<std::string> &faults) {
    std::string printed = text(document_of(record_sheet(yard_.office, held.mark, held.record.number)));
    std::replace(printed.begin(), printed.end(), '\n', ' ');
    std::string flat;
    for (const auto word : words_of(printed)) flat += std::string(word) + " ";
    const auto check_coupons = [&](const Evidence &proof, const std::string &aside) {
        std::set<std::string> coupons(proof.coupons.begin(), proof.coupons.end());
        coupons.insert(proof.coupon);
        for (const auto &coupon : coupons) {
            const std::string why = against(coupon, held.mark);
            if (why.empty()) {
                ++tally_.seen["rests on an accept"];
                continue;
            }
            // Only a verdict can be set aside, and then the reason stands on the record.
            ++tally_.seen["rests on an override"];
            if (!why.starts_with("verdict") || aside.empty() || flat.find(aside) == std::string::npos)
                faults.push_back(trail_ + "\n" + title_of(held) + " of " + held.mark +
                                 " is shown valid and rests on " + coupon + ": " + why + "\n" + printed);
        }
    };
    if (held.record.evidence) check_coupons(*held.record.evidence, held.record.override_why);
    for (const auto &e : standing.welder.events) {
        const bool about =
            e.kind == "renewal" ? e.rules == held.record.rules : e.qualification == held.record.number;
        if (!about || standing.undone.contains(e.seq)) continue;
        for (const auto &proof : e.evidence) {
            ++tally_.seen["rests on a " + e.kind];
            check_coupons(proof, e.override_why);
        }
    }
}

} // namespace beadbook::test
