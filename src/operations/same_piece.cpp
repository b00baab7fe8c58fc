#include "operations/same_piece.hpp"

#include "facts/plausibility.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "records/codecs/bodies.hpp"
#include "records/fold.hpp"

#include <algorithm>

namespace beadbook {
namespace {

constexpr std::size_t most_asked = 20;

std::string text_of_find(IndicationRecord find) {
    find.number = find.exam = 0;
    find.file.clear();
    find.sure.clear();
    find.moved_from.reset();
    return codec::body_of(find);
}

std::string text_of_exam(const CouponState &coupon, ExamRecord exam) {
    std::vector<std::string> finds;
    for (const auto &find : coupon.indications)
        if (find.exam == exam.number) finds.push_back(text_of_find(find));
    std::sort(finds.begin(), finds.end());
    exam.number = 0;
    exam.note.clear();
    exam.sure.clear();
    exam.equipment.clear();
    if (exam.finished) exam.finished = ExamFinished{exam.finished->found, {}, ""};
    return codec::body_of(exam) + joined(finds, "\n");
}

/// Whether exams of it are finished, and all that they found is on record: a table of finds may follow.
bool is_examined(const CouponState &coupon) {
    const auto awaits = [&](const ExamRecord &exam) {
        return exam.finished && exam.finished->found != coupon.finds_of(exam.number);
    };
    return std::any_of(coupon.exams.begin(), coupon.exams.end(),
                       [](const ExamRecord &exam) { return exam.finished.has_value(); }) &&
           std::none_of(coupon.exams.begin(), coupon.exams.end(), awaits);
}

/// The hash of what is said of a piece, but for its mark; empty where it is no test that was examined.
std::string piece_of(const CouponState &coupon) {
    const CouponRecord &record = coupon.record;
    if (!is_examined(coupon) || record.get("welder").empty() || record.get("purpose") == "practice" ||
        !record.withdrawn.empty())
        return "";
    std::string out;
    for (const auto &[name, value] : record.fields)
        if (name != "note") out += name + ": " + value.text + "\n";
    std::vector<std::string> exams;
    for (const auto &exam : coupon.exams) exams.push_back(text_of_exam(coupon, exam));
    std::sort(exams.begin(), exams.end());
    return sha256(out + joined(exams, "\n")); // of very many coupons no text is kept
}

/// The pieces that are known, by the hash of what is said of them.
class PiecesOfWelders {
public:
    PiecesOfWelders(Office &office, const std::map<std::string, std::vector<std::size_t>> &coming)
        : office_(office), coming_(coming) {}

    /// The mark under which the same is said already; empty: none.
    std::string other(const CouponState &coupon) {
        const std::string piece = piece_of(coupon);
        if (piece.empty()) return "";
        auto &all = of_welder(coupon.record.get("welder"));
        const auto [known, alone] = all.emplace(piece, coupon.record.id);
        return alone ? "" : known->second;
    }

private:
    using ByHash = std::map<std::string, std::string>;

    ByHash &of_welder(const std::string &welder) {
        const auto [known, fresh] = by_welder_.try_emplace(welder);
        if (!fresh) return known->second;
        for (const auto &mark : office_.book().coupons_of(welder)) {
            if (coming_.contains(mark)) continue;
            if (std::string piece = piece_of(office_.book().coupon(mark)); !piece.empty())
                known->second.emplace(std::move(piece), mark);
        }
        return known->second;
    }

    Office &office_;
    const std::map<std::string, std::vector<std::size_t>> &coming_;
    std::map<std::string, ByHash> by_welder_;
};

CouponState with_entries(Office &office, const std::string &mark, const std::vector<Entry> &entries,
                         const std::vector<std::size_t> &at) {
    std::vector<Entry> all;
    if (office.book().knows_coupon(mark)) all = office.book().history(mark);
    for (const std::size_t one : at) all.push_back(entries[one]);
    return fold_coupon(all);
}

} // namespace

void ask_same_pieces(Office &office, std::vector<Entry> &entries, bool sure) {
    std::vector<std::string> marks;
    std::map<std::string, std::vector<std::size_t>> by_mark;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        auto &at = by_mark[entries[i].subject];
        if (at.empty()) marks.push_back(entries[i].subject);
        at.push_back(i);
    }
    PiecesOfWelders pieces(office, by_mark);
    std::vector<std::string> asked;
    for (const auto &mark : marks) {
        const Ledger::Moment moment(office.ledger());
        const auto &at = by_mark.at(mark);
        CouponState coupon = with_entries(office, mark, entries, at);
        const std::string other = pieces.other(coupon);
        if (other.empty()) continue;
        auto &meant = coupon.record.sure;
        const bool said = is_meant(meant, like_another_piece);
        if (!sure && !said)
            asked.push_back(question_of(
                {like_another_piece, "coupon " + mark + ": all that is said of it, of its exams and of " +
                                         "what they found is said of " + other +
                                         " of the same welder too; is it another piece?"}));
        Entry &first = entries[at.front()];
        if (!said && first.kind == "coupon") {
            meant.emplace_back(like_another_piece);
            first = codec::entry_of(coupon.record);
        }
    }
    if (asked.empty()) return;
    if (asked.size() > most_asked) asked.resize(most_asked);
    throw Unsure(joined(asked, "\n"));
}

} // namespace beadbook
