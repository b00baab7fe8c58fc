#include "terminal/selection_options.hpp"

#include "measure/text.hpp"
#include "operations/selecting.hpp"
#include "terminal/command.hpp"

namespace beadbook {
namespace {

template <class Value>
Value one_of(const Call &call, const std::string &option, const std::vector<Value> &values) {
    std::vector<std::string> names;
    for (const Value value : values) {
        names.emplace_back(name_of(value));
        if (same_word(call.text(option), names.back())) return value;
    }
    throw UsageError("--" + option + " '" + shown(call.text(option)) + "'; expected " + listed(names, "or") +
                     did_you_mean(call.text(option), names));
}

} // namespace

Selection selection_of(Call &call) {
    Selection out{call.text("welder"),  call.text("cohort"), call.text("for-class"),
                  call.text("process"), call.day("from"),    call.day("to")};
    if (call.has("method")) {
        out.method = exam_named(call.text("method"));
        if (!out.method)
            throw UsageError("--method '" + shown(call.text("method")) + "' is no exam; expected " +
                             exam_names_text());
    }
    if (call.has("verdict"))
        out.verdict =
            one_of<Verdict>(call, "verdict", {Verdict::accept, Verdict::reject, Verdict::cannot_say});
    if (call.has("graded"))
        out.grade = one_of<GradeState>(
            call, "graded", {GradeState::passed, GradeState::failed, GradeState::none, GradeState::again});
    out.unfinished = call.has("unfinished");
    out.criteria = call.text("for-criteria");
    // As it is kept, so that it is found from any folder.
    if (means_file(out.criteria)) out.criteria = call.catalogue().outside().absolute(out.criteria);
    return out;
}

void check_no_selection(const Call &call, std::string_view with) {
    for (const auto &option : option_group("selection"))
        if (call.has(option.name))
            throw UsageError("--" + option.name + " says which coupons of many; it goes with " +
                             std::string(with));
}

std::vector<std::string> notes_on_empty(Call &call, const Selection &of, bool empty) {
    if (!empty) return {};
    const Shops shops = call.shops();
    // Of several shops a word may be unknown in one and known in the next.
    return shops.all().size() > 1 ? std::vector<std::string>{}
                                  : unknown_words(*shops.all().front().office, of);
}

} // namespace beadbook
