#pragma once

#include "measure/parse.hpp"

#include <nlohmann/json.hpp>
#include <optional>
#include <string>

/// Pieces that every codec uses. A codec turns a fact into the JSON of an entry's body and of exchange files,
/// and back; it holds numbers, ids and kinds, never a sentence, so that words can change and a record still
/// holds.
namespace beadbook::codec {

/// Key of the number beside a typed text: nm, nm2, microdegree, microfahrenheit, value.
std::string_view base_unit_name(Dimension dimension);

/// A measurement: {"typed": "3/16 in", "nm": 4762500}.
nlohmann::json json_of(const Typed &typed, Dimension dimension);
/// Reads that, or the text alone. Throws InputError.
Typed typed_from(const nlohmann::json &json, Dimension dimension, std::optional<Unit> unit);

/// Exact as text, because it may be larger than any JSON number: "4762500", "25400000/3".
std::string exact_text(const Exact &value);
/// Throws StoreError: no such text.
Exact exact_from(const std::string &text);

/// The text under a key, checked; empty if there is none. Throws DataError: not text.
std::string text_of(const nlohmann::json &json, const char *key, const char *what);

/// The canonical text that is stored and hashed: keys in order, no blanks.
std::string canonical(const nlohmann::json &json);
/// Reads a body. Throws StoreError: damaged.
nlohmann::json parsed(const std::string &body);

/// Members of a struct that are text, by key.
template <class T, class Table>
void put_texts(nlohmann::json &out, const T &from, const Table &table) {
    for (const auto &[key, member] : table)
        if (!(from.*member).empty()) out[key] = from.*member;
}
template <class T, class Table>
void take_texts(const nlohmann::json &from, T &out, const Table &table, const char *what) {
    for (const auto &[key, member] : table) out.*member = text_of(from, key, what);
}

} // namespace beadbook::codec
