#include "judge/contradiction.hpp"
#include "judge/item.hpp"
#include "judge/judgement.hpp"
#include "judge/readings.hpp"

#include <algorithm>
#include <tuple>

namespace beadbook {
namespace {

using How = ProvenEntry::How;

/// Holds one proof against what it is of.
class ProofCheck {
public:
    ProofCheck(const Proof &proof, const CriteriaSet &set, std::size_t class_index, const Coupon &coupon,
               const std::vector<ExamDone> &exams, const std::vector<Indication> &indications, int engine)
        : proof_(proof), set_(set), class_(class_index), coupon_(coupon), exams_(exams),
          indications_(indications), engine_(engine) {}

    std::optional<ProofLack> first_lack(const Vocabulary &vocabulary) {
        if (auto lack = scope()) return lack;
        if (auto lack = exams()) return lack;
        if (auto lack = rules_left_out()) return lack;
        if (auto lack = entries()) return lack;
        if (auto lack = whole_coupon()) return lack;
        if (auto lack = dimensions()) return lack;
        const auto compared = contradictions_in(coupon_, exams_, indications_, vocabulary);
        std::size_t all = compared.compared;
        if (engine_ >= first_with_open_silence)
            for (const auto &reading : other_readings(set_, coupon_, indications_, vocabulary))
                all += reading.behind.size();
        if (!compared.found.empty() || all != proof_.compared)
            return ProofLack{ProofPart::agreement, -1, -1, 0, {}};
        return gaps();
    }

private:
    Truth holds_on_coupon(const std::vector<Condition> &when) const {
        Missing lacks;
        return holds_for(when, coupon_, {}, {}, lacks);
    }

    /// The part names an exam that is on record and counts.
    bool stands(const ProvenExam &part) const {
        return std::any_of(exams_.begin(), exams_.end(), [&](const ExamDone &exam) {
            return exam.counts && exam.method == part.method && exam.number == part.number;
        });
    }

    std::optional<ProofLack> scope() const {
        for (std::size_t s = 0; s < set_.scope.size(); ++s) {
            const ScopePart &part = set_.scope[s];
            const auto index = static_cast<int>(s);
            const Truth asked = holds_on_coupon(part.only_if);
            if (asked == Truth::no) continue;
            const bool listed = std::binary_search(proof_.scope.begin(), proof_.scope.end(), index);
            if (holds_on_coupon(part.when) != Truth::yes || (asked == Truth::yes && !listed))
                return ProofLack{ProofPart::scope, -1, index, 0, {}};
        }
        if (engine_ >= first_that_asks_what_weld && set_.scope_not_read() &&
            (coupon_.facts[static_cast<Slot>(Fact::joint)] == 0 ||
             coupon_.facts[static_cast<Slot>(Fact::material)] == 0))
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
            if (!required.classes[class_] || holds_on_coupon(required.when) == Truth::no) continue;
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
        if (!proven([](const ProvenExam &) { return true; }))
            return ProofLack{ProofPart::exam, -1, -1, 0, {}};
        for (const auto &exam : exams_)
            if (exam.pending) return ProofLack{ProofPart::exam, -1, -1, 0, exam.method};
        return std::nullopt;
    }

    std::optional<ProofLack> rules_left_out() const {
        for (const int r : proof_.not_applying)
            if (holds_on_coupon(rule(r).when) != Truth::no) return ProofLack{ProofPart::entry, r, -1, 0, {}};
        return std::nullopt;
    }
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
            if (row.has_numbers && !set_.blanks_of(rule(row.rule), class_).empty()) return false;
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
            const auto [begin, end] =
                std::equal_range(proof_.entries.begin(), proof_.entries.end(), found.number, ByEntry{});
            if (left_out_by_relevance(found.number)) continue;
            bool decided = false;
            for (auto row = begin; row != end; ++row) {
                if (!right(*row)) return ProofLack{ProofPart::entry, row->rule, -1, found.number, {}};
                decided = decided || (row->sure && decides(*row));
            }
            for (const std::uint16_t r : set_.rules_for(found.type, found.exam)) {
                const bool there = left_out(r) || std::any_of(begin, end, [&](const ProvenEntry &row) {
                                       return row.rule == r;
                                   });
                if (!there) return ProofLack{ProofPart::entry, r, -1, found.number, {}};
            }
            if (!decided) return ProofLack{ProofPart::entry, -1, -1, found.number, {}};
        }
        return std::nullopt;
    }

