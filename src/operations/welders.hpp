#pragma once

#include "operations/standing.hpp"

namespace beadbook {

class WeldersMeant;

/// A welder as a person writes it down; what is absent stays as it is.
struct WelderRequest {
    std::string mark;
    std::optional<std::string> name, employer, note;
    std::string why;   ///< of a change
    bool sure = false; ///< what somebody would take for a slip is meant so
};
/// Throws Refusal: no mark of a welder, or several (L7..L9).
void check_welder_mark(const std::string &mark);

/// Registers a welder by mark. Throws Refusal: registered already, no mark; Unsure: a mark or a name that may
/// be that of somebody who is enrolled (welder_meant.hpp).
Done<WelderRecord> enrol(Writing &writing, const WelderRequest &request);
/// One of many: who is enrolled is read once, by the caller.
Done<WelderRecord> enrol(Writing &writing, const WelderRequest &request, WeldersMeant &enrolled);
/// Changes what was registered; the old entry is kept. Throws Refusal: no such welder, no reason, no change;
/// Unsure: a name that may be another's.
Done<WelderRecord> change_welder(Writing &writing, const WelderRequest &request);

/// Something about a welder and a process: a use that keeps qualifications alive, or training.
struct ProcessRequest {
    std::string mark, process;
    std::optional<Day> day;        ///< else today
    std::string text;              ///< the work that shows it, what was trained
    std::string override_why = {}; ///< why a use that was entered late may revive what is over
};
struct ProcessLogged {
    std::string mark;
    WelderEvent event;
    std::vector<HeldQualification> held; ///< in that process, as they stand today
};
/// Throws Refusal: no such welder, no process, no text (fields "work", "text"), a day to come, a use of a
/// process in which nothing is held, or that would revive what is over (held_events.hpp), training in one
/// that no rules know. Capitals do not matter. Notes: nothing is held in the process of the training.
Done<ProcessLogged> log_use(Writing &writing, const ProcessRequest &request);
Done<ProcessLogged> log_training(Writing &writing, const ProcessRequest &request);

struct Retracted {
    std::string mark, kind;
    std::int64_t entry = 0;
};
/// Takes one entry about a welder back; it stays in the history. Throws Refusal: none of that number, the
/// registration itself, taken back already, no reason.
Done<Retracted> retract(Writing &writing, const std::string &mark, std::int64_t entry,
                        const std::string &why);

} // namespace beadbook
