#include "report/left_to_a_person.hpp"

#include <algorithm>
#include <cctype>

namespace beadbook {

std::string left_to_a_person(const Rule &rule) {
    std::string out = "leaves this to a person, who decides it by the grade and writes why in its remark.";
    if (rule.reading.empty()) return out;
    std::string reading = rule.reading;
    reading.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(reading.front())));
    return out + " " + reading + (reading.ends_with('.') ? "" : ".");
}

void add_who_decides(Document &doc, const std::string &mark, const std::vector<ClassJudgement> &of) {
    const auto waits = [](const ClassJudgement &one) {
        return one.verdict == Verdict::cannot_say &&
               std::any_of(one.findings.begin(), one.findings.end(),
                           [](const Finding &f) { return f.kind == Finding::Kind::person_decides; });
    };
    if (std::any_of(of.begin(), of.end(), waits))
        doc.line(Words("What is left to a person is decided by the grade") +
                 Words::to_type(": beadbook grade " + mark + " passed (or failed)") +
                 ", with a remark that says why. To qualify a welder by it the reason is given again.");
}

} // namespace beadbook
