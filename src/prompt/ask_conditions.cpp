// The questions of an exam's conditions.
#include "measure/text.hpp"
#include "prompt/prompt.hpp"

#include <algorithm>
#include <set>

namespace beadbook {

void ask_conditions(Call &call, ExamRequest &request) {
    std::istream &in = call.session().in;
    std::ostream &out = call.json() ? call.session().err : call.session().out;
    out << "conditions"
        << (request.practice.empty() ? "" : " by " + call.catalogue().practice(request.practice)->title)
        << "; Enter leaves one out\n";
    std::set<std::string> skipped;
    for (;;) {
        const auto wanted = conditions_to_ask(call.office(), request);
        const auto next = std::find_if(wanted.begin(), wanted.end(),
                                       [&](const auto &name) { return !skipped.contains(name); });
        if (next == wanted.end()) return;
        const ConditionInfo &info = *condition_info(*next);
        out << info.name << " (" << info.help << (info.words.empty() ? "" : ": " + listed(info.words, "or"))
            << "): " << std::flush;
        std::string answer;
        // Half of the answers are no exam.
        if (!std::getline(in, answer))
            throw refused(
                "the input ended before everything was answered: no exam was recorded; Enter leaves a "
                "question out");
        if (trimmed(answer).empty()) {
            skipped.insert(info.name);
            continue;
        }
        try {
            ExamRecord trial;
            add_condition(trial, info.name + "=" + answer);
            request.conditions.push_back(info.name + "=" + answer);
        } catch (const Refusal &e) {
            out << "  " << visible(e.what()) << "\n";
        }
    }
}

} // namespace beadbook
