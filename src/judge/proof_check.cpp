#include "judge/proof_check.hpp"

#include "judge/contradiction.hpp"
#include "judge/item.hpp"
#include "judge/judgement.hpp"
#include "judge/over_methods.hpp"
#include "judge/readings.hpp"

#include <algorithm>

namespace beadbook {
namespace {

using How = ProvenEntry::How;

/// Holds one proof against what it is of.
class ProofCheck {
public:
    ProofCheck(const Proof &proof, const BoundSet &bound, std::size_t class_index,
               const std::vector<ExamDone> &exams, const std::vector<Indication> &indications,
               const Agreement &agreement)
        : proof_(proof), bound_(bound), set_(bound.set), class_(class_index), coupon_(bound.coupon),
          exams_(exams), indications_(indications), agreement_(agreement), engine_(bound.engine) {}

    std::optional<ProofLack> first_lack() {
        if (auto lack = scope()) return lack;
        if (auto lack = exams()) return lack;
        if (auto lack = rules_left_out()) return lack;
        if (auto lack = entries()) return lack;
        if (auto lack = whole_coupon()) return lack;
        if (auto lack = dimensions()) return lack;
        if (!agreement_.holds || agreement_.compared != proof_.compared)
            return ProofLack{ProofPart::agreement, -1, -1, 0, {}};
        return gaps();
    }

private:
    using Rows = std::span<const ProvenEntry>;

    /// The part names an exam that is on record and counts.
    bool stands(const ProvenExam &part) const {
        return std::any_of(exams_.begin(), exams_.end(), [&](const ExamDone &exam) {
            return exam.counts && exam.method == part.method && exam.number == part.number;
        });
    }

    std::optional<ProofLack> scope() const {
        for (std::size_t s = 0; s < set_.scope.size(); ++s) {
            const auto index = static_cast<int>(s);
            const Truth asked = bound_.scope[s].asked.truth;
            if (asked == Truth::no) continue;
            const bool listed = std::binary_search(proof_.scope.begin(), proof_.scope.end(), index);
            if (bound_.scope[s].held.truth != Truth::yes || (asked == Truth::yes && !listed))
                return ProofLack{ProofPart::scope, -1, index, 0, {}};
        }
        if (engine_ >= first_that_asks_what_weld && bound_.untold.any())
            return ProofLack{ProofPart::scope, -1, -1, 0, {}};
        return std::nullopt;
    }

    std::optional<ProofLack> exams() const {
        const auto proven = [&](auto asked) {
            return std::any_of(proof_.exams.begin(), proof_.exams.end(),
                               [&](const ProvenExam &part) { return asked(part) && stands(part); });
        };
        for (std::size_t r = 0; r < set_.required.size(); ++r) {
            const RequiredExam &required = set_.required[r];
            if (!required.classes[class_] || bound_.required[r].truth == Truth::no) continue;
            const bool there = proven([&](const ProvenExam &part) {
                return part.required == static_cast<int>(r) &&
                       std::find(required.one_of.begin(), required.one_of.end(), part.method) !=
                           required.one_of.end();
            });
            if (!there)
                return ProofLack{ProofPart::exam, -1, static_cast<int>(r), 0, required.one_of.front()};
        }
        for (std::size_t x = 0; x < exam_count; ++x) {
            const auto method = static_cast<Exam>(x);
            if (coupon_.called_for[x] &&
                !proven([&](const ProvenExam &part) { return part.called_for && part.method == method; }))
                return ProofLack{ProofPart::exam, -1, -1, 0, method};
        }
        const auto &methods = bound_.one_of_any(class_);
        if (!proven([&](const ProvenExam &part) {
                return methods.empty() ||
                       std::find(methods.begin(), methods.end(), part.method) != methods.end();
            }))
            return ProofLack{ProofPart::exam, -1, -1, 0, {}};
        for (const auto &exam : exams_)
            if (exam.pending) return ProofLack{ProofPart::exam, -1, -1, 0, exam.method};
        return std::nullopt;
    }

