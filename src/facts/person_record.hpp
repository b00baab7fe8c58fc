#pragma once

#include "criteria/methods.hpp"
#include "measure/day.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

/// That a person may examine by one method, as the certificate says.
struct Certificate {
    Exam method = Exam::VT;
    std::string level, number, scheme;
    std::optional<Day> since, until; ///< first and last day; absent: not on record
    bool in_force(Day day) const { return (!since || *since <= day) && (!until || day <= *until); }
    friend bool operator==(const Certificate &, const Certificate &) = default;
};
/// "MT II until 2027-05-01 number 4711 scheme SNT-TC-1A": method and level first, then any of since, until,
/// number and scheme, each with its word. Throws DataError.
Certificate read_certificate(const std::string &text);
/// The same text again.
std::string print(const Certificate &certificate);
/// "MT II 4711": what tells it from the others of the person.
std::string name_of(const Certificate &certificate);

struct VisionTest {
    Day on{};
    std::string letters; ///< the smallest that were read: J1, J2, N4.5; may be empty
    friend bool operator==(const VisionTest &, const VisionTest &) = default;
};
/// "2026-03-01" or "2026-03-01 J1". Throws DataError.
VisionTest read_vision_test(const std::string &text);
std::string print(const VisionTest &test);

/// A person as on record: who may examine by what. Older certificates and vision tests stay beside newer
/// ones, so that an exam of last year is held against what was in force then.
struct PersonRecord {
    std::string name;
    std::vector<std::string> roles; ///< of person_roles()
    std::vector<Certificate> certificates;
    std::vector<VisionTest> vision; ///< by day
    std::string note;

    /// The newest test on or before a day; null if there is none.
    const VisionTest *vision_on(Day day) const;
    friend bool operator==(const PersonRecord &, const PersonRecord &) = default;
};
struct PersonState {
    PersonRecord record;
    std::int64_t record_seq = 0;
};

/// technician, instructor, welder, keeper.
const std::vector<std::string> &person_roles();

/// Whether a person may examine by a method on a day, by the certificates on record.
struct Entitlement {
    const Certificate *certificate = nullptr; ///< that counts, or the one that comes nearest to it
    std::string objection;                    ///< id of why not (why_not_entitled); empty if entitled
};
/// The highest level in force counts. That level I does not judge alone is common practice, no source, as in
/// exam_standing.hpp.
Entitlement entitlement(const PersonRecord &person, Exam method, Day day);

/// The sentence of an objection's id; empty if the id is none. The ids stand in an exam's `sure` once
/// somebody recorded the exam in spite of it, and such an exam does not count.
std::string why_not_entitled(const std::string &id);
/// Of an exam that was brought along from a record by which its examiner welded the coupon.
inline constexpr std::string_view welded_it = "welded-it";
/// Stands there where an examiner is somebody else than the one on record who is written nearly so.
inline constexpr std::string_view another_examiner = "another examiner";

} // namespace beadbook
