// What a shop enters from its own printed copy of a standard: copy.
#include "cli/deeds.hpp"
#include "criteria/shipped.hpp"
#include "render/json_owners_copy.hpp"

namespace beadbook {
namespace {

void refuse_options(const Call &call, std::initializer_list<const char *> names, const std::string &verb) {
    for (const char *name : names)
        if (call.has(name)) throw UsageError("--" + std::string(name) + " does not go with '" + verb + "'");
}

/// Where there is no record yet, all is open.
CopySheet sheet_of(Call &call, const std::string &name) {
    if (call.has_record()) return copy_sheet(call.office(), name);
    CopySheet out;
    out.set = call.catalogue().criteria(name);
    return out;
}

std::vector<CopySheet> sheets_of(Call &call) {
    if (call.has_record()) return copy_sheets(call.office());
    std::vector<CopySheet> out;
    for (const auto &name : shipped_sets())
        if (CopySheet one = sheet_of(call, name); !one.set->blanks.empty()) out.push_back(std::move(one));
    return out;
}

ExitCode run_copy(Call &call) {
    const std::string &verb = call.at(0);
    const std::size_t more = call.words().size() - 1;
    if (verb == "blanks" && more <= 1) {
        refuse_options(call, {"class", "edition", "page", "second", "why", "sure"}, verb);
        return more == 1 ? call.tell(sheet_of(call, call.at(1))) : call.tell(sheets_of(call));
    }
    const auto write = [&](auto work) { return call.tell(call.write(work, Ledger::Mode::create)); };
    if (verb == "confirm" && more == 2)
        return write([&](Writing &w) {
            return confirm_limit(w, {call.at(1), call.at(2), call.all("class"), call.text("edition"),
                                     call.text("page"), call.text("second"), call.text("why"),
                                     call.has("sure")});
        });
    if (verb == "fill" && more == 3)
        return write([&](Writing &w) {
            return fill_blank(w,
                              {call.at(1), call.at(2), call.at(3), call.all("class"), call.text("edition"),
                               call.text("page"), call.text("second"), call.text("why"), call.has("sure")});
        });
    if (verb == "withdraw" && more == 2) {
        refuse_options(call, {"edition", "page", "second", "sure"}, verb);
        return write([&](Writing &w) {
            return retract_copy(w, {call.at(1), call.at(2), call.all("class"), call.text("why")});
        });
    }
    throw UsageError(
        "expected blanks [SET], confirm SET RULE, fill SET BLANK VALUE or withdraw SET RULE-OR-BLANK");
}

} // namespace

Deeds owners_copy_deeds() { return {{"copy", run_copy}}; }

} // namespace beadbook
