#include "judge/evaluation.hpp"

#include "judge/counted_once.hpp"
#include "judge/neighbours.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// One rule on what one exam found.
class RuleCheck {
public:
    RuleCheck(Evaluation &e, std::size_t rule, std::span<const Candidate> candidates)
        : e_(e), index_(rule), rule_(e.set.rules[rule]), bound_(e.bound.rule(rule)) {
        applies_ = e.applies(rule, applies_missing_);
        if (applies_ == Truth::no) return;
        for (const Candidate c : candidates) consider(c.item());
        if (e_.methods == Methods::together) members_ = counted_once(e_, rule_, members_);
        exam_ = candidates.front().exam();
    }

    void run() {
        if (applies_ == Truth::no || members_.empty()) return;
        cover();
        list_members();
        each_class(Limit::Kind::free, [&](std::size_t c) { trace_all(c, ProvenEntry::How::no_limit); });
        each_class(Limit::Kind::not_said, [&](std::size_t c) {
            if (e_.engine < first_with_open_silence)
                trace_all(c, ProvenEntry::How::silent);
            else
                blanket(c, Finding::Kind::not_said);
        });
        each_class(Limit::Kind::other, [&](std::size_t c) { trace_all(c, ProvenEntry::How::silent); });
        each_class(Limit::Kind::none, [&](std::size_t c) { blanket(c, Finding::Kind::not_allowed); });
        each_class(Limit::Kind::ask, [&](std::size_t c) { ask(c); });
        if (bound_.classes(Limit::Kind::value) != 0) {
            switch (rule_.kind) {
            case Rule::Kind::each: check_each(); break;
            case Rule::Kind::gap: check_gaps(); break;
            case Rule::Kind::sum:
            case Rule::Kind::count: check_held(); break;
            default: break;
            }
        }
        for (std::size_t c = 0; rule_.only_with && c < e_.classes.size(); ++c) {
            if (!e_.holds_back(index_, c, exam_)) continue;
            e_.untrace(index_, c, exam_);
            trace_all(c, ProvenEntry::How::alone);
        }
    }

private:
    void consider(std::uint32_t i) {
        const Item &item = e_.items[i];
        Member m{i, item.counts, Truth::yes, {}};
        if (rule_.shape != Shape::unknown && item.shape != rule_.shape) {
            if (item.shape != Shape::unknown) return not_of_it(i);
            m.certain = m.covers = Truth::unknown;
            m.doubts |= Missing::shape();
        }
        if (item.counts == Truth::unknown) m.doubts |= item.doubts;
        // As one with another it would neither be counted nor spaced apart.
        if (item.may_merge.any() && (rule_.kind == Rule::Kind::count || rule_.kind == Rule::Kind::gap)) {
            m.certain = Truth::unknown;
            m.doubts |= item.may_merge;
        }
        if (!rule_.where.empty())
            m.covers = both(m.covers, holds_for(rule_.where, e_.coupon, item.measures.get(), item.words,
                                                m.doubts, e_.least_of(item)));
        m.certain = both(m.certain, m.covers);
        if (m.certain != Truth::no)
            members_.push_back(m);
        else
            not_of_it(i);
    }

    void not_of_it(std::uint32_t i) {
        Evaluation::Traced row;
        row.rule = static_cast<std::uint16_t>(index_);
        row.how = ProvenEntry::How::not_of_it;
        row.first = entries_listed();
        e_.list_entries(i, false);
        row.size = entries_listed() - row.first;
        e_.trace(row);
    }

    std::uint32_t entries_listed() const { return static_cast<std::uint32_t>(e_.traced_entries.size()); }

    /// Those that the rule speaks of, for the rows of the proof.
    void list_members() {
        for (const auto &m : members_) {
            entries_of_.push_back(entries_listed());
            e_.list_entries(m.item, applies_ == Truth::yes && m.covers == Truth::yes);
        }
        entries_of_.push_back(entries_listed());
    }

    /// Entries in Evaluation::traced_entries.
    struct Listed {
        std::uint32_t first, size;
    };
    Listed all_entries() const { return {entries_of_.front(), entries_of_.back() - entries_of_.front()}; }
    Listed entries_of(std::size_t member) const {
        return {entries_of_[member], entries_of_[member + 1] - entries_of_[member]};
    }

