#include "browser.hpp"

#include "catch.hpp"
#include "records/files.hpp"

namespace beadbook::test {
namespace {

constexpr int port = 8123;

BenchWorld world(const std::string &book) {
    return {book,
            {[] { return std::string("2026-11-25T10:00:00Z"); }, [] { return parse_day("2026-11-25"); },
             [](const std::string &path) { return beadbook::read_file(path); },
             [](const std::string &path) { return path; }},
            "A. Field"};
}

} // namespace

Browser::Browser() : bench(world(book())) {
    bench.reached_by(port);
    const std::string link = bench.link();
    Request in = request("GET", "/enter");
    in.query.add("link", link.substr(link.find('=') + 1));
    const Answer entered = send(in);
    const std::string set = header(entered, "Set-Cookie");
    REQUIRE(entered.status == 303);
    cookie_ = set.substr(0, set.find(';'));
    const std::string page = get("/person").body, before = "name=\"bench-token\" content=\"";
    const std::size_t at = page.find(before) + before.size();
    token = page.substr(at, page.find('"', at) - at);
    REQUIRE(token.size() == 64);
}

Request Browser::request(const std::string &method, const std::string &path) const {
    Request out;
    out.method = method;
    out.path = path.substr(0, path.find('?'));
    if (const auto query = path.find('?'); query != std::string::npos)
        out.query = fields_in(path.substr(query + 1));
    out.host = "127.0.0.1:" + std::to_string(port);
    out.cookies = fields_in(cookie_, ';');
    return out;
}

Answer Browser::get(const std::string &path) { return send(request("GET", path)); }

Answer Browser::post(const std::string &path,
                     const std::vector<std::pair<std::string, std::string>> &fields) {
    Request out = request("POST", path);
    out.origin = "http://" + out.host;
    out.form.add("token", token);
    for (const auto &[name, value] : fields) out.form.add(name, value);
    return send(out);
}

void Browser::ok(const std::string &path, const std::vector<std::pair<std::string, std::string>> &fields) {
    const Answer done = post(path, fields);
    INFO(done.body);
    REQUIRE(done.status == 303);
}

std::string header(const Answer &answer, const std::string &name) {
    for (const auto &one : answer.headers)
        if (one.first == name) return one.second;
    return "";
}

} // namespace beadbook::test
