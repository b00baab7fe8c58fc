// The table of what lists say of each coupon.
#include "measure/sha256.hpp"
#include "records/ledger_rows.hpp"
#include "records/ledger_statements.hpp"
#include "records/lines_lacking.hpp"

#include <cstdlib>
#include <limits>

namespace beadbook {

using namespace ledger_rows;

namespace {

/// That neither the text nor what it is of was changed behind the program.
std::string hash_of_line(const Ledger::KeptLine &line) {
    return sha256(line.coupon + "\n" + line.welder + "\n" + line.cohort + "\n" + line.class_id + "\n" +
                  line.basis + "\n" + line.body);
}

constexpr const char *line_columns = "first, coupon, welder, cohort, class, basis, body, hash";

Ledger::Line line_from(SQLite::Statement &row) {
    Ledger::Line out;
    out.first = row.getColumn(0).getInt64();
    out.coupon = row.getColumn(1).getString();
    if (row.getColumn(6).isNull()) return out;
    const auto text = [&](int column) { return row.getColumn(column).getString(); };
    Ledger::KeptLine kept{out.coupon, text(2), text(3), text(4), text(5), text(6)};
    out.changed = hash_of_line(kept) != text(7);
    if (out.changed) return out;
    out.basis = std::move(kept.basis);
    out.body = std::move(kept.body);
    return out;
}

/// What is said of entries of a kind, each once, by the index of it: from one to the next that is another,
/// because few people stand in very many entries.
std::string each_once(const std::string &kind, const std::string &said) {
    const auto first = [&](const std::string &which) {
        return "(SELECT " + said + " FROM entry WHERE kind = '" + kind + "' AND " + said + which +
               " ORDER BY " + said + " LIMIT 1)";
    };
    return "WITH RECURSIVE one (said) AS (SELECT * FROM " + first(" IS NOT NULL") + " UNION ALL SELECT " +
           first(" > one.said") +
           " FROM one WHERE one.said IS NOT NULL) SELECT said FROM one WHERE said IS "
           "NOT NULL";
}

/// Records of older versions know when a coupon began, and no more.
const char *const unkept =
    "(SELECT min(seq) AS first, subject AS coupon, NULL AS welder, NULL AS cohort, "
    "NULL AS class, NULL AS basis, NULL AS body, NULL AS hash FROM entry WHERE family = 'coupon' "
    "GROUP BY subject)";

} // namespace

bool Ledger::keeps_lines() {
    return guarded(path_, [&] { return version() >= first_with_lines; });
}

void Ledger::check_no_line_lacks() {
    if (!keeps_lines()) return;
    const Moment moment(*this);
    const std::int64_t lacks = guarded(path_, [&] { return lines_lacking(*db_, path_, !in_transaction_); });
    if (lacks == 0) return;
    throw StoreError(
        "record " + path_ + ": its table for lists has " + std::to_string(std::abs(lacks)) +
        (std::abs(lacks) == 1 ? " coupon " : " coupons ") + (lacks > 0 ? "fewer" : "more") +
        " than its entries, so that no list can be trusted; verify the record, which names them");
}

std::vector<std::string> Ledger::texts(const std::string &sql, const std::string &given) {
    return guarded(path_, [&] {
        auto query = statement(sql);
        if (!given.empty()) query->bind(1, given);
        std::vector<std::string> out;
        while (query->executeStep()) out.push_back(query->getColumn(0).getString());
        return out;
    });
}

std::vector<std::pair<std::string, std::string>> Ledger::pairs(const std::string &sql) {
    return guarded(path_, [&] {
        auto query = statement(sql);
        std::vector<std::pair<std::string, std::string>> out;
        while (query->executeStep())
            out.emplace_back(query->getColumn(0).getString(), query->getColumn(1).getString());
        return out;
    });
}

std::vector<std::string> Ledger::coupons_examined_by(const std::string &examiner) {
    // As the index entry_by_examiner says it, word for word, so that it is used.
    return texts("SELECT DISTINCT subject FROM entry WHERE kind = 'exam' AND "
                 "json_extract(body, '$.examiner') = ?",
                 examiner);
}

bool Ledger::has_examined(const std::string &examiner) {
    // As the index entry_by_examiner says it, word for word, so that it is used.
    return !texts("SELECT subject FROM entry WHERE kind = 'exam' AND json_extract(body, '$.examiner') = ? "
                  "LIMIT 1",
                  examiner)
                .empty();
}

std::vector<std::string> Ledger::examiners() {
    return texts(each_once("exam", "json_extract(body, '$.examiner')"));
}

std::vector<std::string> Ledger::welders_named() {
    return texts(each_once("coupon", "json_extract(body, '$.fields.welder')"));
}

std::vector<std::string> Ledger::welders_changed() {
    return texts("SELECT DISTINCT subject FROM entry WHERE family = 'welder' AND kind = 'welder' AND "
                 "supersedes IS NOT NULL");
}

bool Ledger::names_cohort(const std::string &cohort) {
    return !texts("SELECT subject FROM entry WHERE kind = 'coupon' AND json_extract(body, '$.fields.cohort') "
                  "= ? LIMIT 1",
                  cohort)
                .empty();
}

std::vector<std::string> Ledger::cohorts_named() {
    return texts("SELECT DISTINCT json_extract(body, '$.fields.cohort') FROM entry WHERE kind = 'coupon' AND "
                 "json_extract(body, '$.fields.cohort') IS NOT NULL");
}

// The next three look for a key as a text first: few bodies hold it, and reading all as JSON takes long. They
// say it as an index of version 9 does, word for word, so that it is used.

std::vector<std::pair<std::string, std::string>> Ledger::registered_like() {
    return pairs("SELECT json_extract(body, '$.like'), subject FROM entry WHERE kind = 'coupon' AND "
                 "instr(body, '\"like\":') > 0 AND supersedes IS NULL AND "
                 "json_extract(body, '$.like') IS NOT NULL ORDER BY seq");
}

std::vector<std::pair<std::string, std::string>> Ledger::failed_elsewhere() {
    return pairs("SELECT DISTINCT subject, json_extract(fact.value, '$.as.welder') FROM entry, "
                 "json_each(body, '$.before') AS fact WHERE kind = 'coupon' AND "
                 "instr(body, '\"before\":') > 0 AND instr(body, '\"as\":{') > 0 AND "
                 "json_extract(fact.value, '$.as.welder') IS NOT NULL");
}

std::vector<Ledger::WelderElsewhere> Ledger::welders_elsewhere() {
    return guarded(path_, [&] {
        auto query = statement(
            "SELECT DISTINCT subject, ifnull(json_extract(body, '$.fields.welder'), ''), "
            "json_extract(fact.value, '$.by') FROM entry, json_each(body, '$.before') AS fact WHERE kind = "
            "'coupon' AND instr(body, '\"before\":') > 0 AND instr(body, '\"what\":\"welder\"') > 0 AND "
            "json_extract(fact.value, '$.what') = "
            "'welder'");
        std::vector<WelderElsewhere> out;
        while (query->executeStep())
            out.push_back({query->getColumn(0).getString(), query->getColumn(1).getString(),
                           query->getColumn(2).getString()});
        return out;
    });
}

std::vector<std::string> Ledger::coupons_examined_with(const std::string &serial) {
    return texts(
        "SELECT DISTINCT subject FROM entry, json_each(body, '$.equipment') AS used WHERE kind = 'exam' "
        "AND lower(json_extract(used.value, '$.serial')) = lower(?)",
        serial);
}

std::vector<Ledger::Line> Ledger::lines(const LinesAsked &asked) {
    if (asked.from == (asked.backwards ? std::numeric_limits<std::int64_t>::max() : 0)) check_no_line_lacks();
    return guarded(path_, [&] {
        const std::string table = keeps_lines() ? "coupon_line" : unkept;
        const std::string beyond = std::string("first ") + (asked.backwards ? "<" : ">") + " ?1",
                          in_order =
                              std::string(" ORDER BY first") + (asked.backwards ? " DESC" : "") + " LIMIT ?4",
                          of_class = "(?3 = '' OR class = ?3)";
        const auto some = [&](const std::string &which) {
            return "SELECT first FROM (SELECT first FROM " + table + " WHERE " + beyond + " AND " + which +
                   in_order + ")";
        };
        // A cohort by its index, and beside it what may be of it.
        const std::string which = asked.cohort.empty() ? beyond + " AND (body IS NULL OR " + of_class + ")"
                                                       : "first IN (" + some("cohort = ?2 AND " + of_class) +
                                                             " UNION ALL " + some("body IS NULL") + ")";
        auto query = statement(std::string("SELECT ") + line_columns + " FROM " + table + " WHERE " + which +
                               in_order);
        query->bind(1, asked.from);
        if (!asked.cohort.empty()) query->bind(2, asked.cohort);
        query->bind(3, asked.class_id);
        query->bind(4, asked.most);
        std::vector<Line> out;
        while (query->executeStep()) out.push_back(line_from(*query));
        return out;
    });
}

std::vector<Ledger::Line> Ledger::lines_of(const std::vector<std::string> &coupons) {
    if (coupons.empty()) return {};
    return guarded(path_, [&] {
        // In one statement: each begins and ends by locking the file.
        std::string asked;
        for (std::size_t n = 0; n < coupons.size(); ++n)
            asked += (n == 0 ? "(" : ",(") + std::to_string(n) + ",?)";
        SQLite::Statement query(*db_, "WITH asked(n, mark) AS (VALUES " + asked +
                                          ") SELECT ifnull(first, 0), mark, welder, cohort, class, basis, "
                                          "body, hash FROM asked LEFT JOIN " +
                                          std::string(keeps_lines() ? "coupon_line" : unkept) +
                                          " ON coupon = mark ORDER BY n");
        int parameter = 0;
        for (const auto &coupon : coupons) query.bind(++parameter, coupon);
        std::vector<Line> out;
        while (query.executeStep()) out.push_back(line_from(query));
        return out;
    });
}

std::optional<Ledger::Line> Ledger::line(const std::string &coupon) {
    if (!keeps_lines()) {
        auto found = lines_of({coupon});
        return found.front().first == 0 ? std::nullopt : std::optional(std::move(found.front()));
    }
    return guarded(path_, [&]() -> std::optional<Line> {
        auto query = statement(std::string("SELECT ") + line_columns + " FROM coupon_line WHERE coupon = ?");
        query->bind(1, coupon);
        return query->executeStep() ? std::optional(line_from(*query)) : std::nullopt;
    });
}

std::int64_t Ledger::lines_without(const std::string &basis, std::int64_t among) {
    return guarded(path_, [&] {
        auto query = statement(std::string("SELECT count(*) FROM (SELECT basis FROM ") +
                               (keeps_lines() ? "coupon_line" : unkept) +
                               " ORDER BY first LIMIT ?2) "
                               "WHERE basis IS NULL OR substr(basis, 1, length(?1)) IS NOT ?1");
        query->bind(1, basis);
        query->bind(2, among);
        query->executeStep();
        return query->getColumn(0).getInt64();
    });
}

void Ledger::keep_line(const KeptLine &line) {
    guarded(path_, [&] {
        auto keep = statement("UPDATE coupon_line SET welder = ?, cohort = ?, class = ?, basis = ?, "
                              "body = ?, hash = ? WHERE coupon = ?");
        keep->bind(1, line.welder);
        keep->bind(2, line.cohort);
        keep->bind(3, line.class_id);
        keep->bind(4, line.basis);
        keep->bind(5, line.body);
        keep->bind(6, hash_of_line(line));
        keep->bind(7, line.coupon);
        keep->exec();
    });
}

} // namespace beadbook