    /// For the proof: entries before this rule, all with the same numbers.
    void trace(std::size_t c, Listed of, ProvenEntry::How how, const Exact *measured, const Exact *limit) {
        e_.trace({static_cast<std::uint16_t>(index_), static_cast<std::uint16_t>(c), how, measured != nullptr,
                  of.first, of.size, measured ? *measured : Exact(), measured ? *limit : Exact()});
    }
    void trace_all(std::size_t c, ProvenEntry::How how, const Exact *measured = nullptr,
                   const Exact *limit = nullptr) {
        if (e_.open(c)) trace(c, all_entries(), how, measured, limit);
    }

    /// Only a rule that certainly applies covers; `where` and `when` that hang on missing data may leave a
    /// hole.
    void cover() {
        const ClassBits silent = bound_.classes(Limit::Kind::not_said) | bound_.classes(Limit::Kind::other);
        for (const auto &m : members_) {
            if (applies_ == Truth::yes && m.covers == Truth::yes)
                e_.cover(m.item, ~silent);
            else
                e_.may_cover(m.item, m.doubts | applies_missing_);
        }
    }

    template <class F>
    void each_class(Limit::Kind kind, F f) {
        each_of(bound_.classes(kind), f);
    }

    /// A new finding of class c about these. A rule that rejects only together with another waits for it.
    Finding &say(std::size_t c, Finding::Kind kind, Verdict effect, std::span<const std::uint32_t> items) {
        return fill(rule_.only_with ? e_.hold_back(index_, c, exam_) : e_.add(c, effect), kind, effect,
                    items);
    }
    /// One that waits for no other rule: what was measured could not mend it.
    Finding &leave_open(std::size_t c, Finding::Kind kind, std::span<const std::uint32_t> items) {
        return fill(e_.add(c, Verdict::cannot_say), kind, Verdict::cannot_say, items);
    }
    Finding &fill(Finding &f, Finding::Kind kind, Verdict effect,
                  std::span<const std::uint32_t> items) const {
        f.kind = kind;
        f.effect = effect;
        f.rule = static_cast<int>(index_);
        f.indications = e_.numbers_of(items);
        if (items.size() == 1) f.place = e_.items[items[0]].place;
        return f;
    }

    /// A rejection only if it is certain that the rule applies and that it speaks of these.
    void reject(std::size_t c, Finding::Kind kind, Truth certain, Missing doubts,
                std::span<const std::uint32_t> items, const Exact *measured, const Exact *limit,
                double ratio = 0, const std::optional<Span> &place = {}) {
        const bool sure = applies_ == Truth::yes && certain == Truth::yes;
        Finding &f = say(c, sure ? kind : Finding::Kind::missing_data,
                         sure ? Verdict::reject : Verdict::cannot_say, items);
        if (!sure) f.missing = doubts | applies_missing_;
        if (place) f.place = place;
        if (measured) {
            f.has_numbers = true;
            f.measured = *measured;
            f.limit = *limit;
            f.ratio = ratio;
        }
    }

    void cannot_say(std::size_t c, Missing missing, std::span<const std::uint32_t> items) {
        Finding &f = say(c, Finding::Kind::missing_data, Verdict::cannot_say, items);
        // What decides whether the rule speaks at all is asked first: the rest may never be needed.
        f.missing = applies_missing_.any() && e_.engine >= first_to_ask_in_order ? applies_missing_
                                                                                 : missing | applies_missing_;
    }

    void blanket(std::size_t c, Finding::Kind kind) {
        for (const auto &m : members_) {
            if (kind == Finding::Kind::not_allowed)
                reject(c, kind, m.certain, m.doubts, {&m.item, 1}, nullptr, nullptr);
            else
                leave_open(c, kind, {&m.item, 1}).missing = m.doubts | applies_missing_;
        }
    }

    /// Of neighbours in line a person is asked as a group, and of what is in none not at all.
    void ask(std::size_t c) {
        if (!rule_.linked || rule_.least_group < 2 || e_.engine < first_with_open_silence)
            return blanket(c, Finding::Kind::person_decides);
        const HeldBounds bounds = bounds_of(e_, index_, c, view(members_));
        const Missing doubts = bounds.doubts | bounds.missing_window;
        if (doubts.any() && members_.size() >= rule_.least_group)
            return cannot_say(c, doubts, view(everyone()));
        for (const auto &group : bounds.least) {
            Finding &f = leave_open(c, Finding::Kind::person_decides, view(group.items));
            f.place = group.place;
            f.missing = applies_missing_;
        }
        trace_all(c, ProvenEntry::How::within);
    }

    /// What is held against a limit.
    struct Compared {
        std::span<const std::uint32_t> items;
        const std::optional<Span> &place;
        Truth certain = Truth::yes; ///< the rule speaks of them
        Missing doubts;
    };

