#pragma once

#include "criteria/model.hpp"

#include <string>
#include <vector>

namespace beadbook {

/// Whether this text is the one that the program ships under that name.
bool is_shipped_set(const std::string &name, const std::string &hash);

/// What a reader must be told of a text that is not shipped: that it is a file of one's own, or another text
/// than the shipped one of its name (of an older program, say), with the first figures of its hash. Empty for
/// a shipped one. `what` the file is one of, in the plural: "sets", "rules".
std::string own_file_words(const std::string &what, const std::string &name, bool named_as_shipped,
                           const std::string &hash);
/// The same of a set.
std::string own_file_words(const std::string &set, const std::string &hash);
/// In few words, to stand behind a verdict: "own file 3f2a9c1b". Empty for a shipped one.
std::string own_file_mark(bool named_as_shipped, const std::string &hash);
std::string own_file_mark(const std::string &set, const std::string &hash);

/// The nearest shipped set that one extends, by its own word or through other files; empty if it does not.
std::string shipped_below(const CriteriaSet &set);

/// Shipped sets that one which is not could be taken for: that of its name, else the one that it extends, or
/// those that have most of its rules by id and clause, its title, its edition or nearly its name. None of a
/// shipped one.
std::vector<const CriteriaSet *> shipped_alike(const CriteriaSet &set);

/// Of a shipped set that another one could be taken for: what it has and that one lacks.
struct LackingRules {
    struct OfType {
        std::string type; ///< of imperfection
        Exam exam;
        std::size_t there = 0, here = 0; ///< rules that speak of it; fewer here
    };
    std::string shipped;   ///< name of the set
    bool extended = false; ///< that one extends it; else it only looks like it
    std::vector<OfType> types;
    std::vector<std::string> rules; ///< ids that stand there and not here, among those that speak of them
    std::vector<std::string>
        parts; ///< beside the rules, that say otherwise here: "relevance", "required exams"
    std::vector<std::string>
        gaps; ///< what it leaves open where rules speak, by its texts, and this one does not
    std::vector<std::string> asked_otherwise; ///< ids of rules that speak of other finds or welds there
    std::vector<std::string> decided;         ///< ids of rules that leave a class open there, and not here
    /// Ids of rules by which something must be measured there, and need not here.
    std::vector<std::string> unmeasured;
    std::vector<std::string> unsaid; ///< the rest of what it says that it lacks, where this one does not
    /// Ids of what is called read here, and there only second hand or from memory.
    std::vector<std::string> called_read;

    bool any() const {
        return !types.empty() || !asked_otherwise.empty() || !decided.empty() || !parts.empty() ||
               !gaps.empty() || !unmeasured.empty() || !unsaid.empty() || !called_read.empty();
    }
};
/// Of a set that is not shipped beside each of shipped_alike; nothing for a shipped one, or where nothing is
/// lacking.
std::vector<LackingRules> lacking_beside_shipped(const CriteriaSet &set,
                                                 const Vocabulary &vocabulary = Vocabulary::shipped());

} // namespace beadbook
