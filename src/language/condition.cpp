#include "language/condition.hpp"

namespace beadbook {

Truth Condition::compare(const Environment &env, Missing &missing) const {
    const Evaluated value = left.evaluate(env);
    Truth truth = value.known() ? Truth::yes : Truth::unknown;
    Missing lacks = value.missing;
    for (const auto &edge : edges) {
        const Evaluated limit = edge.right.evaluate(env);
        lacks |= limit.missing;
        if (!value.known() || !limit.known())
            truth = both(truth, Truth::unknown);
        else if (!holds(value.value, edge.compare, limit.value))
            return Truth::no;
    }
    if (truth == Truth::unknown) missing |= lacks;
    return truth;
}

Truth Condition::word(std::uint8_t index, Missing &missing) const {
    if (index == 0) {
        missing |= kind == Kind::fact ? Missing::of(fact) : Missing::of(attribute);
        return Truth::unknown;
    }
    return (words >> index) & 1u ? Truth::yes : Truth::no;
}

} // namespace beadbook