    /// Tells how much of the limit it is.
    double compare(std::size_t c, const Exact &measured, const Exact &limit, const Compared &of) {
        e_.note_borderline(index_, c, measured, limit, both(of.certain, applies_), of.items);
        const double ratio = ratio_of(measured, limit, rule_.compare);
        if (!holds(measured, rule_.compare, limit))
            reject(c, Finding::Kind::over_limit, of.certain, of.doubts, of.items, &measured, &limit, ratio,
                   of.place);
        else if (applies_ == Truth::yes && of.certain == Truth::yes)
            e_.kept(c, index_, measured, limit, ratio, of.items, of.place);
        return ratio;
    }

    void check_each() {
        const bool apart = e_.engine >= first_with_rings && !is_maximum(rule_.compare) &&
                           !uses_way_to_nearest(rule_.measure);
        for (std::size_t m = 0; m < members_.size(); ++m) {
            const Item &item = e_.items[members_[m].item];
            if (!apart || item.members.size() == 1) {
                check_one(m, item.measures.get(), entries_of(m));
                continue;
            }
            // A joined one holds the largest of each measure; the least allowed is asked of every part.
            Listed part{entries_of_[m], 1};
            for (const std::size_t of : item.members) {
                check_one(m, e_.indications[of].measures, part);
                ++part.first;
            }
        }
    }

    Evaluated measured_of(const Environment &env) const {
        const auto asked = bound_.lone_measure;
        if (!asked) return rule_.measure.evaluate(env);
        return env.has(*asked) ? Evaluated{env[*asked], {}} : Evaluated{0, Missing::quantity(*asked)};
    }

    /// Of a joined one, what its measure is at least where it is not known of all parts; else 0.
    Exact least_measured(const Item &item, const Evaluated &measured) const {
        const auto asked = bound_.lone_measure;
        const LeastKnown *least = e_.least_of(item);
        return !measured.known() && asked && least ? Exact((*least)[static_cast<Quantity>(*asked)])
                                                   : Exact(0);
    }

    void check_one(std::size_t member, const Environment::Values &measures, Listed entries) {
        const Member &m = members_[member];
        const bool upper = is_maximum(rule_.compare);
        const Item &item = e_.items[m.item];
        const Environment env{e_.coupon.values, &measures};
        const Evaluated measured = measured_of(env);
        const Exact least = least_measured(item, measured);
        const Compared self{{&m.item, 1}, item.place, m.certain, m.doubts};
        each_class(Limit::Kind::value, [&](std::size_t c) {
            const Evaluated limit = e_.bound.limit(index_, c).of(env);
            if (upper && limit.known() && least > Exact(0) && !holds(least, rule_.compare, limit.value)) {
                compare(c, least, limit.value, self);
                return;
            }
            if (!measured.known() || !limit.known())
                return cannot_say(c, measured.missing | limit.missing | m.doubts, {&m.item, 1});
            // What is within a limit alone may be over it as one with a neighbour, or short of it alone
            // only.
            if (item.may_merge.any() && holds(measured.value, rule_.compare, limit.value) == upper)
                return cannot_say(c, item.may_merge, {&m.item, 1});
            compare(c, measured.value, limit.value, self);
            if (e_.open(c)) trace(c, entries, ProvenEntry::How::within, &measured.value, &limit.value);
        });
    }

    Several<std::uint32_t> everyone() const {
        Several<std::uint32_t> out;
        for (const auto &m : members_) out.push_back(m.item);
        return out;
    }

    void check_gaps() {
        Several<Span> spans;
        Several<const Member *> placed;
        for (const auto &m : members_) {
            if (const auto &place = e_.items[m.item].place) {
                spans.push_back(*place);
                placed.push_back(&m);
            }
        }
        bool open_end = false;
        for (const auto &m : members_) open_end = open_end || e_.items[m.item].open_end;
        const auto pairs = neighbour_pairs(view(spans), e_.coupon.around());
        each_class(Limit::Kind::value, [&](std::size_t c) {
            if (placed.size() < members_.size() && members_.size() > 1)
                cannot_say(c, Missing::place(), view(everyone()));
            // The way from where one begins is the most that it can be, so it may reject and not accept.
            if (open_end && members_.size() > 1) cannot_say(c, lack_of(Quantity::length), view(everyone()));
            if (placed.size() > 1 && e_.coupon.turn_unknown())
                cannot_say(c, lack_of(Quantity::weld_length), view(everyone()));
        });
        tightest_.assign(e_.classes.size(), {});
        for (const Pair &pair : pairs) check_pair(*placed[pair.first], *placed[pair.second], pair.gap);
        // An uncertain one in between, or one of unknown size, must not hide two that are too near.
        if (!pairs.empty()) check_certain_gaps(view(placed));
        each_class(Limit::Kind::value, [&](std::size_t c) {
            const Tightest &t = tightest_[c];
            trace_all(c, ProvenEntry::How::within, t.ratio < 0 ? nullptr : &t.measured, &t.limit);
        });
    }

