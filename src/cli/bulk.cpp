// What was measured, to and from other programs: export, import.
#include "operations/bulk.hpp"
#include "cli/command.hpp"
#include "cli/shop.hpp"
#include "cli/tell.hpp"
#include "cli/words.hpp"
#include "measure/text.hpp"
#include "render/json_keeping.hpp"

#include <cerrno>
#include <cstdio>
#include <filesystem>

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
    if (args.flag("json") && !args.has("output"))
        throw UsageError("the data are printed as they are; --json goes with --output");
    Shop shop(args, session);
    const Exported exported = export_record(shop.office(), sheet);
    if (!args.has("output")) {
        session.out << exported.text;
        return ExitCode::done;
    }
    write_new_file(args.text("output"), exported.text);
    tell(args, session, Written{args.text("output"), exported.coupons});
    return ExitCode::done;
}

ExitCode run_import(const Args &args, Session &session) {
    const auto sheet = form_of(args);
    Shop shop(args, session);
    std::string text = read_input(args.text("file", "-"), session);
    PreparedImport prepared = prepare_import(shop.office(Ledger::Mode::create),
                                             {sheet, std::move(text), args.flag("sure"), args.flag("again")});
    tell(args, session, shop.write([&](Writing &w) { return store_import(w, std::move(prepared)); }));
    return ExitCode::done;
}

} // namespace

Command export_command() {
    return {
        "export",
        "json | csv coupons|exams|indications",
        "what was measured, for a spreadsheet or a program",
        "JSON holds all in one file; CSV is one table a file. Both can be imported again. Verdicts, "
        "grades and the\n"
        "history stay with the record: 'backup' copies it whole.",
        "beadbook export csv indications --output found.csv",
        1,
        2,
        options(Option{"output", "FILE", "write to a new file (else standard output)", 'o'}, json_option()),
        run_export};
}

Command import_command() {
    return {"import",
            "json | csv coupons|exams|indications",
            "take coupons, exams and indications from an export",
            "All or nothing: one bad row stores none, and every bad row is named. CSV goes coupons first, "
            "then exams, then\n"
            "indications. What register, exam and log refuse is refused here too.\n"
            "A number that nobody would believe at first sight is refused unless the file names the rule "
            "under `sure`, "
            "or with --sure.",
            "beadbook import csv indications --file found.csv",
            1,
            2,
            options(Option{"file", "FILE", "the file (else standard input)", 'f'}, sure_option(),
                    Option{"again", "", "finds of a table that was imported already are meant to come again"},
                    by_option(), json_option()),
            run_import};
}

} // namespace beadbook
