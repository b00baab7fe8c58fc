#include "operations/keeping.hpp"

#include "criteria/owners_copy.hpp"
#include "facts/coupon_weld.hpp"
#include "judge/judgement.hpp"
#include "measure/hex.hpp"
#include "measure/text.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/exam_means.hpp"
#include "records/codecs/verdict.hpp"
#include "records/fold.hpp"

#include <algorithm>
#include <span>

namespace beadbook {
namespace {

using What = ReplayFault::What;
constexpr int newest_form = 2;

/// A coupon's entries taken one after the other, so that each is read once and not for every verdict again.
class Along {
public:
    Along(Office &office, const std::vector<Entry> &entries) : office_(office), entries_(entries) {}

    /// As the coupon stood before entry `end`; `end` never goes back.
    const CouponState &before(std::size_t end) {
        for (; taken_ < end; ++taken_) take(entries_[taken_]);
        if (moved_) {
            state_ = fold_coupon(std::span(entries_).first(taken_));
            for (auto &exam : state_.exams) office_.check_exam_of(state_, exam);
            moved_ = false;
        }
        return state_;
    }

private:
    void take(const Entry &e) {
        // Once the coupon itself was changed all is read again, but only when somebody asks.
        if (moved_) return;
        const auto touched = exams_touched(state_, e);
        moved_ = !take_entry(state_, e);
        for (auto &exam : state_.exams)
            if (touched.contains(exam.number)) office_.check_exam_of(state_, exam);
    }

