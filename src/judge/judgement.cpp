#include "judge/judgement.hpp"

namespace beadbook {

std::string_view name_of(Verdict v) {
    return v == Verdict::accept ? "accept" : v == Verdict::reject ? "reject" : "cannot say";
}

std::string_view id_of(Finding::Kind kind) {
    switch (kind) {
    case Finding::Kind::over_limit: return "out of limit";
    case Finding::Kind::not_allowed: return "not allowed";
    case Finding::Kind::missing_data: return "missing data";
    case Finding::Kind::person_decides: return "a person decides";
    case Finding::Kind::not_said: return "not said";
    case Finding::Kind::not_covered: return "not covered";
    case Finding::Kind::exam_missing: return "exam missing";
    case Finding::Kind::not_measured: return "not measured";
    case Finding::Kind::exam_pending: return "exam pending";
    case Finding::Kind::contradiction: return "contradiction";
    case Finding::Kind::unproven: return "unproven";
    case Finding::Kind::outside_scope: return "outside scope";
    case Finding::Kind::scope_unknown: return "scope unknown";
    case Finding::Kind::within: break;
    }
    return "within";
}

} // namespace beadbook
