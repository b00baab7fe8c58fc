#pragma once

#include "operations/to_examine.hpp"
#include "web/attempts.hpp"
#include "web/joined_writes.hpp"
#include "web/message.hpp"
#include "web/sessions.hpp"

#include <atomic>

namespace beadbook {

class Visit;
struct Route;

/// What the bench works with.
/// The way in for tablets: the own proxy, which alone is on the network, and sign-in.
struct TabletDoor {
    std::string host;   ///< by which tablets ask
    int port = 443;     ///< of the proxy
    int bench_port = 0; ///< on this machine, to which the proxy leads
    std::string proxy;  ///< the word by which the proxy is known: other programs of this machine lack it
    std::string origin() const { return "https://" + address(); }
    std::string address() const { return host + (port == 443 ? "" : ":" + std::to_string(port)); }
};

struct BenchWorld {
    std::string book; ///< path of the record
    Outside outside;
    std::string person;                  ///< who is at the bench until somebody else sits down
    std::optional<TabletDoor> door = {}; ///< with it nobody comes in by a link
    /// Of what ends by time.
    std::function<std::chrono::seconds()> clock = [] {
        return std::chrono::duration_cast<std::chrono::seconds>(
            std::chrono::steady_clock::now().time_since_epoch());
    };
};

/// The pages over one record: takes what a browser asks and gives the answer, without any network. For many
/// threads; each request opens the record for itself.
class Bench {
public:
    explicit Bench(BenchWorld world)
        : world_(std::move(world)), sessions_(world_.person), writes_(world_.book, world_.outside) {}

    /// The port that it is reached by on this machine: what other hosts and origins say is refused.
    void reached_by(int port) { port_ = port; }
    /// The address that lets one browser in, once.
    std::string link() { return origin() + "/enter?link=" + sessions_.new_link(); }

    /// Never throws.
    Answer answer(const Request &request);

    /// The path and query of an address of this bench; empty if it is of another place.
    std::string page_in(const std::string &url) const;

    const BenchWorld &world() const { return world_; }
    Sessions &sessions() { return sessions_; }
    ExamBoard &exam_board() { return exam_board_; }
    Attempts &attempts() { return attempts_; }
    /// The only way in which pages write to the record.
    JoinedWrites &joined_writes() { return writes_; }

private:
    std::string origin() const { return "http://127.0.0.1:" + std::to_string(port_); }
    bool is_ours(const std::string &host) const;
    bool is_our_origin(const std::string &origin) const;
    /// The prefix __Host- binds it to TLS, the whole path and this host.
    std::string cookie() const { return world_.door ? "__Host-bench" : "bench-" + std::to_string(port_); }
    Answer sign_in(const Request &request);
    Answer checked_by_role(Visit &visit, const Route &route);
    Answer enter(const Request &request);
    Answer routed(const Request &request);
    Answer of_family(const Request &request, const BenchSession &session);

    BenchWorld world_;
    Sessions sessions_;
    ExamBoard exam_board_;
    Attempts attempts_;
    JoinedWrites writes_;
    std::atomic<int> port_ = 0;
};

} // namespace beadbook
