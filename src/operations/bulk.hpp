#pragma once

#include "operations/selection.hpp"
#include "operations/shops.hpp"
#include "operations/writing.hpp"
#include "records/codecs/sheet.hpp"
#include "technique/practice.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace beadbook {

using codec::Sheet;

/// What was measured, as it stands: all coupons, or those asked for.
struct ExportRequest {
    std::optional<Sheet> sheet; ///< one table of a spreadsheet; nothing: JSON
    bool lines = false;         ///< JSON with a coupon a line
    Selection of = {};
};
struct ExportCount {
    std::size_t coupons = 0;
    std::size_t photos = 0;                  ///< named by their hash; their bytes stay with the record
    std::vector<std::string> withdrawn = {}; ///< coupons that stay with the record
    std::vector<std::string> failed = {};  ///< left out, and told of by others of their welder that go along
    std::vector<std::string> revoked = {}; ///< qualifications of their welders: that stays with the record
};
/// Gives the text part by part, so that it is never whole in memory.
ExportCount export_record(const Shops &shops, const ExportRequest &request,
                          const std::function<void(std::string_view)> &give);

struct ImportRequest {
    std::optional<Sheet> sheet; ///< a table of CSV; nothing: JSON
    std::string text;           ///< the file
    bool sure = false;          ///< what nobody would believe at first sight is meant so
    bool again = false;         ///< finds of the same file are meant to come again
    bool open_files = false;    ///< criteria and practices that the file names by their path may be opened
    bool lines = false;         ///< JSON with a coupon a line
    std::map<std::string, std::string> welders = {}; ///< marks that welders of the file have here, by theirs
};
struct Imported {
    std::optional<Sheet> sheet;
    std::size_t coupons = 0, exams = 0, indications = 0, photos = 0; ///< taken
};

/// An import that was read and checked whole, ready to be stored.
struct PreparedImport {
    ImportRequest request;
    std::map<std::string, std::int64_t>
        seen; ///< newest entry of each coupon that it touches; 0: there is none
    std::vector<Entry> entries;
    std::vector<std::shared_ptr<const Practice>> practices; ///< whose texts are to be kept
    Done<Imported> done; ///< notes: what the coupon's process can hardly make, slips in names of conditions
};

/// Reads the file and holds it to what register, exam and log ask. Takes no lock, so that others can write
/// while a long file is read. Throws DataError that names every bad coupon or row with its place (at most
/// 20).
PreparedImport prepare_import(Office &office, ImportRequest request);

/// Stores all of it. If one of its coupons was written to since it was prepared, it is prepared again.
Done<Imported> store_import(Writing &writing, PreparedImport prepared);

} // namespace beadbook
