// The server itself, over a socket of this machine.
#include "browser.hpp"
#include "catch.hpp"
#include "measure/refusal.hpp"
#include "web/server.hpp"

#include <arpa/inet.h>
#include <atomic>
#include <chrono>
#include <sys/socket.h>
#include <thread>
#include <unistd.h>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A connection that sends what it is given and reads until the other side is silent or gone.
class Connection {
public:
    explicit Connection(int port) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
        sockaddr_in to{};
        to.sin_family = AF_INET;
        to.sin_port = htons(static_cast<std::uint16_t>(port));
        to.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        REQUIRE(connect(socket_, reinterpret_cast<sockaddr *>(&to), sizeof to) == 0);
        const timeval patience{0, 300'000};
        setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
    }
    ~Connection() { close(socket_); }
    Connection(const Connection &) = delete;

    void send(const std::string &text) const {
        REQUIRE(::send(socket_, text.data(), text.size(), MSG_NOSIGNAL) == static_cast<ssize_t>(text.size()));
    }
    std::string read() const {
        std::string out;
        char bytes[4096];
        for (ssize_t n = 0; (n = recv(socket_, bytes, sizeof bytes, 0)) > 0;)
            out.append(bytes, static_cast<std::size_t>(n));
        return out;
    }

private:
    int socket_;
};

/// What a handler saw.
struct Seen {
    std::atomic<int> count = 0;
    Request last;
    Answer operator()(const Request &request) {
        ++count;
        last = request;
        return {200, "text/plain; charset=utf-8", request.method + " " + request.path};
    }
};

} // namespace

TEST_CASE("a request comes whole to who answers it") {
    Seen seen;
    Server server([&](const Request &q) { return seen(q); });
    const int port = server.bind(0);
    server.start();
    const Connection c(port);
    const std::string body = "line=pore+0.04&x=%C3%A4";
    c.send(
        "POST /coupon/T%2D7?next=1 HTTP/1.1\r\nHost: h:1\r\nOrigin: http://o\r\nX-Bench-Token: t\r\n"
        "Idempotency-Key: k\r\nCookie: a=1; bench-1=2\r\nContent-Type: application/x-www-form-urlencoded\r\n"
        "Content-Length: " +
        std::to_string(body.size()) + "\r\n\r\n" + body);
    CHECK(c.read().find("POST /coupon/T-7") != std::string::npos);
    CHECK(seen.last.host == "h:1");
    CHECK(seen.last.origin == "http://o");
    CHECK(seen.last.token == "t");
    CHECK(seen.last.key == "k");
    CHECK(seen.last.cookies.text("bench-1") == "2");
    CHECK(seen.last.query.text("next") == "1");
    CHECK_FALSE(seen.last.form.has("next"));
    CHECK(seen.last.form.text("line") == "pore 0.04");
    const std::string parts = "--b\r\nContent-Disposition: form-data; name=\"why\"\r\n\r\nseen\r\n--b\r\n"
                              "Content-Disposition: form-data; name=\"photo\"; filename=\"p.txt\"\r\n"
                              "\r\n123\r\n--b--\r\n";
    c.send(
        "POST /x HTTP/1.1\r\nHost: h\r\nContent-Type: multipart/form-data; boundary=b\r\nContent-Length: " +
        std::to_string(parts.size()) + "\r\n\r\n" + parts);
    CHECK(c.read().find("200") != std::string::npos);
    CHECK(seen.last.form.text("why") == "seen");
    REQUIRE(seen.last.files.size() == 1);
    CHECK(seen.last.files[0].name == "p.txt");
    CHECK(seen.last.files[0].bytes == "123");
}

