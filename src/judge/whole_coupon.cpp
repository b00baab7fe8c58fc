#include "judge/whole_coupon.hpp"

#include <algorithm>

namespace beadbook {

void check_combined(Evaluation &e) {
    for (const std::size_t r : e.bound.combining) {
        const Rule &rule = e.set.rules[r];
        Missing lacks;
        const Truth applies = e.applies(r, lacks);
        if (applies == Truth::no) continue;
        for (std::size_t c = 0; c < e.classes.size(); ++c) {
            const Limit::Kind kind = rule.limits[c].kind;
            const bool left = kind == Limit::Kind::ask || kind == Limit::Kind::not_said;
            if (kind != Limit::Kind::value && !(left && e.engine >= first_with_open_silence)) continue;
            const Evaluated limit = left ? Evaluated{} : e.bound.limit(r, c).of_coupon();
            std::int64_t certain = 0, possible = 0;
            std::vector<std::uint32_t> items;
            for (const std::size_t other : rule.combined) {
                const auto &b = e.borderline(other, c);
                certain += b.reached == Truth::yes;
                possible += b.reached == Truth::unknown;
                items.insert(items.end(), b.items.begin(), b.items.end());
            }
            std::sort(items.begin(), items.end());
            items.erase(std::unique(items.begin(), items.end()), items.end());
            Finding f;
            f.rule = static_cast<int>(r);
            f.indications = e.numbers_of(items);
            f.missing = lacks.any() && e.engine >= first_to_ask_in_order ? lacks : limit.missing | lacks;
            if (left) {
                if (certain + possible == 0) continue;
                f.kind = kind == Limit::Kind::ask ? Finding::Kind::person_decides : Finding::Kind::not_said;
                f.effect = Verdict::cannot_say;
                e.add(c, std::move(f));
                continue;
            }
            f.has_numbers = limit.known();
            f.measured = Exact(certain);
            f.limit = limit.value;
            if (limit.known()) f.ratio = ratio_of(f.measured, limit.value, rule.compare);
            const bool out = limit.known() && !holds(Exact(certain), rule.compare, limit.value);
            const bool may_be_out =
                limit.known() && !holds(Exact(certain + possible), rule.compare, limit.value);
            if (out && applies == Truth::yes) {
                f.kind = Finding::Kind::over_limit;
                f.effect = Verdict::reject;
            } else if (out || may_be_out || (!limit.known() && certain + possible > 0)) {
                f.kind = Finding::Kind::missing_data;
                f.effect = Verdict::cannot_say;
            } else {
                Evaluation::Traced row;
                row.rule = static_cast<std::uint16_t>(r);
                row.class_index = static_cast<std::uint16_t>(c);
                row.how = ProvenEntry::How::within;
                row.has_numbers = limit.known();
                row.measured = Exact(certain + possible);
                row.limit = limit.value;
                e.trace(row);
                continue;
            }
            e.add(c, std::move(f));
        }
    }
}

void check_coupon_rules(Evaluation &e) {
    for (const std::size_t r : e.bound.of_coupon) {
        const Rule &rule = e.set.rules[r];
        Missing lacks;
        const Truth applies = e.applies(r, lacks);
        if (applies == Truth::no) continue;
        for (std::size_t c = 0; c < e.classes.size(); ++c) {
            Finding f;
            f.rule = static_cast<int>(r);
            f.effect = Verdict::cannot_say;
            f.missing = lacks;
            switch (rule.limits[c].kind) {
            case Limit::Kind::none: f.kind = Finding::Kind::not_allowed; break;
            case Limit::Kind::ask: f.kind = Finding::Kind::person_decides; break;
            case Limit::Kind::not_said: f.kind = Finding::Kind::not_said; break;
            default: continue;
            }
            if (applies != Truth::yes)
                f.kind = Finding::Kind::missing_data;
            else if (f.kind == Finding::Kind::not_allowed)
                f.effect = Verdict::reject;
            e.add(c, std::move(f));
        }
    }
}

void check_pairs(Evaluation &e) {
    for (const std::size_t r : e.bound.only_with) {
        const auto other = e.set.rules[r].only_with;
        if (*other > r) continue;
        for (std::size_t c = 0; c < e.classes.size(); ++c)
            for (std::size_t x = 0; x < exam_count; ++x) {
                const auto exam = static_cast<Exam>(x);
                std::vector<Finding> first = e.take_back(*other, c, exam), second = e.take_back(r, c, exam);
                if (first.empty() || second.empty()) continue;
                const auto sure = [](const std::vector<Finding> &all) {
                    return std::any_of(all.begin(), all.end(),
                                       [](const Finding &f) { return f.effect == Verdict::reject; });
                };
                const bool both_over = sure(first) && sure(second);
                first.insert(first.end(), second.begin(), second.end());
                for (auto &f : first) {
                    if (!both_over && f.effect == Verdict::reject) {
                        f.effect = Verdict::cannot_say;
                        f.kind = Finding::Kind::missing_data;
                        for (const auto &lacking : first) f.missing |= lacking.missing;
                    }
                    e.add(c, f);
                }
            }
    }
}

} // namespace beadbook