    Office &office_;
    const std::vector<Entry> &entries_;
    CouponState state_;
    std::size_t taken_ = 0;
    bool moved_ = false;
};

/// The text of criteria or rules is not there, or no longer loads.
What missing_or_broken(Office &office, const std::string &hash) {
    return office.ledger().criteria_text(hash) ? What::text_broken : What::text_missing;
}

std::vector<codec::VerdictDifference> differences_of_words(const StoredVerdict &stored,
                                                           const CriteriaSet &set, const Judgement &again) {
    std::vector<codec::VerdictDifference> out;
    for (std::size_t c = 0; c < again.classes.size(); ++c) {
        const std::string was = stored.verdict_of(set.classes[c].id);
        const std::string now(name_of(again.classes[c].verdict));
        if (was != now) out.push_back({set.classes[c].id, was, now});
    }
    for (const auto &one : stored.classes)
        if (!set.class_index(one.id)) out.push_back({one.id, one.verdict, ""});
    return out;
}

/// Exams as the engine that took the verdict counted them: engines before the third knew no finishing, those
/// before the fourth no gaps of practices, those before the ninth did not ask again who was entitled, the
/// ninth asked of nothing but certificates and calibrations, those before the fourteenth not what its
/// conditions show that nobody saw, and those before the sixteenth not whether who finished it welded it.
std::vector<ExamDone> exams_as_counted(Office &office, const CouponState &before,
                                       const StoredVerdict &stored) {
    constexpr int first_to_finish = 3, first_to_mind_gaps = 4, first_to_ask_again = 9, first_to_ask_all = 10,
                  first_to_miss_vision = 13, first_to_ask_what_was_seen = 14, first_to_ask_who_finished = 16;
    std::vector<ExamDone> out;
    if (stored.engine >= first_to_mind_gaps) {
        for (ExamRecord exam : before.exams) {
            if (stored.engine >= first_to_ask_all) {
                office.check_means_of(before.record, exam, stored.seq);
                if (stored.engine < first_to_miss_vision &&
                    exam.open == vision_taken_off(office, exam, stored.seq))
                    exam.open.clear();
                if (stored.engine < first_to_ask_what_was_seen &&
                    exam.open == not_seen(office, before.record, exam))
                    exam.open.clear();
                if (stored.engine < first_to_ask_who_finished &&
                    exam.open == finished_by_welder(office, before.record, exam, stored.seq))
                    exam.open.clear();
            } else if (stored.engine >= first_to_ask_again && exam.open.empty())
                exam.open = objection_of_ninth(office, exam, stored.seq);
            out.push_back(exam.done());
        }
        return out;
    }
    for (ExamRecord exam : before.exams) {
        office.check_practice_of(before, exam, Gaps::ignored);
        if (stored.engine < first_to_finish) {
            exam.open.clear();
            exam.pending = exam.contradicts = false;
        }
        out.push_back(exam.done());
    }
    return out;
}

/// Indications as the engine that took the verdict saw them.
std::vector<Indication> found_as_seen(const CouponState &before, const StoredVerdict &stored) {
    std::vector<Indication> out = before.found();
    for (auto &one : out) {
        if (stored.engine < first_with_open_silence) one.length_by_size(Vocabulary::shipped());
        if (stored.engine < first_to_lay_widths_across) one.size_by_way();
        if (stored.engine < first_with_rings) one.area_by_type(Vocabulary::shipped());
    }
    return out;
}

/// The coupon as the engine that took the verdict saw it: earlier ones knew its unit only where it was named,
/// later ones by that name first.
Coupon facts_as_seen(const CouponState &before, const StoredVerdict &stored) {
    Coupon out = before.record.facts();
    if (stored.engine < first_to_hold_by_sizes) out.values.measure_in(before.record.fixed_unit());
    if (stored.engine < first_to_ask_where && before.record.get("units").empty()) out.values.measure_in({});
    return out;
}

/// Judges one verdict again, as the engine that took it would.
void replay_verdict(Office &office, const CouponState &before, const StoredVerdict &stored,
                    const ReplayFault &about, std::vector<ReplayFault> &faults) {
    ReplayFault fault = about;
    const auto add = [&](What what) {
        fault.what = what;
        faults.push_back(fault);
    };
    if (stored.form < 1 || stored.form > newest_form) return add(What::unknown_form);
    const auto kept = office.catalogue().kept_criteria(office.ledger(), stored.hash);
    if (!kept) return add(missing_or_broken(office, stored.hash));
    // By the numbers that stood in the blanks then, whatever stands there now.
    const auto set = with_owners_copy(kept, {stored.filled, {}});
    const Judgement again =
        judge(*set, facts_as_seen(before, stored), exams_as_counted(office, before, stored),
              found_as_seen(before, stored), Vocabulary::shipped(), stored.engine);
    if (stored.form == newest_form) {
        fault.other_engine = stored.engine != engine_number;
        fault.other_vocabulary = stored.vocabulary != Vocabulary::shipped().hash();
    }
    for (const auto &one : stored.form == 1
                               ? differences_of_words(stored, *set, again)
                               : codec::differences(stored.body, codec::verdict_body(*set, again))) {
        fault.part = one.class_id;
        fault.was = one.was;
        fault.now = one.now;
        add(one.class_id.empty() ? What::head : one.was == one.now ? What::findings : What::verdict);
    }
}

/// Runs a step about one subject; what cannot be read is its fault, and the others are still looked at.
template <class F>
void about(const ReplayFault &whom, std::vector<ReplayFault> &faults, F f) {
    try {
        f();
    } catch (const std::exception &e) {
        faults.push_back(whom);
        faults.back().what = What::unreadable;
        faults.back().was = e.what();
    }
}

void replay_coupon(Office &office, const std::string &id, Replay &out) {
    ReplayFault fault;
    fault.subject = id;
    const Ledger::Moment moment(office.ledger());
    about(fault, out.faults, [&] {
        const auto entries = office.book().history(id);
        Along along(office, entries);
        for (std::size_t i = 0; i < entries.size(); ++i) {
            if (entries[i].kind != "verdict" || is_withdrawal(entries[i])) continue;
            fault.entry = entries[i].seq;
            ++out.verdicts;
            const CouponState &before = along.before(i);
            about(fault, out.faults, [&] {
                replay_verdict(office, before, codec::verdict_from(entries[i]), fault, out.faults);
            });
        }
        fault.entry = 0;
        along.before(entries.size()); // what stands after the last verdict must be readable too
    });
}

/// What form 1 kept of a range that can be compared: its variables and the ids of their rules.
std::vector<std::pair<std::string, std::vector<std::string>>> ids_of(const std::vector<GrantedRange> &range) {
    std::vector<std::pair<std::string, std::vector<std::string>>> out;
    for (const auto &one : range) {
        out.emplace_back(one.variable, std::vector<std::string>());
        for (const auto &part : one.parts) out.back().second.push_back(part.rule);
    }
    return out;
}

void replay_range(Office &office, const QualificationRecord &q, const ReplayFault &about,
                  std::vector<ReplayFault> &faults) {
    const auto add = [&](What what) {
        faults.push_back(about);
        faults.back().what = what;
    };
    if (q.form < 1 || q.form > newest_form) return add(What::unknown_form);
    const auto rules = office.catalogue().kept_rules(office.ledger(), q.rules_hash);
    if (!rules) return add(missing_or_broken(office, q.rules_hash));
    const auto again = granted(range_of(*rules, welds_of(q.test).at(q.part)));
    if (q.form == 1 ? ids_of(q.range) != ids_of(again) : q.range != again) add(What::range);
}

void replay_welder(Office &office, const std::string &mark, Replay &out) {
    ReplayFault fault;
    fault.family = Family::welder;
    fault.subject = mark;
    about(fault, out.faults, [&] {
        for (const auto &q : office.book().welder(mark).qualifications) {
            ++out.ranges;
            fault.number = q.number;
            about(fault, out.faults, [&] { replay_range(office, q, fault, out.faults); });
        }
    });
}

/// People and equipment hold nothing to take again; what is on record of them must be readable.
template <class Read>
void read_again(Family family, const std::vector<std::string> &subjects, Read read,
                std::vector<ReplayFault> &faults) {
    for (const auto &subject : subjects) {
        ReplayFault fault;
        fault.family = family;
        fault.subject = subject;
        about(fault, faults, [&] { read(subject); });
    }
}

void check_digits(const std::string &given, const char *field, const std::string &what) {
    if (given.size() != 64 || !from_hex(given))
        throw refused("'" + shown(given) + "' is no " + what +
                      "; expected its 64 digits and letters from a to f, whole")
            .at(field);
}

} // namespace

Verified verify(Office &office, const VerifyRequest &request) {
    Verified out;
    out.chain = office.ledger().verify();
    if (!out.chain.faults.empty()) return out;
    out.false_lines = false_lines(office);
    if (request.replay) {
        out.replay.emplace();
        for (const auto &id : office.book().coupons()) replay_coupon(office, id, *out.replay);
        for (const auto &mark : office.book().welders()) replay_welder(office, mark, *out.replay);
        Book &book = office.book();
        read_again(
            Family::person, book.people(), [&](const auto &name) { book.person(name); }, out.replay->faults);
        read_again(
            Family::equipment, book.all_equipment(), [&](const auto &serial) { book.equipment(serial); },
            out.replay->faults);
        read_again(
            Family::criteria, book.sets_with_copy(), [&](const auto &set) { book.owners_copy(set); },
            out.replay->faults);
    }
    if (!request.head.empty()) {
        check_digits(request.head, "head", "hash of an entry");
        // Of an earlier entry it proves as much up to there: what follows was only added.
        if (request.head == std::string(64, '0'))
            out.entries_after = out.chain.entries;
        else if (const auto noted = office.ledger().entry_with_hash(request.head))
            out.entries_after = out.chain.entries - *noted;
        else
            out.other_head = request.head;
    }
    if (!request.signer.empty()) check_digits(request.signer, "signer", "public key");
    if (request.seal)
        out.seal = held_against_record(office, out.chain.entries, *request.seal, request.signer);
    return out;
}

bool VerifiedShops::holds() const {
    return std::all_of(shops.begin(), shops.end(), [](const auto &one) { return one.verified.holds(); });
}

VerifiedShops verify_shops(const Shops &shops, const VerifyRequest &request) {
    VerifiedShops out;
    for (const auto &shop : shops.all()) out.shops.push_back({shop.name, verify(*shop.office, request)});
    return out;
}

BackedUp back_up(Office &office, const std::string &path) { return {path, office.ledger().backup(path)}; }

} // namespace beadbook
