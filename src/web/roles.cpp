#include "web/roles.hpp"

#include <cctype>

namespace beadbook {
namespace {

struct RouteRoles {
    const char *method, *pattern;
    /// Initials of roles: technician, instructor, keeper, welder; w: a welder, of his own alone.
    const char *roles;
};

const RouteRoles table[] = {
    // Everybody: who is signed in, and whether the record grew.
    {"GET", "/head", "TIKW"},
    {"GET", "/person", "TIKW"},
    {"POST", "/person/password", "TIKW"},
    {"POST", "/sign-out", "TIKW"},
    // Nobody: who signed in is who he is, and another browser signs in by itself.
    {"POST", "/person", ""},
    {"POST", "/link", ""},
    // Examining: instructors look, technicians enter.
    {"GET", "/", "TIKw"},
    {"GET", "/register", "TIK"},
    {"POST", "/register", "TIK"},
    {"GET", "/coupon/:mark", "TIKw"},
    {"GET", "/coupon/:mark/change", "TK"},
    {"POST", "/coupon/:mark/change", "TK"},
    {"POST", "/coupon/:mark/remark", "TIK"},
    {"POST", "/coupon/:mark/photo", "TIK"},
    {"GET", "/coupon/:mark/photo/:photo", "TIK"},
    {"POST", "/coupon/:mark/photo/:photo/withdraw", "TIK"},
    {"GET", "/coupon/:mark/photo/:photo/measure", "TIK"},
    {"POST", "/coupon/:mark/photo/:photo/correct", "TK"},
    {"GET", "/coupon/:mark/exam", "TK"},
    {"POST", "/coupon/:mark/exam", "TK"},
    {"GET", "/coupon/:mark/exam/:exam", "TIK"},
    {"GET", "/coupon/:mark/exam/:exam/reading", "TK"},
    {"GET", "/coupon/:mark/exam/:exam/conditions", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/conditions", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/log", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/undo", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/correct", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/finish", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/reopen", "TK"},
    {"POST", "/coupon/:mark/exam/:exam/withdraw", "TK"},
    // The class: instructors grade.
    {"GET", "/class", "IK"},
    {"GET", "/class/coupon/:mark", "IK"},
    {"POST", "/class/coupon/:mark", "IK"},
    {"GET", "/class/accepted", "IK"},
    {"POST", "/class/accepted", "IK"},
    {"GET", "/class/summary", "IK"},
    {"GET", "/class/learner/:welder", "IK"},
    {"GET", "/class/learners", "IK"},
    // Welders.
    {"GET", "/welders", "TIKw"},
    {"GET", "/welder/:welder", "TIKw"},
    {"GET", "/welder/:welder/coupon/:mark", "TIKw"},
    {"GET", "/welder/:welder/coupon/:mark/photo/:photo", "TIKw"},
    {"GET", "/welder/:welder/record/:number", "TIKw"},
    // The keeper's; what is shipped may be read by all who work by it.
    {"GET", "/keeper", "K"},
    {"GET", "/keeper/due", "IK"},
    {"GET", "/keeper/verify", "K"},
    {"GET", "/keeper/backup", "K"},
    {"GET", "/keeper/people", "K"},
    {"POST", "/keeper/people", "K"},
    {"GET", "/keeper/people/:name", "K"},
    {"GET", "/keeper/account/:name", "K"},
    {"POST", "/keeper/account/:name", "K"},
    {"GET", "/keeper/equipment", "K"},
    {"POST", "/keeper/equipment", "K"},
    {"GET", "/keeper/equipment/:serial", "K"},
    {"GET", "/keeper/criteria", "TIK"},
    {"GET", "/keeper/criteria/:name", "TIK"},
    {"GET", "/keeper/practices", "TIK"},
    {"GET", "/keeper/practices/:name", "TIK"},
    {"GET", "/keeper/rules", "TIK"},
    {"GET", "/keeper/rules/:name", "TIK"},
    {"GET", "/keeper/types", "TIK"},
    {"GET", "/keeper/copy", "K"},
    {"GET", "/keeper/copy/:set", "K"},
    {"POST", "/keeper/copy/:set/fill", "K"},
    {"POST", "/keeper/copy/:set/confirm", "K"},
    {"POST", "/keeper/copy/:set/withdraw", "K"},
};

} // namespace

Access access_to(const std::string &method, const std::string &pattern,
                 const std::vector<std::string> &roles) {
    Access out = Access::none;
    for (const auto &row : table) {
        if (method != row.method || pattern != row.pattern) continue;
        for (const auto &role : roles) {
            if (role.empty()) continue;
            const std::string may(row.roles);
            const auto initial = static_cast<unsigned char>(role.front());
            if (may.find(static_cast<char>(std::toupper(initial))) != std::string::npos) return Access::all;
            if (may.find(static_cast<char>(initial)) != std::string::npos) out = Access::own;
        }
    }
    return out;
}

} // namespace beadbook
