// Verdicts of engines before this one, on a record of today.
#pragma once

#include "catch.hpp"
#include "operations/booth.hpp"
#include "operations/keeping.hpp"
#include "records/codecs/verdict.hpp"

#include <nlohmann/json.hpp>

namespace beadbook::test {

/// Stores what an engine said of T-1, and holds it against what is replayed.
inline void check_replayed(Booth &booth, const CriteriaSet &set, const Judgement &said, int engine) {
    auto body = nlohmann::json::parse(codec::verdict_body(set, said));
    body["engine"] = engine;
    booth.write([&](Writing &w) {
        w.ledger().keep_criteria(set.hash, set.name, set.text);
        Entry e;
        e.kind = "verdict";
        e.subject = "T-1";
        e.body = body.dump();
        return w.add(e);
    });
    CHECK(verify(booth.office, {true, ""}).replay->faults.empty());
}

} // namespace beadbook::test
