// What is left of the coupons and finds that a set covers when some parts of it have spoken: exactly, as far
// as conditions compare sums of quantities or ask for words.
#include "criteria/remainder.hpp"

#include "criteria/band.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace beadbook {
namespace {

/// Beyond that nobody has written a set, and the search ends without an answer.
constexpr std::size_t most_steps = 2000;

/// Beside the words of a coupon and of a find.
constexpr Slot shape_slot = fact_count + attribute_count;

std::uint64_t words_of(Slot slot) {
    const std::size_t number = slot < fact_count ? info(static_cast<Fact>(slot)).words.size()
                               : slot < shape_slot
                                   ? info(static_cast<Attribute>(slot - fact_count)).words.size()
                                   : 2;
    return (std::uint64_t{1} << (number + 1)) - 2;
}

constexpr Compare opposite(Compare c) {
    switch (c) {
    case Compare::over: return Compare::at_most;
    case Compare::at_least: return Compare::under;
    case Compare::under: return Compare::at_least;
    case Compare::at_most: break;
    }
    return Compare::over;
}

/// What holds where the condition does not: any one of these.
std::vector<Condition> denials_of(const Condition &c) {
    std::vector<Condition> out;
    if (c.kind == Condition::Kind::word) {
        Condition other = c;
        other.fitting = words_of(c.slot) & ~c.fitting;
        other.denied = !c.denied;
        other.text = c.subject + (other.denied ? " is not " : " is ") + listed(c.words, "or");
        out.push_back(std::move(other));
    }
    if (c.kind == Condition::Kind::comparison)
        for (const auto &edge : c.edges) {
            Condition other = c;
            other.edges = {{opposite(edge.compare), edge.right}};
            other.text =
                c.left.text + " " + std::string(name_of(opposite(edge.compare))) + " " + edge.right.text;
            out.push_back(std::move(other));
        }
    return out;
}

/// Any of which is to hold; each is a list that holds together.
struct Choice {
    std::vector<std::vector<Condition>> ways;
    bool is_told = false; ///< in the words of what is left
};

/// All that holds so far.
struct Held {
    std::map<Slot, Band> bands;
    std::map<Slot, std::uint64_t> words;
    std::vector<Condition> all;
    std::set<std::string> texts;
    std::vector<const Condition *> cut; ///< by what was taken out

    /// False where it can no longer hold, as far as one quantity or word tells.
    bool take(const Condition &c) {
        all.push_back(c);
        texts.insert(c.text);
        if (c.kind == Condition::Kind::word) {
            auto &here = words.try_emplace(c.slot, words_of(c.slot)).first->second;
            return (here &= c.fitting) != 0;
        }
        if (!compares_plainly(c)) return true;
        Band &here = bands[*c.left.lone_quantity()];
        here.narrow(c);
        return !here.empty();
    }
    bool implies(const Condition &c) const {
        if (c.kind == Condition::Kind::word) {
            const auto own = words.find(c.slot);
            return own != words.end() && (own->second & ~c.fitting) == 0;
        }
        if (!compares_plainly(c)) return texts.contains(c.text);
        const auto own = bands.find(*c.left.lone_quantity());
        if (own == bands.end()) return false;
        Band here = own->second;
        here.narrow(c);
        return here == own->second;
    }
};

class Remainder {
public:
    explicit Remainder(const CriteriaSet &set) : set_(set) {
        for (const auto &part : set.scope) {
            if (part.only_if.empty()) {
                for (const auto &c : part.when) take(c);
                continue;
            }
            Choice choice;
            for (const auto &c : part.only_if)
                for (auto &other : denials_of(c)) choice.ways.push_back({std::move(other)});
            choice.ways.push_back(part.when);
            choices_.push_back(std::move(choice));
        }
    }

    void take(const Condition &c) { possible_ = held_.take(c) && possible_; }

    void take_out(const std::vector<Condition> &conditions) {
        Choice choice;
        choice.is_told = true;
        for (const auto &c : conditions)
            // What is asked for in the same words cannot be denied.
            if (!held_.texts.contains(c.text))
                for (auto &other : denials_of(c)) choice.ways.push_back({std::move(other)});
        choices_.push_back(std::move(choice));
    }

    std::optional<std::string> words() {
        if (!possible_) return std::nullopt;
        return search(held_, 0);
    }

private:
    std::optional<std::string> search(const Held &held, std::size_t from) {
        if (++steps_ > most_steps) return std::nullopt;
        const auto holds_already = [&](const std::vector<Condition> &way) {
            return std::all_of(way.begin(), way.end(), [&](const Condition &c) { return held.implies(c); });
        };
        while (from < choices_.size() &&
               std::any_of(choices_[from].ways.begin(), choices_[from].ways.end(), holds_already))
            ++from;
        if (from == choices_.size()) {
            if (possible(where_hold(held.all, set_.unit)) != true) return std::nullopt;
            return told(held);
        }
        for (const auto &way : choices_[from].ways) {
            Held next = held;
            bool fine = true;
            for (const auto &c : way) {
                fine = fine && next.take(c);
                if (choices_[from].is_told) next.cut.push_back(&c);
            }
            if (!fine) continue;
            if (auto found = search(next, from + 1)) return found;
        }
        return std::nullopt;
    }

    std::string told(const Held &held) const {
        std::vector<std::string> out;
        std::set<Slot> bands;
        for (const Condition *c : held.cut) {
            if (!compares_plainly(*c)) {
                out.push_back(c->text);
                continue;
            }
            const Slot slot = *c->left.lone_quantity();
            if (bands.insert(slot).second) out.push_back(band_words(slot, held.bands.at(slot)));
        }
        return listed(out, "and");
    }
    std::string band_words(Slot slot, const Band &band) const {
        const QuantityInfo &of = info(static_cast<Quantity>(slot));
        const auto said = [&](const Exact &value) { return print(value, of.dimension, set_.unit); };
        std::string out(of.name);
        if (band.low) out += (band.low_in ? " from " : " over ") + said(*band.low);
        if (band.high) out += (band.high_in ? " up to " : " under ") + said(*band.high);
        return out;
    }

    const CriteriaSet &set_;
    Held held_;
    bool possible_ = true;
    std::vector<Choice> choices_;
    std::size_t steps_ = 0;
};

} // namespace

void add_shape(std::vector<Condition> &conditions, Shape shape) {
    if (shape == Shape::unknown) return;
    Condition c;
    c.kind = Condition::Kind::word;
    c.slot = shape_slot;
    c.fitting = shape == Shape::linear ? 2 : 4;
    c.subject = "shape";
    c.words = {std::string(name_of(shape))};
    c.text = "shape is " + c.words.front();
    conditions.push_back(std::move(c));
}

std::optional<std::string> remainder_of(const CriteriaSet &set, const std::vector<Condition> &holding,
                                        const std::vector<std::vector<Condition>> &taken_out) {
    if (std::any_of(taken_out.begin(), taken_out.end(), [](const auto &all) { return all.empty(); }))
        return std::nullopt;
    Remainder remainder(set);
    for (const auto &c : holding) remainder.take(c);
    for (const auto &all : taken_out) remainder.take_out(all);
    return remainder.words();
}

} // namespace beadbook
