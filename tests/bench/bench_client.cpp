#include "bench_client.hpp"

#include <csignal>
#include <fcntl.h>
#include <fstream>
#include <httplib.h>
#include <nlohmann/json.hpp>
#include <stdexcept>
#include <sys/wait.h>
#include <unistd.h>

namespace beadbook::bench {
namespace {

std::string between(const std::string &text, const std::string &before, const std::string &after) {
    const std::size_t found = text.find(before);
    if (found == std::string::npos) throw std::runtime_error("the page has no " + before);
    const std::size_t at = found + before.size();
    return text.substr(at, text.find(after, at) - at);
}

/// http://127.0.0.1:PORT and the rest.
std::pair<std::string, std::string> taken_apart(const std::string &link) {
    const std::size_t at = link.find('/', link.find("//") + 2);
    return {link.substr(0, at), link.substr(at)};
}

} // namespace

BenchServer::BenchServer() {
    int ends[2];
    if (pipe2(ends, O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
    output_ = ends[0];
    process_ = fork();
    if (process_ == 0) {
        dup2(ends[1], STDOUT_FILENO);
        execl(BEADBOOK_PROGRAM, BEADBOOK_PROGRAM, "bench", "--as", "A. Field", "--port", "any", "--no-open",
              "--json", nullptr);
        _exit(127);
    }
    close(ends[1]);
    std::string line;
    for (char c = 0; read(output_, &c, 1) == 1 && c != '\n';) line += c;
    if (line.empty()) throw std::runtime_error("the bench did not come up");
    link_ = nlohmann::json::parse(line).at("link").get<std::string>();
}

BenchServer::~BenchServer() {
    kill(process_, SIGTERM);
    int status = 0;
    waitpid(process_, &status, 0);
    close(output_);
}

double BenchServer::most_megabytes() const {
    std::ifstream status("/proc/" + std::to_string(process_) + "/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with("VmHWM:")) return std::stod(line.substr(6)) / 1024;
    return -1;
}

struct BenchClient::Inside {
    explicit Inside(const std::string &at) : http(at), origin(at) {
        http.set_keep_alive(true);
        http.set_tcp_nodelay(true);
        http.set_read_timeout(30, 0);
    }
    httplib::Client http;
    std::string origin, token;
    httplib::Headers headers;
    int sent = 0;
};

BenchClient::BenchClient(const std::string &link) {
    const auto [origin, path] = taken_apart(link);
    inside_ = std::make_unique<Inside>(origin);
    const auto in = inside_->http.Get(path);
    if (!in || in->status != 303) throw std::runtime_error("the link lets nobody in");
    const std::string cookie = in->get_header_value("Set-Cookie");
    inside_->headers.emplace("Cookie", cookie.substr(0, cookie.find(';')));
    inside_->token = between(get("/person").body, "name=\"bench-token\" content=\"", "\"");
}

BenchClient::~BenchClient() = default;
BenchClient::BenchClient(BenchClient &&) noexcept = default;

BenchClient::Got BenchClient::get(const std::string &path) {
    const auto got = inside_->http.Get(path, inside_->headers);
    return got ? Got{got->status, got->body, ""} : Got{};
}

BenchClient::Got BenchClient::post(const std::string &path, const Fields &fields) {
    httplib::Params params(fields.begin(), fields.end());
    params.emplace("token", inside_->token);
    params.emplace("key", inside_->token.substr(0, 16) + "-" + std::to_string(++inside_->sent));
    auto headers = inside_->headers;
    headers.emplace("Origin", inside_->origin);
    const auto got = inside_->http.Post(path, headers, params);
    return got ? Got{got->status, got->body, got->get_header_value("Location")} : Got{};
}

std::string BenchClient::new_link() {
    return between(post("/link", {}).body, "<p class=\"wide\"><code>", "</code>");
}

} // namespace beadbook::bench