    std::optional<ProofLack> rules_left_out() const {
        for (const int r : proof_.not_applying)
            if (bound_.rule(static_cast<std::size_t>(r)).applies.truth != Truth::no)
                return ProofLack{ProofPart::entry, r, -1, 0, {}};
        return std::nullopt;
    }
    bool blank(int r) const { return (bound_.rule(static_cast<std::size_t>(r)).blank >> class_ & 1u) != 0; }
    bool left_out(int r) const {
        return std::binary_search(proof_.not_applying.begin(), proof_.not_applying.end(), r);
    }

    /// Says what the class says, and by numbers that keep the limit.
    bool right(const ProvenEntry &row) const {
        const Limit::Kind kind = rule(row.rule).limits[class_].kind;
        switch (row.how) {
        case How::within:
            // Of neighbours in line a person is asked only where they are a group.
            if (kind == Limit::Kind::ask) return rule(row.rule).least_group > 1 && !row.has_numbers;
            if (row.has_numbers && blank(row.rule)) return false;
            return kind == Limit::Kind::value &&
                   (!row.has_numbers || holds(row.measured, rule(row.rule).compare, row.limit));
        case How::no_limit: return kind == Limit::Kind::free;
        case How::silent:
            return kind == Limit::Kind::other ||
                   (kind == Limit::Kind::not_said && engine_ < first_with_open_silence);
        case How::alone: return kept_by_other(row);
        case How::not_of_it: return true;
        case How::not_relevant: break;
        }
        return false;
    }

    /// Every entry of its exam that the other of the two rules speaks of keeps that one.
    bool kept_by_other(const ProvenEntry &row) const {
        const auto other = rule(row.rule).only_with;
        if (!other) return false;
        const auto exam_of = [&](int number) {
            const auto found = std::find_if(indications_.begin(), indications_.end(),
                                            [&](const Indication &i) { return i.number == number; });
            return found == indications_.end() ? std::optional<Exam>() : found->exam;
        };
        return std::none_of(proof_.entries.begin(), proof_.entries.end(), [&](const ProvenEntry &one) {
            return one.rule == static_cast<int>(*other) && one.how == How::alone &&
                   exam_of(one.entry) == exam_of(row.entry);
        });
    }

    std::optional<ProofLack> entries() const {
        for (const auto &found : indications_) {
            const Rows rows = rows_of(found.number);
            if (left_out_by_relevance(rows)) continue;
            bool decided = false;
            for (const auto &row : rows) {
                if (!right(row)) return ProofLack{ProofPart::entry, row.rule, -1, found.number, {}};
                decided = decided || (row.sure && decides(row));
            }
            // Both are in the order of the rules.
            auto row = rows.begin();
            for (const std::uint16_t r : set_.rules_for(found.type, found.exam)) {
                while (row != rows.end() && row->rule < r) ++row;
                if ((row == rows.end() || row->rule != r) && !left_out(r))
                    return ProofLack{ProofPart::entry, r, -1, found.number, {}};
            }
            if (!decided) return ProofLack{ProofPart::entry, -1, -1, found.number, {}};
        }
        return std::nullopt;
    }

    /// Rules that combine others have a row of the whole coupon.
    std::optional<ProofLack> whole_coupon() const {
        for (const std::size_t r : bound_.of_coupon)
            if (set_.rules[r].limits[class_].kind != Limit::Kind::other &&
                bound_.rule(r).applies.truth != Truth::no)
                return ProofLack{ProofPart::entry, static_cast<int>(r), -1, 0, {}};
        for (const std::size_t r : bound_.combining) {
            const auto index = static_cast<int>(r);
            if (set_.rules[r].limits[class_].kind != Limit::Kind::value || left_out(index)) continue;
            const Rows rows = rows_of(0);
            const auto row = std::find_if(rows.begin(), rows.end(),
                                          [&](const ProvenEntry &one) { return one.rule == index; });
            if (row == rows.end() || !right(*row)) return ProofLack{ProofPart::entry, index, -1, 0, {}};
        }
        return std::nullopt;
    }

    /// What an exam measured that does not count is no proof.
    bool may_give(const Indication &found) const {
        return engine_ < first_to_measure_by_what_counts || found_by_one_that_counts(found, exams_);
    }