    /// Rules that combine others have a row of the whole coupon.
    std::optional<ProofLack> whole_coupon() const {
        for (std::size_t r = 0; r < set_.rules.size(); ++r) {
            const Rule &of = set_.rules[r];
            const auto index = static_cast<int>(r);
            if (of.kind == Rule::Kind::coupon && of.limits[class_].kind != Limit::Kind::other &&
                holds_on_coupon(of.when) != Truth::no)
                return ProofLack{ProofPart::entry, index, -1, 0, {}};
            if (of.kind != Rule::Kind::combine || of.limits[class_].kind != Limit::Kind::value ||
                left_out(index))
                continue;
            const auto row =
                std::find_if(proof_.entries.begin(), proof_.entries.end(),
                             [&](const ProvenEntry &one) { return one.entry == 0 && one.rule == index; });
            if (row == proof_.entries.end() || !right(*row))
                return ProofLack{ProofPart::entry, index, -1, 0, {}};
        }
        return std::nullopt;
    }

    std::optional<ProofLack> dimensions() const {
        for (std::size_t r = 0; r < set_.rules.size(); ++r) {
            const Rule &of = set_.rules[r];
            const auto index = static_cast<int>(r);
            if (!of.must_be_measured || of.limits[class_].kind != Limit::Kind::value || left_out(index))
                continue;
            const bool there =
                std::any_of(proof_.measured.begin(), proof_.measured.end(), [&](const ProvenDimension &part) {
                    return part.rule == index && std::any_of(indications_.begin(), indications_.end(),
                                                             [&](const Indication &found) {
                                                                 return found.number == part.entry &&
                                                                        gives(found, of);
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
        for (const auto &gap : set_.gaps) {
            if (!gap.subject || !gap.beside_rules || !gap.classes[class_] ||
                holds_on_coupon(gap.when) == Truth::no || gap.shape != Shape::unknown)
                continue;
            for (const auto &found : indications_) {
                Missing lacks;
                if (gap.subject->covers(found.type, found.exam) && !left_out_by_relevance(found.number) &&
                    holds_for(gap.where, coupon_, found.measures, found.words, lacks) == Truth::yes)
                    return ProofLack{ProofPart::gap, -1, -1, found.number, {}};
            }
        }
        return std::nullopt;
    }
    bool left_out_by_relevance(int number) const {
        const auto [begin, end] =
            std::equal_range(proof_.entries.begin(), proof_.entries.end(), number, ByEntry{});
        return std::any_of(begin, end, [&](const ProvenEntry &row) {
            return row.how == How::not_relevant && row.rule >= 0 &&
                   set_.relevance[static_cast<std::size_t>(row.rule)].classes[class_];
        });
    }

    struct ByEntry {
        bool operator()(const ProvenEntry &row, int number) const { return row.entry < number; }
        bool operator()(int number, const ProvenEntry &row) const { return number < row.entry; }
    };
    const Rule &rule(int r) const { return set_.rules[static_cast<std::size_t>(r)]; }

    const Proof &proof_;
    const CriteriaSet &set_;
    std::size_t class_;
    const Coupon &coupon_;
    const std::vector<ExamDone> &exams_;
    const std::vector<Indication> &indications_;
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

std::optional<ProofLack> lack_in(const Proof &proof, const CriteriaSet &set, std::size_t class_index,
                                 const Coupon &coupon, const std::vector<ExamDone> &exams,
                                 const std::vector<Indication> &indications, const Vocabulary &vocabulary,
                                 int engine) {
    return ProofCheck(proof, set, class_index, coupon, exams, indications, engine).first_lack(vocabulary);
}

} // namespace beadbook
