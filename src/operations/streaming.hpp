#pragma once

#include "operations/judging.hpp"

#include <set>

namespace beadbook {

/// Coupons that are judged one by one as they come, each whole in a line of JSON as `export lines` writes it,
/// held to all that an import asks, and stored nowhere. Each line stands alone, so that a long stream can be
/// spread over many processes.
struct StreamRequest {
    JudgeRequest by;
    bool sure = false;       ///< what nobody would believe at first sight is meant so
    bool open_files = false; ///< criteria and practices that a line names by their path may be opened
};
/// What came of a line: judged, not judged, or not read.
struct Streamed {
    JudgedOrNot coupon;
    std::string fault; ///< why the line was not taken
    std::vector<std::string> notes;
};
class Stream {
public:
    /// `empty` is a record without people, equipment and coupons, which keeps only texts of practices.
    Stream(Office &empty, StreamRequest request) : office_(empty), request_(std::move(request)) {}
    /// Throws StoreError.
    Streamed judge(const std::string &line);

private:
    Office &office_;
    StreamRequest request_;
    std::set<std::string> practices_; ///< hashes of those that are kept
};

} // namespace beadbook
