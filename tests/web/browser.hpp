#pragma once

#include "temporary.hpp"
#include "web/bench.hpp"

namespace beadbook::test {

/// A bench over a record in a folder of its own, and one browser that came in by its link.
class Browser {
public:
    Browser();

    Answer get(const std::string &path);
    /// With the session's word and our own origin, as a form of ours sends it.
    Answer post(const std::string &path, const std::vector<std::pair<std::string, std::string>> &fields = {});
    /// As it would be sent by get and post; for what a test says otherwise.
    Request request(const std::string &method, const std::string &path) const;
    Answer send(const Request &request) { return bench.answer(request); }
    /// Fails the test unless something was stored: the answer leads on to another page.
    void ok(const std::string &path, const std::vector<std::pair<std::string, std::string>> &fields);

    std::string book() const { return folder_.file("book.db"); }
    std::string token; ///< of the session

private:
    TemporaryFolder folder_;
    std::string cookie_;

public:
    Bench bench;
};

/// The value of a header; empty if it is not there.
std::string header(const Answer &answer, const std::string &name);

} // namespace beadbook::test
