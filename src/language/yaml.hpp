#pragma once

#include "language/issue.hpp"

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace beadbook {

/// A YAML value that remembers where it stood. Scalars stay text: `no` is a word and `010` is not eight.
struct Yaml {
    enum class Kind { scalar, list, map };
    struct Entry;

    Kind kind = Kind::scalar;
    Where where;
    bool quoted = false;
    std::string text;           ///< of a scalar
    std::vector<Yaml> items;    ///< of a list
    std::vector<Entry> entries; ///< of a map, in the file's order
    std::size_t doubled = 0;    ///< keys of a map that stood there again, which were told and left out

    const Yaml *find(std::string_view key) const;
};

struct Yaml::Entry {
    std::string key;
    Where key_where;
    Yaml value;
};

/// Reads exactly one YAML document. Stricter than yaml-cpp by design, because a criteria file is signed:
/// refuses duplicate keys (yaml-cpp keeps the first), a second document (it ignores it), anchors, aliases
/// and merge keys (they hide what a line says), tags, empty values, and nesting deeper than 32.
/// Reports into `issues`; what could be read is returned. A file that is built in was read by the build.
Yaml read_yaml(const std::string &text, Issues &issues);
/// The same, read anew whatever it is.
Yaml parse_yaml(const std::string &text, Issues &issues);

} // namespace beadbook
