#include "criteria/own_measure.hpp"

#include <utility>

namespace beadbook {
namespace {

/// What is measured of each by the sets that were read; the first that a type is a kind of counts.
constexpr std::pair<const char *, OwnMeasure> own_measures[] = {
    {"crater pipe", OwnMeasure::several},
    {"end crater pipe", OwnMeasure::several},
    {"porosity", OwnMeasure::extent},
    {"inclusion", OwnMeasure::extent},
    {"linear indication", OwnMeasure::extent},
    {"rounded indication", OwnMeasure::extent},
    {"undercut", OwnMeasure::depth},
    {"incompletely filled groove", OwnMeasure::depth},
    {"root concavity", OwnMeasure::depth},
    {"excess weld metal", OwnMeasure::height},
    {"excessive convexity", OwnMeasure::height},
    {"excess penetration", OwnMeasure::height},
    {"linear misalignment", OwnMeasure::height},
    {"incorrect weld toe", OwnMeasure::angle},
    {"angular misalignment", OwnMeasure::angle},
    {"incorrect root gap", OwnMeasure::opening},
};

} // namespace

OwnMeasure own_measure(const Vocabulary &vocabulary, TypeId type) {
    if (vocabulary[type].measured) return OwnMeasure::dimension;
    for (const auto &[wider, measure] : own_measures)
        if (vocabulary.is_a(type, *vocabulary.find(wider))) return measure;
    return OwnMeasure::several;
}

} // namespace beadbook