    void check_certain_gaps(std::span<const Member *const> placed) {
        Several<Span> spans;
        Several<const Member *> sure;
        for (const Member *m : placed)
            if (m->certain == Truth::yes &&
                (e_.engine < first_with_bounds || e_.items[m->item].measures.has(Quantity::size))) {
                sure.push_back(m);
                spans.push_back(*e_.items[m->item].place);
            }
        if (sure.size() == placed.size()) return;
        for (const Pair &pair : neighbour_pairs(view(spans), e_.coupon.around()))
            check_pair(*sure[pair.first], *sure[pair.second], pair.gap);
    }

    void check_pair(const Member &a, const Member &b, std::int64_t gap) {
        const Environment::Values &x = e_.items[a.item].measures.get(), &y = e_.items[b.item].measures.get();
        pair_.clear();
        for (const auto &[of, larger] :
             {std::pair{Quantity::size, Quantity::larger_size}, {Quantity::length, Quantity::longer_length}})
            if (x.has(of) && y.has(of)) pair_.set_whole(larger, std::max(x[of], y[of]));
        const std::uint32_t two[] = {std::min(a.item, b.item), std::max(a.item, b.item)};
        const std::optional between = Span{e_.items[a.item].place->to, e_.items[b.item].place->from};
        const Compared pair{two, between, both(a.certain, b.certain), a.doubts | b.doubts};
        each_class(Limit::Kind::value, [&](std::size_t c) {
            const Evaluated limit = e_.bound.limit(index_, c).of({e_.coupon.values, &pair_});
            if (!limit.known()) return cannot_say(c, limit.missing, two);
            const double ratio = compare(c, gap, limit.value, pair);
            if (!e_.open(c)) return;
            if (ratio > tightest_[c].ratio) tightest_[c] = {ratio, Exact(gap), limit.value};
        });
    }

    void check_held() {
        HeldBounds bounds;
        bool known = false;
        each_class(Limit::Kind::value, [&](std::size_t c) {
            if (!known || rule_.window_by_class) bounds = bounds_of(e_, index_, c, view(members_));
            known = true;
            Evaluated limit = e_.bound.limit(index_, c).of_coupon();
            if (limit.known() && rule_.prorated) limit = prorated(limit.value, bounds.window, e_.coupon);
            if (!limit.known() || bounds.missing_window.any())
                return cannot_say(c, limit.missing | bounds.missing_window, view(everyone()));
            bool out = false;
            for (const auto &held : bounds.least) {
                if (held.value == Exact(0)) continue;
                compare(c, held.value, limit.value, {view(held.items), held.place, Truth::yes, {}});
                out = out || !holds(held.value, rule_.compare, limit.value);
            }
            if (out) return;
            Exact worst = 0;
            for (const auto &held : bounds.least) worst = std::max(worst, held.value);
            if (bounds.doubts.any()) {
                if (!bounds.most || !holds(*bounds.most, rule_.compare, limit.value))
                    return cannot_say(c, bounds.doubts, view(everyone()));
                worst = *bounds.most;
            }
            trace_all(c, ProvenEntry::How::within, &worst, &limit.value);
        });
    }

    Evaluation &e_;
    Exam exam_ = Exam::VT;
    std::size_t index_;
    const Rule &rule_;
    const BoundRule &bound_;
    Truth applies_ = Truth::yes;
    Missing applies_missing_;
    Several<Member> members_;
    Several<std::uint32_t> entries_of_; ///< of each member, where they begin; and where the last ones end
    Environment::Values pair_;          ///< of the two neighbours in hand
    /// The pair of neighbours that comes nearest to its limit, by class.
    struct Tightest {
        double ratio = -1;
        Exact measured, limit;
    };
    Several<Tightest> tightest_;
};

} // namespace

void check_rule(Evaluation &evaluation, std::size_t rule, std::span<const Candidate> candidates) {
    RuleCheck(evaluation, rule, candidates).run();
}

} // namespace beadbook
