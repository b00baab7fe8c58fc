#pragma once

#include "criteria/methods.hpp"
#include "language/condition.hpp"
#include "language/issue.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace beadbook {

class Fields;

/// Linear or rounded; unknown when it hangs on a length and width that nobody measured.
enum class Shape : std::uint8_t { unknown, linear, rounded };
std::string_view name_of(Shape shape);
/// Key `shape` of a type, a rule or a gap: linear or rounded; unknown if it is absent.
Shape read_shape(const Fields &fields);

/// What of an imperfection makes it the worse, the more of it there is: what a limit of its type goes by.
enum class OwnMeasure : std::uint8_t {
    extent,    ///< how large it is, in any direction
    depth,     ///< how deep it goes into the wall
    height,    ///< how far it stands out, or apart
    angle,     ///< of a toe, or between members
    opening,   ///< how wide it stands open
    dimension, ///< its size: no imperfection, but what is checked
    several,   ///< more than one of these
};

using TypeId = std::uint16_t;

/// One kind of imperfection (ISO 6520-1 / AWS A3.0 term), or a dimension that is checked.
struct ImperfectionType {
    std::string name;
    std::string iso;   ///< ISO 6520-1:2007 number, empty if it has none
    std::string quick; ///< short form for fast logging
    std::vector<std::string> also;
    std::vector<std::string> unclear; ///< words that people use for another type as well
    std::optional<TypeId> under;
    Shape shape = Shape::unknown;
    std::optional<OwnMeasure> by; ///< what a limit goes by; a wider type's if nothing
    bool measured = false;        ///< a dimension, not an imperfection
    /// Several finds under one name, whose size is that of them all together: uniformly distributed,
    /// clustered and linear porosity (ISO 6520-1: 2012, 2013, 2014).
    bool is_group() const { return iso == "2012" || iso == "2013" || iso == "2014"; }
    /// It says how the find looks and not what it is: linear indication, rounded indication.
    bool is_shape_alone() const { return name.ends_with(" indication"); }
    /// A hollow or an inclusion (200 to 2025, 300 to 3042, 516): as large as the largest of its dimensions.
    bool is_volume() const { return iso.starts_with("20") || iso.starts_with("30") || iso == "516"; }
    /// Nobody tells it apart without a microscope: microcrack, micro lack of fusion (1001, 4014).
    bool needs_microscope() const { return iso == "1001" || iso == "4014"; }
    /// Metal that is missing from the surface, so that what is left is what holds: undercut, sagging,
    /// incompletely filled groove, root concavity (501, 509, 511, 515).
    bool is_loss() const { return iso.starts_with("501") || iso == "509" || iso == "511" || iso == "515"; }
    /// It lies at the root by what it is: incomplete root penetration, shrinkage groove, excess penetration,
    /// root concavity, root porosity (4021, 5013, 504, 515, 516).
    bool is_of_root() const {
        return iso == "4021" || iso == "5013" || iso == "504" || iso == "515" || iso == "516";
    }
    /// It stands on the face by what it is: excess weld metal, excessive convexity (502, 503).
    bool is_of_face() const { return iso == "502" || iso == "503"; }
    /// The form of the bead itself: excess weld metal, convexity, excess penetration, sagging, incompletely
    /// filled groove, root concavity (502, 503, 504, 509, 511, 515). Its width lies across the weld, and may
    /// be more than it is long.
    bool is_wide_across() const {
        return iso == "502" || iso == "503" || iso == "504" || iso == "509" || iso == "511" || iso == "515";
    }
    /// Of some welds only: told unless the conditions are known not to hold. One of the two may be empty.
    struct CauseOfSome {
        std::string cause, remedy;
        std::vector<Condition> when;
    };
    struct Cause {
        std::string cause, remedy;
        std::vector<CauseOfSome> of_some = {};
    };
    Cause usual; ///< of the imperfection; of a dimension, where it is over a limit
    Cause small; ///< of a dimension that is under one
};

/// All types, read once from criteria/vocabulary.yaml, which is built into the program.
class Vocabulary {
public:
    static const Vocabulary &shipped();
    /// Reads the file format above; mistakes go to `issues`.
    static Vocabulary read(const std::string &text, Issues &issues);

    std::size_t size() const { return types_.size(); }
    const ImperfectionType &operator[](TypeId id) const { return types_[id]; }
    /// By name, other word, quick form or ISO number; letter case does not matter.
    std::optional<TypeId> find(std::string_view word) const;
    /// The types that a word can mean without naming one: an unclear word, or the first letters, three at
    /// least, of a word. By name.
    std::vector<TypeId> perhaps(std::string_view word) const;
    /// The types one of whose names begins so, or ends with this word: what a word alone may be short for.
    std::vector<TypeId> sharing(std::string_view word) const;
    /// Is `type` the same as `wider`, or one of its kinds?
    bool is_a(TypeId type, TypeId wider) const;
    /// The type itself, or the widest that it is a kind of.
    TypeId widest(TypeId type) const;
    /// The type or the nearest wider one that has a cause.
    const ImperfectionType &explained(TypeId id) const;
    std::vector<std::string> names() const;
    /// SHA-256 of the text it was read from.
    const std::string &hash() const { return hash_; }

private:
    void add_word(const std::string &word, TypeId id, Where where, Issues &issues);

    std::vector<ImperfectionType> types_;
    std::unordered_map<std::string, TypeId> words_;
    std::string hash_;
};

} // namespace beadbook
