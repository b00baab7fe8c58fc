// What was measured, to and from other programs: export, import.
#include "cli/deeds.hpp"
#include "measure/text.hpp"
#include "operations/bulk.hpp"
#include "records/files.hpp"
#include "render/csv_results.hpp"
#include "render/json_keeping.hpp"
#include "terminal/selection_options.hpp"

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

struct Form {
    std::optional<Sheet> sheet;
    bool lines = false;
};

/// Words: json, lines, or csv and a table.
Form form_of(const Call &call) {
    const std::string &form = call.at(0);
    if (form == "json" || form == "lines") {
        if (call.words().size() > 1) throw UsageError(form + " takes no table");
        return {{}, form == "lines"};
    }
    if (form != "csv") throw UsageError("'" + shown(form) + "' is no form; expected json, lines or csv");
    if (call.words().size() < 2)
        throw UsageError("which table? expected csv coupons, csv exams or csv indications");
    return {sheet_named(call.at(1))};
}

std::vector<std::string> notes_on(Call &call, const Selection &of, const ExportCount &exported) {
    return with_left_out(exported, notes_on_empty(call, of, exported.coupons == 0));
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

using Give = std::function<void(std::string_view)>;

ExportCount export_results(Call &call, ResultTable table, const Give &give) {
    ExportCount out;
    give(csv_head(table));
    select(call.shops(), selection_of(call), [&](CouponAtHand &one) {
        give(csv_rows(table, one));
        if (one.line().record.withdrawn.empty()) ++out.coupons;
    });
    return out;
}

ExitCode run_export(Call &call) {
    const auto results = results_of(call);
    const Form form = results ? Form{} : form_of(call);
    if (call.json() && !call.has("output"))
        throw UsageError("the data are printed as they are; --json goes with --output");
    const Selection of = selection_of(call);
    const auto export_to = [&](const Give &give) {
        return results ? export_results(call, *results, give)
                       : export_record(call.shops(), {form.sheet, form.lines, of}, give);
    };
    if (!call.has("output")) {
        const ExportCount done = export_to([&](std::string_view part) { call.session().out << part; });
        call.say(notes_on(call, of, done));
        return ExitCode::done;
    }
    call.shops(); // a record that is not there makes no file
    NewFile file(call.text("output"));
    const ExportCount done = export_to([&](std::string_view part) { file.write(part); });
    file.finish();
    return call.tell(Written{call.text("output"), done.coupons}, notes_on(call, of, done));
}

/// "L1=L7": theirs, and the one here.
std::map<std::string, std::string> welders_here(const Call &call) {
    std::map<std::string, std::string> out;
    for (const auto &text : call.all("welder-as")) {
        const std::size_t sign = text.find('=');
        if (sign == std::string::npos || sign == 0 || sign + 1 == text.size())
            throw UsageError("--welder-as '" + shown(text) +
                             "': expected the mark in the file and the one here, \"L1=L7\"");
        if (!out.emplace(trimmed(text.substr(0, sign)), trimmed(text.substr(sign + 1))).second)
            throw UsageError("--welder-as gives '" + shown(text.substr(0, sign)) + "' two marks");
    }
    return out;
}

ExitCode run_import(Call &call) {
    if (results_of(call))
        throw UsageError(
            "'" + call.at(1) +
            "' is worked out from what was measured and cannot be imported; expected coupons, exams or "
            "indications");
    const Form form = form_of(call);
    std::string text = call.input(call.text("file", "-"));
    PreparedImport prepared = prepare_import(
        call.office(Ledger::Mode::create), {form.sheet, std::move(text), call.has("sure"), call.has("again"),
                                            call.has("open-files"), form.lines, welders_here(call)});
    return call.tell(call.write([&](Writing &w) { return store_import(w, std::move(prepared)); }));
}

} // namespace

Deeds exchange_deeds() { return {{"export", run_export}, {"import", run_import}}; }

} // namespace beadbook
