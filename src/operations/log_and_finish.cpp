#include "operations/log_and_finish.hpp"

#include "measure/text.hpp"
#include "operations/finishing.hpp"

namespace beadbook {

Done<Logged> log_and_finish(Writing &writing, const LogRequest &request) {
    if (trimmed(request.text).empty())
        throw refused("there is no line to log; what is on record already is finished without one")
            .mend({"finish", {request.coupon}, {"as-logged"}});
    auto done = log_lines(writing, request);
    done.value.finished = 0;
    for (const int exam : done.value.exams())
        *done.value.finished +=
            finish_exam(writing,
                        {.coupon = request.coupon, .exam = exam, .as_logged = true, .sure = request.sure})
                .value.finished->found;
    return done;
}

} // namespace beadbook
