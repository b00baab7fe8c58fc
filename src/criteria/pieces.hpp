#pragma once

#include "criteria/environment.hpp"
#include "criteria/linear_system.hpp"
#include "language/condition.hpp"

namespace beadbook {

/// One linear stretch of a formula and where it holds.
struct Piece {
    std::vector<Inequality> where;
    Linear value;
};
/// A formula as its linear stretches, in one unit of work; they are disjoint, and outside of them it has no
/// value (a table). Nothing if it is not linear (T x L, L/T), or has too many.
std::optional<std::vector<Piece>> pieces_of(const Formula &formula, Unit unit);
/// The same of every divisor in it.
std::vector<std::vector<Piece>> divisors_of(const Formula &formula, Unit unit);

/// What may hold at once: any one of some lists of inequalities. Words are not looked at.
using Alternatives = std::vector<std::vector<Inequality>>;
/// Where all comparisons hold. One that is not linear is left out, so it may be wider than they are.
Alternatives where_hold(const std::vector<Condition> &conditions, Unit unit);
Alternatives both_of(const Alternatives &a, const Alternatives &b);

/// What is true of all that can be measured: sizes are over 0, the thinner member is not over the thicker
/// one.
std::vector<Inequality> by_nature(const Alternatives &of);

/// Whether one of them can hold, as measurements go. Nothing where that is not known.
std::optional<bool> possible(const Alternatives &all);
/// Whether they can hold together with some piece, of which `then` asks something more.
template <class Then>
std::optional<bool> possible_with(const Alternatives &all, const std::vector<Piece> &pieces, Then then) {
    Alternatives with;
    for (const auto &piece : pieces) {
        std::vector<Inequality> more = piece.where;
        for (auto &one : then(piece.value)) more.push_back(std::move(one));
        with.push_back(std::move(more));
    }
    return possible(both_of(all, with));
}

} // namespace beadbook
