#pragma once

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace beadbook::bench {

/// The program as a server of pages, started with the words and ended with this.
class BenchServer {
public:
    /// Throws std::runtime_error if it does not come up.
    BenchServer();
    ~BenchServer();
    BenchServer(const BenchServer &) = delete;

    /// The link that it printed, which lets one browser in.
    const std::string &link() const { return link_; }
    /// The most memory that it ever took.
    double most_megabytes() const;

private:
    int process_ = 0, output_ = -1;
    std::string link_;
};

/// One browser, by its own session. What it asks is measured by who asks.
class BenchClient {
public:
    /// Throws std::runtime_error if the link does not let it in.
    explicit BenchClient(const std::string &link);
    ~BenchClient();
    BenchClient(BenchClient &&) noexcept;

    struct Got {
        int status = 0; ///< 0: no answer came
        std::string body, next;
    };
    using Fields = std::vector<std::pair<std::string, std::string>>;
    Got get(const std::string &path);
    /// As a form of a page sends it, with a key of its own.
    Got post(const std::string &path, const Fields &fields);
    /// A link for one more browser.
    std::string new_link();

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace beadbook::bench
