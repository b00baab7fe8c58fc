#include "catch.hpp"
#include "measure/sha256.hpp"
#include "records/entry.hpp"

#include <nlohmann/json.hpp>

using namespace beadbook;

TEST_CASE("the hash of an entry is that of its JSON, whatever it holds", "[records]") {
    for (const char *body : {R"({"text":"plain"})", "", "a \"quote\" and a \\", "a\ttab, a \x7f and a \x01",
                             "Ren\xC3\xA9", "cut off \xC3", "\xFF"}) {
        Entry e;
        e.seq = 17;
        e.at = "2026-11-25T09:30:00Z";
        e.who = body;
        e.kind = "remark";
        e.subject = "T-1";
        e.number = 0;
        e.supersedes = 3;
        e.reason = "\"so\"";
        e.body = body;
        e.previous = std::string(64, '0');
        const auto json = nlohmann::json::array(
            {e.previous, e.seq, e.at, e.who, e.kind, e.subject, nullptr, 0, 3, e.reason, e.body});
        INFO(body);
        CHECK(hash_of(e) == sha256(json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace)));
    }
}
