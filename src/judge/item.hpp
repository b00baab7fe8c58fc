#pragma once

#include "judge/coupon.hpp"
#include "judge/few.hpp"

#include <algorithm>
#include <array>
#include <memory>
#include <vector>

namespace beadbook {

/// An item's measures: those of its indication, or its own once it differs from it.
class Measures {
public:
    Measures() = default;
    explicit Measures(const Environment::Values &of) : base_(&of) {}

    const Environment::Values &get() const { return own_ ? *own_ : *base_; }
    bool has(Quantity q) const { return get().has(q); }
    Exact operator[](Quantity q) const { return get()[q]; }
    void set(Quantity q, const Exact &value) { edit().set(q, value); }
    void forget(Quantity q) { edit().forget(q); }

private:
    Environment::Values &edit() {
        if (!own_ || own_.use_count() > 1) own_ = std::make_shared<Environment::Values>(get());
        return *own_;
    }

    const Environment::Values *base_ = nullptr;
    std::shared_ptr<Environment::Values> own_;
};

/// Of several that count as one, of which a measure is not known of all: what the largest of it is at least.
/// 0: nothing is known.
class LeastKnown {
public:
    static constexpr std::array quantities{Quantity::width, Quantity::depth, Quantity::height,
                                           Quantity::angle};
    std::int64_t operator[](Quantity q) const {
        for (std::size_t i = 0; i < quantities.size(); ++i)
            if (quantities[i] == q) return value_[i];
        return 0;
    }
    void raise(Quantity q, std::int64_t to) {
        for (std::size_t i = 0; i < quantities.size(); ++i)
            if (quantities[i] == q) value_[i] = std::max(value_[i], to);
    }

private:
    std::array<std::int64_t, quantities.size()> value_{};
};

/// What the rules see: an indication, or several neighbours that the set counts as one.
struct Item {
    Few<std::size_t> members; ///< indices of indications; the first gives type and exam
    std::optional<Span> place;
    std::optional<Span> across;
    Measures measures;
    std::array<std::uint8_t, attribute_count> words{};
    Truth counts = Truth::yes; ///< relevance
    Shape shape = Shape::unknown;
    int irrelevant_by = -1;                ///< the relevance clause that leaves it out, if `counts` is no
    Missing doubts;                        ///< why `counts` or `shape` is unknown
    bool has_linear = false;               ///< a member is linear by itself; as one with others it stays so
    bool open_end = false;                 ///< one knows where it begins, and not how long it is
    std::optional<std::int64_t> narrowest; ///< width of the narrowest member, if all are known
    /// It is no wider, as far as widths are known; none is wider than long.
    std::optional<std::int64_t> narrow_at_most;
    LeastKnown least;
    Missing may_merge; ///< what would tell whether it is one with another; none if that is known
};

/// It is told where it begins, and neither where it ends nor how long it is.
bool has_open_end(const Indication &found, const Vocabulary &vocabulary);

/// Elongated by its name, and as wide as long by its measures. Anything longer is for the set's own rule to
/// call linear or rounded, whatever the name: three times the width is rounded in most standards.
bool round_in_spite_of_name(const ImperfectionType &type, const Environment::Values &measures);

/// Whether the name of such a find says that it is linear, or its measures decide as of all others.
enum class Shapes : std::uint8_t { by_measures, by_name };

/// Merges neighbours, then settles shape and relevance, all by the set's own notions and as `engine` did it.
/// What counts may hang on the class (CriteriaSet::counts_by_class): it is settled for one.
std::vector<Item> make_items(const CriteriaSet &set, const Coupon &coupon,
                             const std::vector<Indication> &indications, const Vocabulary &vocabulary,
                             int engine, Shapes shapes = Shapes::by_measures, std::size_t for_class = 0);

/// Truth of all conditions for one item. With `least` also what is known of some of its parts may decide, and
/// a lone find is farther than any from a neighbour.
Truth holds_for(const std::vector<Condition> &conditions, const Coupon &coupon,
                const Environment::Values &measures, const std::array<std::uint8_t, attribute_count> &words,
                Missing &missing, const LeastKnown *least = nullptr);

} // namespace beadbook
