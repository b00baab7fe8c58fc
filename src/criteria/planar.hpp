#pragma once

#include "criteria/model.hpp"
#include "criteria/vocabulary.hpp"

namespace beadbook {

/// What lets cracks, incomplete fusion or incomplete penetration through, or linear indications of any
/// length, which may be cracks.
struct PlanarPass {
    TypeId type = 0;
    std::size_t class_index = 0;
    const Rule *rule = nullptr; ///< it has no limit, or one, and no other rule forbids the type
    /// Or, though the rule forbids such finds, those that are small enough do not count by this.
    const Relevance *relevance = nullptr;
    /// Where, if others stop some of them: "thinner member over 0.25 in up to 1 in".
    std::string rest = {};
    const std::string &id() const { return relevance ? relevance->id : rule->id; }
    /// "it allows 'at most 2 mm' for class B, and no other rule forbids crack there: some is accepted".
    std::string words(const CriteriaSet &set, const Vocabulary &vocabulary) const;
};

/// Of each rule and clause that lets some through once: the first type and class. With a class, of that
/// alone.
std::vector<PlanarPass> planar_passes(const CriteriaSet &set,
                                      const Vocabulary &vocabulary = Vocabulary::shipped(),
                                      std::optional<std::size_t> of_class = {});

/// Whether a type is a crack, incomplete fusion or incomplete penetration.
bool is_planar(TypeId type, const Vocabulary &vocabulary = Vocabulary::shipped());

/// Some gap tells why nothing is said of them, for that class.
bool in_gap(const CriteriaSet &set, TypeId type, Exam exam, std::size_t class_index);

/// The rules that speak of it, in that class.
std::vector<const Rule *> rules_of(const CriteriaSet &set, TypeId type, Exam exam, std::size_t class_index);

} // namespace beadbook