    std::optional<ProofLack> dimensions() const {
        for (const std::size_t r : bound_.to_be_measured) {
            const Rule &of = set_.rules[r];
            const auto index = static_cast<int>(r);
            if (of.limits[class_].kind != Limit::Kind::value || left_out(index)) continue;
            const bool there =
                std::any_of(proof_.measured.begin(), proof_.measured.end(), [&](const ProvenDimension &part) {
                    return part.rule == index && std::any_of(indications_.begin(), indications_.end(),
                                                             [&](const Indication &found) {
                                                                 return found.number == part.entry &&
                                                                        gives(found, of) && may_give(found);
                                                             });
                });
            if (!there) return ProofLack{ProofPart::dimension, index, -1, 0, {}};
        }
        return std::nullopt;
    }

    /// A gap that names an entry beside the rules keeps it open. With merging the entry may stand for another
    /// size, which the evaluation alone knows.
    std::optional<ProofLack> gaps() const {
        if (proof_.gaps != set_.gaps.size()) return ProofLack{ProofPart::gap, -1, -1, 0, {}};
        if (!set_.merges.empty()) return std::nullopt;
        for (std::size_t g = 0; g < set_.gaps.size(); ++g) {
            const Gap &gap = set_.gaps[g];
            if (!gap.subject || !gap.beside_rules || !gap.classes[class_] ||
                bound_.gaps[g].truth == Truth::no || gap.shape != Shape::unknown)
                continue;
            for (const auto &found : indications_) {
                Missing lacks;
                if (gap.subject->covers(found.type, found.exam) &&
                    !left_out_by_relevance(rows_of(found.number)) &&
                    holds_for(gap.where, coupon_, found.measures, found.words, lacks) == Truth::yes)
                    return ProofLack{ProofPart::gap, -1, -1, found.number, {}};
            }
        }
        return std::nullopt;
    }
    Rows rows_of(int entry) const {
        const auto begin = std::lower_bound(proof_.entries.begin(), proof_.entries.end(), entry,
                                            [](const ProvenEntry &row, int of) { return row.entry < of; });
        auto end = begin;
        while (end != proof_.entries.end() && end->entry == entry) ++end;
        return {begin, end};
    }
    bool left_out_by_relevance(Rows rows) const {
        return std::any_of(rows.begin(), rows.end(), [&](const ProvenEntry &row) {
            return row.how == How::not_relevant && row.rule >= 0 &&
                   set_.relevance[static_cast<std::size_t>(row.rule)].classes[class_];
        });
    }

    const Rule &rule(int r) const { return set_.rules[static_cast<std::size_t>(r)]; }

    const Proof &proof_;
    const BoundSet &bound_;
    const CriteriaSet &set_;
    std::size_t class_;
    const Coupon &coupon_;
    const std::vector<ExamDone> &exams_;
    const std::vector<Indication> &indications_;
    const Agreement &agreement_;
    int engine_;
};

} // namespace

bool gives(const Indication &entry, const Rule &rule) {
    Missing lacks;
    return rule.subject.covers(entry.type, entry.exam) &&
           std::all_of(rule.where.begin(), rule.where.end(), [&](const Condition &c) {
               return !asks_for_side(c) ||
                      c.word(entry.words[static_cast<std::size_t>(Attribute::side)], lacks) == Truth::yes;
           });
}

std::optional<ProofLack> lack_in(const Proof &proof, const BoundSet &bound, std::size_t class_index,
                                 const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications, const Agreement &agreement) {
    return ProofCheck(proof, bound, class_index, exams, indications, agreement).first_lack();
}

std::optional<ProofLack> lack_in(const Proof &proof, const CriteriaSet &set, std::size_t class_index,
                                 const Coupon &coupon, const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications, const Vocabulary &vocabulary,
                                 int engine) {
    const BoundSet bound(set, coupon, vocabulary, engine);
    const auto contradictions = contradictions_in(bound, exams, indications);
    Agreement agreement{contradictions.found.empty(), contradictions.compared};
    if (engine >= first_with_open_silence)
        for (const auto &reading : other_readings(bound, indications))
            agreement.compared += reading.behind.size();
    if (engine >= first_to_take_together) agreement.compared += rules_over_methods(bound, indications).size();
    return lack_in(proof, bound, class_index, exams, indications, agreement);
}

} // namespace beadbook
