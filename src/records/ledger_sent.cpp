// What pages ask of the ledger: what they sent before, and what changed since they looked.
#include "records/ledger_rows.hpp"
#include "records/ledger_statements.hpp"

namespace beadbook {

using namespace ledger_rows;

std::optional<Ledger::Sent> Ledger::sent(const std::string &key) {
    return guarded(path_, [&]() -> std::optional<Sent> {
        auto query = statement("SELECT hash, answer FROM sent WHERE key = ?");
        query->bind(1, key);
        if (!query->executeStep()) return std::nullopt;
        return Sent{query->getColumn(0).getString(), query->getColumn(1).getString()};
    });
}

void Ledger::keep_sent(const std::string &key, const Sent &sent) {
    guarded(path_, [&] {
        auto add = statement("INSERT INTO sent (key, hash, answer) VALUES (?, ?, ?)");
        add->bind(1, key);
        add->bind(2, sent.hash);
        add->bind(3, sent.answer);
        add->exec();
    });
}

Ledger::Changes Ledger::changes_after(std::int64_t seq, Family family) {
    return guarded(path_, [&] {
        Changes out{seq, {}};
        // By number, because few came since the last look; the index by subject would go through all.
        auto query = statement("SELECT subject, max(seq), family = ? FROM entry NOT INDEXED "
                               "WHERE seq > ? GROUP BY family, subject ORDER BY min(seq)");
        query->bind(1, name_of(family));
        query->bind(2, seq);
        while (query->executeStep()) {
            out.newest = std::max(out.newest, query->getColumn(1).getInt64());
            if (query->getColumn(2).getInt() == 1) out.subjects.push_back(query->getColumn(0).getString());
        }
        return out;
    });
}

} // namespace beadbook
