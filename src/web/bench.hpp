#pragma once

#include "operations/to_examine.hpp"
#include "web/message.hpp"
#include "web/sessions.hpp"

#include <atomic>

namespace beadbook {

/// What the bench works with.
struct BenchWorld {
    std::string book; ///< path of the record
    Outside outside;
    std::string person; ///< who is at the bench until somebody else sits down
};

/// The pages over one record: takes what a browser asks and gives the answer, without any network. For many
/// threads; each request opens the record for itself.
class Bench {
public:
    explicit Bench(BenchWorld world) : world_(std::move(world)), sessions_(world_.person) {}

    /// The port that it is reached by on this machine: what other hosts and origins say is refused.
    void reached_by(int port) { port_ = port; }
    /// The address that lets one browser in, once.
    std::string link() { return origin() + "/enter?link=" + sessions_.new_link(); }

    /// Never throws.
    Answer answer(const Request &request);

    const BenchWorld &world() const { return world_; }
    Sessions &sessions() { return sessions_; }
    ExamBoard &exam_board() { return exam_board_; }

private:
    std::string origin() const { return "http://127.0.0.1:" + std::to_string(port_); }
    bool is_ours(const std::string &host) const;
    std::string cookie() const { return "bench-" + std::to_string(port_); }
    Answer enter(const Request &request);
    Answer routed(const Request &request);
    Answer of_family(const Request &request, const BenchSession &session);

    BenchWorld world_;
    Sessions sessions_;
    ExamBoard exam_board_;
    std::atomic<int> port_ = 0;
};

} // namespace beadbook
