#pragma once

#include "web/visit.hpp"

namespace beadbook {

/// Pieces and addresses that the instructor's pages share.
inline const std::string class_path = "/class";
std::string grading_path(const std::string &mark);
std::string learner_path(const std::string &welder);

/// Ways from a selection to what else is told of it.
std::string class_ways(const Visit &visit, const std::string &query);

/// A page whose selection was refused: its form, with the refusal at the field.
Answer refused_selection(Visit &visit, const std::string &title, const std::string &path, const Refusal &e,
                         const std::string &more = "");

} // namespace beadbook
