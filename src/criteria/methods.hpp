#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace beadbook {

/// What kind of thing an imperfection is to the methods.
enum class Nature : std::uint8_t { crack, planar, volumetric, profile, surface_mark };
constexpr std::size_t nature_count = 5;

/// How well a method shows one kind of imperfection, and why.
struct Sight {
    enum class Grade : std::uint8_t { no, partly, well };
    Grade grade = Grade::no;
    std::string_view why;
};

/// One examination method. All that is peculiar to it stands in its row: a further method is a row here, its
/// practices in criteria/technique, and its name in criteria/criteria.schema.json.
struct Method {
    std::string_view name;   ///< ASTM E1316 abbreviation
    std::string_view called; ///< in words
    /// Other short names that people have for it, and read as it.
    std::array<std::string_view, 4> also;
    bool surface = false; ///< it is held against what lies at the surface
    bool volume = false;  ///< and what lies inside
    /// Why a part that is not magnetic shows nothing; empty: it works on any metal.
    std::string_view needs_magnetic;
    /// Why a fillet cannot be examined; empty: it works on any joint.
    std::string_view not_on_fillets;
    std::array<Sight, nature_count> sights; ///< by Nature
};

// Sources: T.O. 33B-1-1 (pages 611 and 612), AC 43.13-1B chapter 5, TM 1-1500-204-23-7, T9074 page 43, all
// read; that a fillet's thickness varies across the image is plain geometry.
inline constexpr auto method_table = std::to_array<Method>({
    {"VT",
     "visual",
     {},
     true,
     false,
     "",
     "",
     {{{Sight::Grade::partly, "only a crack that is open and wide enough to see"},
       {Sight::Grade::partly, "only where it comes to the surface"},
       {Sight::Grade::partly, "only at the surface"},
       {Sight::Grade::well, "it is seen and measured from outside"},
       {Sight::Grade::well, "it is seen and measured from outside"}}}},
    {"MT",
     "magnetic particle",
     {"MPI", "MPT", "FMPI"},
     true,
     false,
     "the metal is not magnetic: nothing holds the particles",
     "",
     {{{Sight::Grade::well, "at the surface and just under it, if it lies across the field: two directions"},
       {Sight::Grade::partly, "at the surface and just under it, across the field"},
       {Sight::Grade::partly, "near the surface, as a broad and weak indication"},
       {Sight::Grade::no, "a change of shape may hold particles, but is no measure of it"},
       {Sight::Grade::well, "it shows where flux leaks"}}}},
    {"PT",
     "penetrant",
     {"LPI", "LPT", "DPI", "FPI"},
     true,
     false,
     "",
     "",
     {{{Sight::Grade::well, "if it is open to the surface; nothing below it"},
       {Sight::Grade::partly, "only what is open to the surface"},
       {Sight::Grade::partly, "only what is open to the surface"},
       {Sight::Grade::no, "a shape holds no penetrant; it may hide what is under it"},
       {Sight::Grade::well, "it shows where penetrant is held"}}}},
    {"RT",
     "radiographic",
     {"X-ray", "xray"},
     false,
     true,
     "",
     "a fillet's thickness varies across the image",
     {{{Sight::Grade::partly,
        "only if it lies within a few degrees of the beam; one across the beam leaves no image"},
       {Sight::Grade::partly, "only along the beam; most lack of fusion at a side wall is missed"},
       {Sight::Grade::well, "it takes metal away along the beam"},
       {Sight::Grade::partly, "some, as lighter or darker lines; the eye and a gauge measure it"},
       {Sight::Grade::no, "look at the surface instead"}}}},
});
constexpr std::size_t exam_count = method_table.size();

/// A method by its row. The names here are for what is written in the program (a default, a test); nothing
/// else may hang on which one it is.
enum class Exam : std::uint8_t { VT, MT, PT, RT };

constexpr const Method &info(Exam exam) { return method_table[static_cast<std::size_t>(exam)]; }
std::string_view name_of(Exam exam);
/// By its name or another that people have for it; letter case does not matter.
std::optional<Exam> exam_named(std::string_view name);
std::vector<Exam> all_exams();
std::vector<std::string> exam_names();
/// "VT, MT, PT or RT": what is expected where a method is asked for.
std::string exam_names_text();

/// Methods that are held against the same places, find cracks as well, and need no magnetic metal.
std::vector<std::string> stand_ins_for(Exam exam);

} // namespace beadbook
