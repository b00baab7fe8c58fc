#include "judge/counted_once.hpp"

#include "judge/family.hpp"

#include <algorithm>
#include <bit>
#include <map>
#include <set>

namespace beadbook {
namespace {

constexpr std::int64_t read_off_a_rule = nm_per_inch / 128;

std::int64_t scatter(std::int64_t longer) { return std::max(read_off_a_rule, longer / 10); }

/// A find as another method might have seen it too.
struct Seen {
    std::size_t member;
    Exam exam;
    bool certain;
    Exact amount;
    int number;
    Few<TypeId> types;
    std::uint8_t side;
    std::optional<Span> place, across;

    std::int64_t extent() const { return place ? place->to.nm - place->from.nm : 0; }
};

bool larger_first(const Seen &a, const Seen &b) {
    return a.amount != b.amount ? a.amount > b.amount : a.number < b.number;
}

/// What methods saw, from the largest on; each is kept, or it is one that is kept.
class SeenOnce {
public:
    SeenOnce(const BoundSet &bound, std::vector<Seen> seen) : bound_(bound), seen_(std::move(seen)) {
        std::sort(seen_.begin(), seen_.end(), larger_first);
        if (const auto around = bound.coupon.around())
            for (Seen &one : seen_)
                if (one.place) {
                    const std::int64_t from = (one.place->from.nm % *around + *around) % *around;
                    one.place = Span{{from}, {from + one.extent()}};
                }
    }

    /// Members by index.
    std::vector<std::size_t> kept() {
        std::vector<std::size_t> out;
        for (std::size_t i = 0; i < seen_.size(); ++i) {
            if (is_there(i)) continue;
            out.push_back(seen_[i].member);
            if (seen_[i].certain) remember(i);
        }
        return out;
    }

private:
    bool is_there(std::size_t i) {
        const Seen &one = seen_[i];
        if (one.place && lies_there(one)) return true;
        if (take_one(unplaced_[index_of(one)], one)) return true;
        return !one.place && take_one(placed_[index_of(one)], one);
    }

    /// Takes one that it may be: no other of its method is that one then.
    bool take_one(std::set<std::size_t> &free, const Seen &one) {
        const auto like = std::find_if(
            free.begin(), free.end(), [&](std::size_t k) { return may_be_one(seen_[k], one, std::nullopt); });
        if (like == free.end()) return false;
        free.erase(like);
        return true;
    }

    bool lies_there(const Seen &one) const {
        const auto around = bound_.coupon.around();
        for (const auto &[key, line] : lines_) {
            const auto &[exam, width] = key;
            if (exam == one.exam) continue;
            const std::int64_t longest = std::int64_t{1} << width;
            const std::int64_t reach = scatter(std::max(longest, one.extent()));
            for (int turn = around ? -1 : 0; turn <= (around ? 1 : 0); ++turn) {
                const std::int64_t by = turn * around.value_or(0);
                const Span place{{one.place->from.nm + by}, {one.place->to.nm + by}};
                const auto end = line.upper_bound(place.to.nm + reach);
                for (auto at = line.lower_bound(place.from.nm - longest - reach); at != end; ++at)
                    if (may_be_one(seen_[at->second], one, place)) return true;
            }
        }
        return false;
    }

    /// `place`: where the second lies, if that is known of both.
    bool may_be_one(const Seen &a, const Seen &b, const std::optional<Span> &place) const {
        if (a.exam == b.exam || (a.side != 0 && b.side != 0 && a.side != b.side)) return false;
        const std::int64_t apart_by = scatter(std::max(a.extent(), b.extent()));
        const auto near = [&](const Span &x, const Span &y) {
            return std::max(x.from.nm, y.from.nm) - std::min(x.to.nm, y.to.nm) <= apart_by;
        };
        if (place && !near(*a.place, *place)) return false;
        if (a.across && b.across && !near(*a.across, *b.across)) return false;
        return std::any_of(a.types.begin(), a.types.end(), [&](TypeId x) {
            return std::any_of(b.types.begin(), b.types.end(), [&](TypeId y) { return alike(x, y); });
        });
    }

    bool alike(TypeId a, TypeId b) const {
        if (family_of_type(bound_, a) == family_of_type(bound_, b)) return true;
        const ImperfectionType &x = bound_.vocabulary[a], &y = bound_.vocabulary[b];
        if (!x.is_shape_alone() && !y.is_shape_alone()) return false;
        return x.shape == y.shape || x.shape == Shape::unknown || y.shape == Shape::unknown;
    }

    void remember(std::size_t i) {
        const Seen &one = seen_[i];
        if (one.place) {
            const auto width = static_cast<int>(std::bit_width(static_cast<std::uint64_t>(one.extent())));
            lines_[{one.exam, width}].emplace(one.place->from.nm, i);
        }
        for (std::size_t x = 0; x < exam_count; ++x)
            if (x != index_of(one)) (one.place ? placed_ : unplaced_)[x].insert(i);
    }

    static std::size_t index_of(const Seen &one) { return static_cast<std::size_t>(one.exam); }

    const BoundSet &bound_;
    std::vector<Seen> seen_;
    /// Those that are kept, by method and the bits of their length: where each begins.
    std::map<std::pair<Exam, int>, std::multimap<std::int64_t, std::size_t>> lines_;
    /// By method: those that are kept and that it may have seen too, where one of the two places is not
    /// known.
    std::array<std::set<std::size_t>, exam_count> placed_, unplaced_;
};

Seen seen_by(const Evaluation &e, const Member &member, std::size_t m, const Exact &amount) {
    const Item &item = e.items[member.item];
    Seen out{m,
             e.indications[item.members.front()].exam,
             member.certain == Truth::yes,
             amount,
             e.indications[*std::min_element(item.members.begin(), item.members.end())].number,
             {},
             item.words[static_cast<std::size_t>(Attribute::side)],
             item.place,
             item.across};
    for (const std::size_t k : item.members) out.types.push_back(e.indications[k].type);
    std::sort(out.types.begin(), out.types.end());
    out.types.erase(std::unique(out.types.begin(), out.types.end()), out.types.end());
    return out;
}

} // namespace

Several<Member> counted_once(const Evaluation &e, const Rule &rule, const Several<Member> &members) {
    const Quantity amount = rule.kind == Rule::Kind::sum ? rule.summed : Quantity::size;
    std::vector<Seen> seen;
    std::vector<bool> kept(members.size(), true);
    for (std::size_t m = 0; m < members.size(); ++m) {
        const Item &item = e.items[members[m].item];
        // Of what is not known to be the larger one, or may be larger as one with another, each counts.
        if (item.may_merge.any() || !item.measures.has(amount)) continue;
        seen.push_back(seen_by(e, members[m], m, item.measures[amount]));
        kept[m] = false;
    }
    for (const std::size_t m : SeenOnce(e.bound, std::move(seen)).kept()) kept[m] = true;
    Several<Member> out;
    for (std::size_t m = 0; m < members.size(); ++m)
        if (kept[m]) out.push_back(members[m]);
    return out;
}

} // namespace beadbook
