#include "web/bench.hpp"

#include "measure/text.hpp"
#include "web/files.hpp"
#include "web/page.hpp"
#include "web/refusal_page.hpp"
#include "web/visit.hpp"

#include <algorithm>
#include <openssl/crypto.h>

namespace beadbook {
namespace {

/// Nothing from elsewhere, nothing inline, in nobody's frame. The address of a page is told to its own
/// server only; with no-referrer a form would say "null" where it comes from, and be refused.
const std::vector<std::pair<std::string, std::string>> &careful() {
    static const std::vector<std::pair<std::string, std::string>> all{
        {"Content-Security-Policy",
         "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src "
         "'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; "
         "frame-ancestors 'none'"},
        {"X-Content-Type-Options", "nosniff"},
        {"Referrer-Policy", "same-origin"},
        {"Cross-Origin-Resource-Policy", "same-origin"},
        {"Cross-Origin-Opener-Policy", "same-origin"},
    };
    return all;
}

bool same_secret(const std::string &a, const std::string &b) {
    return a.size() == b.size() && CRYPTO_memcmp(a.data(), b.data(), a.size()) == 0;
}

/// What a module tells whose entries wait: sign-in, link, reload.
Answer wanting(const std::string &what, Answer out) {
    out.headers.emplace_back("X-Bench-Wants", what);
    return out;
}

/// A page leads on to the sign-in; what a module asks or sends waits until somebody signed in again.
Answer not_signed_in(const Request &request) {
    if (request.method == "GET" && !request.part && request.path != "/head") return see_other("/sign-in");
    return wanting("sign-in",
                   bare_page(403, "Nobody is signed in", "Sign in again; then what was entered can be sent.",
                             "<p>" + link_to("/sign-in", "Sign in") + "</p>"));
}

/// Of two values of one field nobody can say which was meant.
void check_once(const SentFields &form, const std::string &list) {
    if (const std::string name = form.doubled(list); !name.empty())
        throw Refusal(Refusal::Kind::request,
                      "the field '" + shown(name) + "' was sent more than once; nothing was stored")
            .at(name);
}

bool writes(const Request &request) { return request.method != "GET" && request.method != "HEAD"; }

} // namespace

bool Bench::is_ours(const std::string &host) const {
    if (world_.door) return host == world_.door->address();
    const std::string port = ":" + std::to_string(port_);
    return host == "127.0.0.1" + port || host == "localhost" + port;
}

bool Bench::is_our_origin(const std::string &origin) const {
    if (world_.door) return origin == world_.door->origin();
    const std::string scheme = "http://";
    return origin.starts_with(scheme) && is_ours(origin.substr(scheme.size()));
}

std::string Bench::page_in(const std::string &url) const {
    const std::size_t host = url.find("://");
    const std::size_t path = host == std::string::npos ? host : url.find('/', host + 3);
    return path != std::string::npos && is_our_origin(url.substr(0, path)) ? url.substr(path) : "";
}

Answer Bench::enter(const Request &request) {
    const auto session = sessions_.enter(request.query.text("link"));
    if (!session)
        return bare_page(403, "This link was used already",
                         "A link lets one browser in, once. Ask for another one where the bench is open, or "
                         "start the bench anew.");
    Answer out = see_other("/");
    out.headers.emplace_back("Set-Cookie",
                             cookie() + "=" + session->id + "; HttpOnly; SameSite=Strict; Path=/");
    return out;
}

Answer Bench::of_family(const Request &request, const BenchSession &session) {
    std::string allowed;
    for (const auto &family : page_families())
        for (const auto &route : family.routes) {
            const auto words = words_by(route.pattern, request.path);
            if (!words) continue;
            const bool looks = route.method == "GET" && !writes(request);
            if (!looks && route.method != request.method) {
                allowed += (allowed.empty() ? "" : ", ") + route.method;
                continue;
            }
            Visit visit(*this, request, session, *words);
            try {
                check_once(request.form, route.list);
                return world_.door ? checked_by_role(visit, route) : route.handler(visit);
            } catch (const Refusal &e) {
                return refusal_page(visit, e);
            }
        }
    if (allowed.empty())
        return bare_page(404, "There is no such page", "The address names nothing that the bench has.");
    Answer out = bare_page(405, "That is not done here", "This address is asked in another way.");
    out.headers.emplace_back("Allow", allowed);
    return out;
}

Answer Bench::routed(const Request &request) {
    // Whatever else runs on this machine could ask the port, and say any address.
    if (!is_ours(request.host) || (world_.door && !same_secret(request.proxy, world_.door->proxy)))
        return bare_page(421, "This is not the place you asked for",
                         "The bench answers only under its own address on this machine.");
    if (!writes(request) && request.path.starts_with("/files/")) return file_answer(request);
    if (world_.door && request.path == "/sign-in") return sign_in(request);
    if (!world_.door && !writes(request) && request.path == "/enter") return enter(request);
    const bool used = writes(request) || (!request.part && request.path != "/head");
    const auto session = sessions_.find(request.cookies.text(cookie()), world_.clock(), used);
    if (!session && world_.door) return not_signed_in(request);
    if (!session)
        return wanting(
            "link",
            bare_page(
                403, "The bench does not know this browser",
                "Open the link that was printed when the bench was started. It lets one browser in, once."));
    if (writes(request)) {
        if (!request.origin.empty() && !is_our_origin(request.origin))
            return bare_page(403, "Nothing was stored", "Another page tried to write here.");
        const std::string token = request.token.empty() ? request.form.text("token") : request.token;
        // A page of ours says where it comes from, or repeats the session's word in a header.
        if (!same_secret(token, session->token) || (request.origin.empty() && request.token.empty()))
            return wanting("reload", bare_page(403, "Nothing was stored",
                                               "The page that this came from is out of date. Go back, reload "
                                               "it and try again."));
        if (request.too_long)
            return bare_page(413, "Nothing was stored",
                             "More was sent than the bench takes at once: a photo has at most 8 MB.");
    }
    return of_family(request, *session);
}

Answer Bench::answer(const Request &request) {
    Answer out;
    try {
        out = routed(request);
    } catch (const std::bad_alloc &) {
        out = {500, "text/plain; charset=utf-8", "out of memory\n"};
    } catch (const std::exception &e) {
        out = {500, "text/plain; charset=utf-8", std::string("unexpected: ") + e.what() + "\n"};
    }
    for (const auto &header : careful()) out.headers.push_back(header);
    if (std::none_of(out.headers.begin(), out.headers.end(),
                     [](const auto &header) { return header.first == "Cache-Control"; }))
        out.headers.emplace_back("Cache-Control", "no-store");
    return out;
}

} // namespace beadbook
