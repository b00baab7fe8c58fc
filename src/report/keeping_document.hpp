#pragma once

#include "operations/bulk.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/joining.hpp"
#include "operations/keeping.hpp"
#include "report/document.hpp"

namespace beadbook {

/// Everything that does not hold, one sentence each: of the chain, of verdicts and ranges, of the head.
std::vector<std::string> faults_of(const Verified &verified);
std::vector<std::string> faults_of(const VerifiedShops &all); ///< each with its shop
/// One fault of a replay: "verdict in entry 6 (coupon T-1): class A was 'accept' and is now 'reject'".
std::string sentence(const ReplayFault &fault);

Document document_of(const Verified &verified);
Document document_of(const VerifiedShops &all);
Document document_of(const JoinedShops &done);
Document document_of(const Refreshed &done);
Document document_of(const BackedUp &done);

/// A seal that went to a file.
struct SealWritten {
    std::string path;
    Seal seal;
};
Document document_of(const SealWritten &done);

/// An export that went to a file; one that did not is the data themselves.
struct Written {
    std::string path;
    std::size_t coupons = 0;
};
Document document_of(const Written &done);
/// Notes on an export, and after them what it left with the record, one sentence each.
std::vector<std::string> with_left_out(const ExportCount &exported, std::vector<std::string> notes);
Document document_of(const Imported &done);

} // namespace beadbook
