// What was measured, to and from other programs: export, import.
#include "cli/command.hpp"
#include "cli/selection_options.hpp"
#include "measure/text.hpp"
#include "operations/bulk.hpp"
#include "records/files.hpp"
#include "render/csv_results.hpp"
#include "render/json_keeping.hpp"

namespace beadbook {
namespace {

Sheet sheet_named(const std::string &word) {
    if (word == "coupons") return Sheet::coupons;
    if (word == "exams") return Sheet::exams;
    if (word == "indications") return Sheet::indications;
    throw UsageError("'" + shown(word) +
                     "' is no table; expected coupons, exams or indications, or of an export verdicts, "
                     "findings or grades");
}

/// Words: json, or csv and a table.
std::optional<Sheet> form_of(const Call &call) {
    const std::string &form = call.at(0);
    if (form == "json") {
        if (call.words().size() > 1) throw UsageError("json takes no table");
        return std::nullopt;
    }
    if (form != "csv") throw UsageError("'" + shown(form) + "' is no form; expected json or csv");
    if (call.words().size() < 2)
        throw UsageError("which table? expected csv coupons, csv exams or csv indications");
    return sheet_named(call.at(1));
}

/// A table of what was worked out, which only goes out.
std::optional<ResultTable> results_of(const Call &call) {
    if (call.at(0) != "csv" || call.words().size() < 2) return std::nullopt;
    const std::string &word = call.at(1);
    if (word == "verdicts") return ResultTable::verdicts;
    if (word == "findings") return ResultTable::findings;
    if (word == "grades") return ResultTable::grades;
    return std::nullopt;
}

Exported exported_results(Call &call, ResultTable table) {
    Exported out{csv_head(table), 0};
    select(call.office(), selection_of(call), [&](CouponAtHand &one) {
        out.text += csv_rows(table, one);
        if (one.coupon().record.withdrawn.empty()) ++out.coupons;
    });
    return out;
}

ExitCode run_export(Call &call) {
    const auto results = results_of(call);
    const auto sheet = results ? std::nullopt : form_of(call);
    if (call.json() && !call.has("output"))
        throw UsageError("the data are printed as they are; --json goes with --output");
    const Exported exported =
        results ? exported_results(call, *results) : export_record(call.office(), sheet, selection_of(call));
    const auto notes = notes_on_empty(call, selection_of(call), exported.coupons == 0);
    if (!call.has("output")) {
        call.say(notes);
        call.session().out << exported.text;
        return ExitCode::done;
    }
    write_new_file(call.text("output"), exported.text);
    return call.tell(Written{call.text("output"), exported.coupons}, notes);
}

ExitCode run_import(Call &call) {
    if (results_of(call))
        throw UsageError(
            "'" + call.at(1) +
            "' is worked out from what was measured and cannot be imported; expected coupons, exams or "
            "indications");
    const auto sheet = form_of(call);
    std::string text = call.input(call.text("file", "-"));
    PreparedImport prepared =
        prepare_import(call.office(Ledger::Mode::create),
                       {sheet, std::move(text), call.has("sure"), call.has("again"), call.has("open-files")});
    return call.tell(call.write([&](Writing &w) { return store_import(w, std::move(prepared)); }));
}

} // namespace

std::vector<Command> exchange_commands() {
    return {
        looks(For::keeper, run_export, R"(export json | csv coupons|exams|indications|verdicts|findings|grades
what was measured, for a spreadsheet or a program, or what came of it
export csv indications --output found.csv
JSON holds all in one file; CSV is one table a file. Both can be imported again, but the tables verdicts, findings and
grades cannot: they are worked out now from what was measured, with numbers in columns of their own and the unit beside
them. The history stays with the record: 'backup' copies it whole. Withdrawn coupons are left out.)",
              options(Option{"output", "FILE", "write to a new file (else standard output)", 'o'},
                      selection_options())),
        enters(For::keeper, run_import, R"(import json | csv coupons|exams|indications
take coupons, exams and indications from an export
import csv indications --file found.csv
All or nothing: one bad row stores none, and every bad row is named. CSV goes coupons first, then exams, then
indications. What register, exam and log refuse is refused here too.
A number that nobody would believe at first sight is refused unless the file names the rule under `sure`, or
with --sure.)",
               {{"file", "FILE", "the file (else standard input)", 'f'},
                sure_option(),
                {"again", "", "finds of a table that was imported already are meant to come again"},
                {"open-files", "", "criteria and practices that the file names by a path may be opened"}}),
    };
}

} // namespace beadbook