TEST_CASE("of a file that is no photo only the beginning is kept while it is read, of a photo all") {
    Seen seen;
    Server server([&](const Request &q) { return seen(q); });
    const int port = server.bind(0);
    server.start();
    const auto sent = [&](const std::string &begins) {
        const std::string bytes = begins + std::string(1'000'000, 'x');
        const std::string parts = "--b\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"p\"\r\n"
                                  "Content-Type: image/jpeg\r\n\r\n" +
                                  bytes + "\r\n--b\r\nContent-Disposition: form-data; name=\"note\"\r\n\r\n" +
                                  std::string(5000, 'n') + "\r\n--b--\r\n";
        const Connection c(port);
        c.send("POST /x HTTP/1.1\r\nHost: h\r\nContent-Type: multipart/form-data; boundary=b\r\n"
               "Content-Length: " +
               std::to_string(parts.size()) + "\r\n\r\n" + parts);
        CHECK(c.read().find("200") != std::string::npos);
        REQUIRE(seen.last.files.size() == 1);
        CHECK(seen.last.form.text("note").size() == 5000); // a field is no file
        return std::pair(seen.last.files[0].bytes, bytes);
    };
    const auto photo = sent("\xff\xd8\xff\xe0");
    CHECK(photo.first == photo.second);
    const auto other = sent("%PDF-1.7");
    CHECK(other.first.starts_with("%PDF-1.7"));
    CHECK(other.first.size() < 100'000);
}

TEST_CASE("of a body that is too long nothing is kept, with its length told or not") {
    Seen seen;
    Server server([&](const Request &q) { return seen(q); }, 1000);
    const int port = server.bind(0);
    server.start();
    const std::string kind = "Host: h\r\nContent-Type: application/x-www-form-urlencoded\r\n";
    {
        const Connection c(port);
        c.send("POST / HTTP/1.1\r\n" + kind + "Content-Length: 1001\r\n\r\nx=" + std::string(999, 'a'));
        c.read();
        CHECK(seen.last.too_long);
        CHECK(seen.last.form.empty());
        c.send("POST / HTTP/1.1\r\n" + kind + "Content-Length: 1000\r\n\r\nx=" + std::string(998, 'a'));
        c.read();
        CHECK_FALSE(seen.last.too_long);
        CHECK(seen.last.form.text("x").size() == 998);
    }
    const Connection c(port);
    c.send("POST / HTTP/1.1\r\n" + kind + "Transfer-Encoding: chunked\r\n\r\n");
    for (int i = 0; i < 20; ++i) c.send("64\r\n" + std::string(100, 'a') + "\r\n");
    c.send("0\r\n\r\n");
    c.read();
    CHECK(seen.last.too_long);
    CHECK(seen.last.form.empty());
}

TEST_CASE("the body of a refused request is never the next request") {
    Browser browser;
    std::atomic<int> stored = 0;
    Server server([&](const Request &q) {
        Answer out = browser.send(q);
        if (q.method == "POST" && out.status < 400) ++stored;
        return out;
    });
    const int port = server.bind(0);
    browser.bench.reached_by(port);
    server.start();
    const std::string host = "Host: 127.0.0.1:" + std::to_string(port) + "\r\n";
    const std::string inner = "POST /person HTTP/1.1\r\n" + host + "Content-Length: 10\r\n\r\nby=Mallory";
    for (const std::string method : {"POST", "OPTIONS", "PUT", "GET"})
        for (const std::string type :
             {"text/plain", "multipart/form-data", "multipart/form-data; boundary=b"}) {
            INFO(method << " " << type);
            const Connection c(port);
            c.send(method + " /person HTTP/1.1\r\n" + host + "Origin: http://evil.example\r\nContent-Type: " +
                   type + "\r\nContent-Length: " + std::to_string(inner.size()) + "\r\n\r\n");
            std::this_thread::sleep_for(std::chrono::milliseconds(20));
            c.send(inner);
            CHECK(c.read().find("HTTP/1.1 303") == std::string::npos);
        }
    CHECK(stored == 0);
}

TEST_CASE("a second server on the port is refused, and the port is free after a stop") {
    Seen seen;
    const auto answer = [&](const Request &q) { return seen(q); };
    Server first(answer);
    const int port = first.bind(0);
    first.start();
    {
        Server second(answer);
        CHECK_THROWS_AS(second.bind(port), StoreError);
    }
    first.stop();
    Server third(answer);
    CHECK(third.bind(port) == port);
}

TEST_CASE("it answers on the loopback address alone") {
    Seen seen;
    Server server([&](const Request &q) { return seen(q); });
    const int port = server.bind(0);
    server.start();
    const int socket = ::socket(AF_INET, SOCK_STREAM, 0);
    sockaddr_in to{};
    to.sin_family = AF_INET;
    to.sin_port = htons(static_cast<std::uint16_t>(port));
    to.sin_addr.s_addr = htonl(INADDR_LOOPBACK + 1); // 127.0.0.2 is this machine too, and not this server
    CHECK(connect(socket, reinterpret_cast<sockaddr *>(&to), sizeof to) != 0);
    close(socket);
}

TEST_CASE("who asks for a part gets the whole: a browser that was interrupted would show half a photo") {
    Server server([](const Request &q) {
        return Answer{q.path == "/" ? 200 : 403, "text/plain", "0123456789", {}};
    });
    const int port = server.bind(0);
    server.start();
    for (const std::string path : {"/", "/locked"})
        for (const std::string range : {"0-3", "4-", "-3", "99-", "0-,0-,0-"}) {
            CAPTURE(path, range);
            const Connection c(port);
            c.send("GET " + path + " HTTP/1.1\r\nHost: h\r\nRange: bytes=" + range + "\r\n\r\n");
            const std::string answer = c.read();
            CHECK(answer.find(path == "/" ? "HTTP/1.1 200" : "HTTP/1.1 403") == 0);
            CHECK(answer.find("\r\n\r\n0123456789") != std::string::npos);
            CHECK(answer.find("Content-Range") == std::string::npos);
        }
}

TEST_CASE("very long paths are not answered") {
    Seen seen;
    Server server([&](const Request &q) { return seen(q); });
    const int port = server.bind(0);
    server.start();
    for (const std::string method : {"GET", "POST"}) {
        const Connection other(port);
        other.send(method + " /" + std::string(7000, 'a') +
                   " HTTP/1.1\r\nHost: h\r\nContent-Length: 0\r\n\r\n");
        CHECK(other.read().find("HTTP/1.1 414") == 0);
    }
    CHECK(seen.count == 0);
}
