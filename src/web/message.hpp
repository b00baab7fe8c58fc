#pragma once

#include "web/fields.hpp"

namespace beadbook {

/// A file that a form brought: a photo whole, of anything else the beginning.
struct SentFile {
    std::string field, name, type, bytes;
};

/// What a browser asks, whole: its body was read to the end before anybody looks at it.
struct Request {
    std::string method;     ///< GET, POST
    std::string path;       ///< without the query, %XX read
    SentFields query, form; ///< of the address; of the body
    SentFields cookies;
    std::vector<SentFile> files;
    bool too_long = false;    ///< more was sent than is taken; what came is not kept
    std::string host, origin; ///< headers, empty if there are none
    std::string from;         ///< header Referer: the page that it was asked on
    std::string token;        ///< header X-Bench-Token, which modules send instead of the field
    std::string key;          ///< header Idempotency-Key
    std::string have;         ///< header If-None-Match
    std::string proxy;        ///< header X-Bench-Proxy: the word by which the own proxy is known
    std::string address;      ///< header X-Forwarded-For; true only if the own proxy says it
    bool part = false;        ///< header X-Bench-Part: a module asks for the part that changes
};

/// What it gets.
struct Answer {
    int status = 200;
    std::string type = "text/html; charset=utf-8";
    std::string body = {};
    std::vector<std::pair<std::string, std::string>> headers = {};
};

/// Look at another page: after something was written, so that a reload does not write it again.
inline Answer see_other(std::string path) {
    return {303, "text/plain; charset=utf-8", "", {{"Location", std::move(path)}}};
}

} // namespace beadbook
