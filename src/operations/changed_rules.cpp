#include "operations/changed_rules.hpp"

#include "operations/planning.hpp"
#include "operations/standing.hpp"

namespace beadbook {
namespace {

/// A new edition is another matter: what was granted by the old one stays so.
std::string changed_rules_words(const RangeRules &then, const RangeRules &now) {
    if (now.name != then.name || now.edition != then.edition || now.hash == then.hash) return "";
    const std::string own = then.own_file_mark();
    return "the text of " + then.name + " was changed under the same edition since; it was granted by " +
           (own.empty() ? "another" : own);
}

void tell_once(const std::string &words, Validity &validity) {
    if (!words.empty() && validity.reason.find(words) == std::string::npos) validity.caution(words);
}

} // namespace

void tell_changed_rules(Office &office, HeldQualification &held) {
    if (held.record.rules_file.empty()) return;
    try {
        tell_once(changed_rules_words(*held.rules, *office.catalogue().rules(held.record.rules_file)),
                  held.validity);
    } catch (const Refusal &e) {
        // Of a file that is gone, or lies on another machine, the text that was kept stands.
        if (e.kind() == Refusal::Kind::record) throw;
    }
}

void tell_changed_rules(const RangeRules &now, HeldTest &held) {
    tell_once(changed_rules_words(*held.rules, now), held.validity);
}

} // namespace beadbook
