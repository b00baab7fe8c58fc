#include "criteria/scope_reach.hpp"

#include "criteria/pieces.hpp"

#include <algorithm>

namespace beadbook {
namespace {

/// Words that two lists of conditions ask for, and no word satisfies both.
bool words_apart(const std::vector<Condition> &a, const std::vector<Condition> &b) {
    return std::any_of(a.begin(), a.end(), [&](const Condition &x) {
        return x.kind == Condition::Kind::word && std::any_of(b.begin(), b.end(), [&](const Condition &y) {
                   return y.kind == Condition::Kind::word && y.slot == x.slot && (x.fitting & y.fitting) == 0;
               });
    });
}

bool never_hold(const std::vector<Condition> &conditions) {
    return possible(where_hold(conditions, Unit::inch)) == false &&
           possible(where_hold(conditions, Unit::millimetre)) == false;
}

} // namespace

bool hold_outside_scope_only(const CriteriaSet &set, const std::vector<Condition> &own) {
    if (never_hold(own)) return false;
    std::vector<Condition> scope;
    for (const auto &part : set.scope)
        if (part.only_if.empty()) scope.insert(scope.end(), part.when.begin(), part.when.end());
    if (words_apart(own, scope)) return true;
    scope.insert(scope.end(), own.begin(), own.end());
    return never_hold(scope);
}

} // namespace beadbook
