#pragma once

#include "operations/writing.hpp"

namespace beadbook {

/// A person as somebody writes it down; what is absent stays as it is.
struct PersonRequest {
    std::string name;
    std::vector<std::string> roles;        ///< of person_roles(); not empty: they replace those before
    std::vector<std::string> certificates; ///< as read_certificate takes them
    std::vector<std::string>
        without; ///< certificates to take off, as name_of says them: "MT II 4711"; "vision 2026-03-01"
    std::vector<std::string> vision; ///< as read_vision_test takes them
    std::optional<std::string> note;
    std::string why;   ///< of a change
    bool sure = false; ///< somebody whose name is like one on record is another person
    bool says_something() const {
        return !roles.empty() || !certificates.empty() || !without.empty() || !vision.empty() || note;
    }
};

/// One person, with what was written and when.
struct PersonSheet {
    PersonRecord person;
    std::vector<Entry> history;
    Day on;
};

struct PersonWritten {
    PersonRecord person;
    bool first = false; ///< registered by this, not changed
};
/// Registers a person, or changes what is on record; the old entry is kept. A certificate takes the place of
/// the one that name_of calls alike, and stands beside the others; so does a vision test of another day.
/// Throws Refusal: no name, no reason for a change, nothing that changes.
Done<PersonWritten> write_person(Writing &writing, const PersonRequest &request);

/// Throws Refusal: nobody of that name is on record. Capitals do not matter.
PersonSheet show_person(Office &office, const std::string &name, std::optional<Day> on = {});
struct PeopleList {
    std::vector<PersonRecord> people;
    Day on;
    bool asked = false; ///< for that day, which is told then
};
PeopleList list_people(Office &office, std::optional<Day> on = {});

/// Which exams count may hang on what was said of somebody: coupons that were examined by them, however they
/// are written.
void touch_examined_by(Writing &writing, const std::string &person);

/// The person on record by that name, capitals and blanks aside; nothing if there is none.
std::optional<PersonRecord> person_named(Office &office, const std::string &name);
/// Whether a text names somebody who can be asked: as it reads, or because somebody of that name is on
/// record.
bool is_somebody(Office &office, const std::string &text);
/// Throws Refusal (the field): it names more than one (facts/person_name.hpp), and nobody on record so.
void check_names_one(Office &office, const std::string &text, const std::string &field);
/// Somebody on record who may be the one of that name: cut down, turned round, or with a slip of the hand
/// (facts/name_likeness.hpp). Empty if nobody is.
std::string person_like(Office &office, const std::string &name);

} // namespace beadbook
