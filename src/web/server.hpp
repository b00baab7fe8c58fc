#pragma once

#include "web/message.hpp"

#include <functional>
#include <memory>

namespace beadbook {

/// HTTP on the loopback address of this machine. Whoever answers gets each request whole, its body read to
/// the end: what is refused earlier leaves its body on the connection, to be taken for the next request.
class Server {
public:
    using Handler = std::function<Answer(const Request &)>;

    /// `most_bytes` of a body are taken; of a longer one nothing is kept.
    explicit Server(Handler handler, std::size_t most_bytes = 8U << 20U);
    ~Server();
    Server(const Server &) = delete;

    /// Takes a port, 0: a free one, and returns it. Throws StoreError: another program has it.
    int bind(int port);
    /// Answers in threads of its own until stop().
    void start();
    void stop();

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

/// Keeps SIGINT and SIGTERM from this thread and those that it starts, and waits for one of them.
class StopSignal {
public:
    StopSignal();
    ~StopSignal();
    StopSignal(const StopSignal &) = delete;
    void wait();

private:
    struct Before;
    std::unique_ptr<Before> before_;
};

} // namespace beadbook
