#include "cli/shared.hpp"

#include "measure/text.hpp"
#include "records/exchange.hpp"

#include <filesystem>
#include <fstream>

namespace beadbook {
namespace {

Sheet sheet_named(const std::string &word) {
    if (word == "coupons") return Sheet::coupons;
    if (word == "exams") return Sheet::exams;
    if (word == "indications") return Sheet::indications;
    throw UsageError("'" + shown(word) + "' is no table; expected coupons, exams or indications");
}

/// Words: json, or csv and a table.
std::optional<Sheet> form_of(const Args &args) {
    const std::string &form = args.at(0);
    if (form == "json") {
        if (args.positional().size() > 1) throw UsageError("json takes no table");
        return std::nullopt;
    }
    if (form != "csv") throw UsageError("'" + shown(form) + "' is no form; expected json or csv");
    if (args.positional().size() < 2)
        throw UsageError("which table? expected csv coupons, csv exams or csv indications");
    return sheet_named(args.at(1));
}

ExitCode run_export(const Args &args, Session &session) {
    const auto sheet = form_of(args);
    Book book = open_book(args, session, Ledger::Mode::read);
    const std::string text = sheet ? exchange_csv(book, *sheet) : exchange_json(book).dump(2) + "\n";
    if (!args.has("output")) {
        session.out << text;
        return ExitCode::done;
    }
    const std::string path = args.text("output");
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored))
        throw DataError(shown(path) + ": is there already; an export never overwrites");
    std::ofstream out(path, std::ios::binary);
    out << text;
    out.close();
    if (!out) throw StoreError(shown(path) + ": cannot be written");
    session.out << "written to " << path << "\n";
    return ExitCode::done;
}

ExitCode run_import(const Args &args, Session &session) {
    const auto sheet = form_of(args);
    const std::string text = read_input(args.text("file", "-"), session);
    Book book = open_book(args, session, Ledger::Mode::create);
    std::string taken;
    book.ledger().transact([&] {
        const Stamp stamp = stamp_of(args, session);
        taken = sheet ? import_csv(book, *sheet, text, stamp) : import_json(book, text, stamp);
    });
    session.out << taken << " imported\n";
    return ExitCode::done;
}

} // namespace

Command export_command() {
    return {"export",
            "json | csv coupons|exams|indications",
            "what was measured, for a spreadsheet or a program",
            "JSON holds all in one file; CSV is one table a file. Both can be imported again. Verdicts, "
            "grades and the\n"
            "history stay with the record: 'backup' copies it whole.",
            "beadbook export csv indications --output found.csv",
            1,
            2,
            {Option{"output", "FILE", "write to a new file (else standard output)", 'o'}},
            run_export};
}

Command import_command() {
    return {"import",
            "json | csv coupons|exams|indications",
            "take coupons, exams and indications from an export",
            "All or nothing: one bad row stores none, and every bad row is named. CSV goes coupons first, "
            "then exams, then\n"
            "indications.",
            "beadbook import csv indications --file found.csv",
            1,
            2,
            options(Option{"file", "FILE", "the file (else standard input)", 'f'}, by_option()),
            run_import};
}

} // namespace beadbook
