// The only file that knows the HTTP library.
#include "web/server.hpp"

#include "facts/photo.hpp"
#include "measure/refusal.hpp"

#include <csignal>
#include <httplib.h>
#include <pthread.h>
#include <thread>

namespace beadbook {
namespace {

constexpr const char *loopback = "127.0.0.1";
/// One connection holds one thread, an idle one too, and a browser opens six.
constexpr std::size_t threads = 64;
constexpr std::size_t longest_path = 1000;

Request request_of(const httplib::Request &q) {
    Request out;
    out.method = q.method == "HEAD" ? "GET" : q.method;
    out.path = q.path;
    for (const auto &[name, value] : q.params) out.query.add(name, value);
    out.host = q.get_header_value("Host");
    out.origin = q.get_header_value("Origin");
    out.from = q.get_header_value("Referer");
    out.token = q.get_header_value("X-Bench-Token");
    out.key = q.get_header_value("Idempotency-Key");
    out.proxy = q.get_header_value("X-Bench-Proxy");
    out.address = q.get_header_value("X-Forwarded-For");
    out.have = q.get_header_value("If-None-Match");
    out.part = q.has_header("X-Bench-Part");
    out.cookies = fields_in(q.get_header_value("Cookie"), ';');
    return out;
}

/// Reads to the end whatever its length, and keeps no more than is taken: with a length that is told or not.
class BodyReader {
public:
    BodyReader(Request &request, std::size_t most) : request_(request), most_(most) {}

    void read(const httplib::Request &q, const httplib::ContentReader &content) {
        if (q.is_multipart_form_data()) {
            content(
                [&](const httplib::MultipartFormData &part) {
                    request_.files.push_back({part.name, part.filename, part.content_type, ""});
                    return true;
                },
                [&](const char *data, std::size_t size) {
                    if (take(size) && is_wanted(request_.files.back()))
                        request_.files.back().bytes.append(data, size);
                    return true;
                });
            sort_parts();
        } else {
            std::string body;
            content([&](const char *data, std::size_t size) {
                if (take(size)) body.append(data, size);
                return true;
            });
            if (!request_.too_long) request_.form = fields_in(body);
        }
        if (request_.too_long) request_.files.clear();
    }

private:
    bool take(std::size_t size) {
        count_ += size;
        request_.too_long = request_.too_long || count_ > most_;
        return !request_.too_long;
    }
    /// Parts without a file's name are fields.
    static bool is_field(const SentFile &part) { return part.name.empty() && part.type.empty(); }
    /// Of a file that is no photo only the beginning is kept, which tells what it is.
    static bool is_wanted(const SentFile &part) {
        return is_field(part) || part.bytes.size() < photo_head || photo_kind(part.bytes);
    }
    void sort_parts() {
        std::vector<SentFile> files;
        for (auto &part : request_.files) {
            if (is_field(part))
                request_.form.add(part.field, part.bytes);
            else if (!part.bytes.empty())
                files.push_back(std::move(part));
        }
        request_.files = std::move(files);
    }

    Request &request_;
    std::size_t most_, count_ = 0;
};

void put(const Answer &answer, httplib::Response &r) {
    r.status = answer.status;
    for (const auto &[name, value] : answer.headers) r.set_header(name, value);
    if (answer.body.empty()) return r.set_content("", answer.type);
    // A provider of known length is sent as it is; set_content would spend a tenth of a second to press it.
    r.set_content_provider(answer.body.size(), answer.type,
                           [body = answer.body](std::size_t at, std::size_t n, httplib::DataSink &to) {
                               return to.write(body.data() + at, n);
                           });
}

void set_up(httplib::Server &s, std::size_t most_bytes) {
    s.new_task_queue = [] { return new httplib::ThreadPool(threads); };
    s.set_tcp_nodelay(true);
    s.set_keep_alive_max_count(1000);
    s.set_keep_alive_timeout(2);
    s.set_read_timeout(5, 0);
    s.set_write_timeout(5, 0);
    // The reader counts too. This bounds what is read and thrown away where a length is told.
    s.set_payload_max_length(most_bytes * 4);
    // Not SO_REUSEPORT, by which a second server would share the port at random.
    s.set_socket_options([](socket_t socket) {
        int yes = 1;
        setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    });
    s.set_pre_routing_handler([](const httplib::Request &q, httplib::Response &r) {
        // Answers are whole, also where a part was asked for: the library would send the part as if it were
        // the whole, by which a browser shows half a photo, and of many overlapping parts it makes a huge
        // answer. The request is the library's own, and not constant there.
        const_cast<httplib::Request &>(q).ranges.clear();
        // What the library itself cannot bear, whoever asks: a long path takes much of the stack. Nothing
        // else is refused before the body is read.
        if (q.path.size() > longest_path)
            r.status = 414;
        else
            return httplib::Server::HandlerResponse::Unhandled;
        return httplib::Server::HandlerResponse::Handled;
    });
}

} // namespace

struct Server::Inside {
    httplib::Server http;
    std::thread thread;
};

Server::Server(Handler handler, std::size_t most_bytes) : inside_(std::make_unique<Inside>()) {
    httplib::Server &s = inside_->http;
    set_up(s, most_bytes);
    // [^] and not a dot, which takes no line break: whatever the path, it is answered by the same rules.
    s.Get("[^]*",
          [handler](const httplib::Request &q, httplib::Response &r) { put(handler(request_of(q)), r); });
    const auto with_body = [handler, most_bytes](const httplib::Request &q, httplib::Response &r,
                                                 const httplib::ContentReader &content) {
        Request request = request_of(q);
        BodyReader(request, most_bytes).read(q, content);
        put(handler(request), r);
    };
    s.Post("[^]*", with_body);
    s.Put("[^]*", with_body);
    s.Patch("[^]*", with_body);
    s.Delete("[^]*", with_body);
}

Server::~Server() { stop(); }

int Server::bind(int asked) {
    int port = asked;
    httplib::Server &s = inside_->http;
    if (port == 0)
        port = s.bind_to_any_port(loopback);
    else if (!s.bind_to_port(loopback, port))
        port = -1;
    if (port < 0)
        throw StoreError("port " + std::to_string(asked) +
                         " is taken: another bench, or another program, answers there already");
    return port;
}

void Server::start() {
    httplib::Server &s = inside_->http;
    inside_->thread = std::thread([&s] { s.listen_after_bind(); });
    // A stop before it runs would be lost.
    while (!s.is_running()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

void Server::stop() {
    if (!inside_->thread.joinable()) return;
    inside_->http.stop();
    inside_->thread.join();
}

namespace {

sigset_t stop_signals() {
    sigset_t set;
    sigemptyset(&set);
    sigaddset(&set, SIGINT);
    sigaddset(&set, SIGTERM);
    return set;
}

} // namespace

struct StopSignal::Before {
    sigset_t mask;
};

StopSignal::StopSignal() : before_(std::make_unique<Before>()) {
    const sigset_t set = stop_signals();
    pthread_sigmask(SIG_BLOCK, &set, &before_->mask);
}

StopSignal::~StopSignal() { pthread_sigmask(SIG_SETMASK, &before_->mask, nullptr); }

void StopSignal::wait() {
    const sigset_t set = stop_signals();
    int which = 0;
    sigwait(&set, &which);
}

} // namespace beadbook
