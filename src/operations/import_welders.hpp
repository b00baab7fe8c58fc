#pragma once

#include <map>
#include <set>
#include <string>

namespace beadbook {

/// The marks that welders of a file are to have here: another shop's mark may be somebody else's.
class WeldersHere {
public:
    /// `marks`: by theirs.
    explicit WeldersHere(const std::map<std::string, std::string> &marks) : marks_(marks) {}
    /// Puts the mark here in the place of theirs, among the fields of a coupon.
    void take(std::map<std::string, std::string> &fields);
    /// Throws Refusal if one of them is nobody's in the file.
    void check_used() const;

private:
    std::map<std::string, std::string> marks_;
    std::set<std::string> used_;
};

} // namespace beadbook
