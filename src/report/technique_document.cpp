#include "report/technique_document.hpp"

#include "measure/text.hpp"
#include "report/exam_words.hpp"
#include "technique/practice_mark.hpp"

namespace beadbook {
namespace {

Tone tone_of(Truth truth) {
    return truth == Truth::yes ? Tone::accept : truth == Truth::no ? Tone::reject : Tone::cannot_say;
}

void add_exam(Document &out, const ExamValidity &one) {
    const auto tell_cautions = [&] {
        for (const auto &caution : one.exam.cautions()) out.item("caution: " + caution);
    };
    const std::string name = "Exam " + std::to_string(one.exam.number) + ", " +
                             std::string(name_of(one.exam.method)) + " of " + print(one.exam.date);
    if (!one.judged()) {
        out.heading(name + ": names no practice, so its conditions are not judged", 2);
        tell_cautions();
        return;
    }
    const std::string own = own_practice_mark(one.exam.practice, one.exam.practice_hash);
    out.heading(Words(name + " by " + (one.practice ? one.practice->title : one.exam.practice) +
                      (own.empty() ? "" : " (" + own + ")") + ": ") +
                    Words(std::string(validity_words(one)), tone_of(one.valid())),
                2);
    if (!one.check) out.item("the text of practice " + one.exam.practice + " is not in this record");
    if (one.check)
        for (const auto &f : one.check->findings)
            out.item((f.warning && f.holds != Truth::yes ? "warning: " : "") + f.text);
    if (one.check)
        for (const auto &gap : one.check->gaps)
            out.item(
                "gap of the practice here: " + gap.what +
                (gap.lacks.empty() ? "" : " (bears on it or not: " + listed(gap.lacks) + " would tell)"));
    tell_cautions();
}

} // namespace

std::string_view validity_words(const ExamValidity &exam) {
    if (!exam.judged()) return "not judged";
    return exam.valid() == Truth::yes ? "valid" : exam.valid() == Truth::no ? "not valid" : "cannot say";
}

std::string_view grade_words(Finds::Grade grade) {
    return grade == Finds::Grade::well ? "finds it" : grade == Finds::Grade::partly ? "partly" : "cannot";
}

std::string otherwise_words(const technique::CalculationInput &input) {
    return input.optional ? "optional" : input.otherwise.empty() ? "" : input.otherwise + " if not given";
}

Document document_of(const CouponValidity &validity) {
    Document out;
    out.title = "Validity of the exams of " + validity.coupon;
    for (const auto &one : validity.exams) add_exam(out, one);
    if (validity.exams.empty()) out.line("no exam is on record");
    return out.caution();
}

Document document_of(const MethodsResult &methods) {
    Document out;
    out.title = "Which method finds what";
    if (const auto &required = methods.required) {
        out.heading("Required in class " + required->class_id + " of " + required->criteria->name + ":", 2);
        for (const auto &exam : required->exams) out.item(exams_words(exam.one_of) + ": " + why_words(exam));
    }
    if (!methods.called_for.empty()) out.heading("Called for by the drawing:", 2);
    for (const auto &exam : methods.called_for) out.item(exams_words(exam.one_of) + ": " + why_words(exam));
    for (const auto &one : methods.imperfections) {
        out.heading(one.imperfection, 2);
        Grid table{{{"", false}, {"", false}}, {}};
        for (const auto &finds : one.methods)
            table.rows.push_back({"  " + std::string(name_of(finds.method)),
                                  std::string(grade_words(finds.grade)) + ": " + finds.why});
        out.add(std::move(table));
    }
    return out.caution();
}

Document document_of(const CalculationList &list) {
    Grid table{{{"", false}, {"", false}}, {}};
    for (const auto &one : *list.all) table.rows.push_back({one.name, one.title});
    Document out;
    out.title = "Calculations";
    return out.add(std::move(table));
}

Document document_of(const CalculationWanted &wanted) {
    const auto &c = *wanted.calculation;
    Document out;
    out.title = c.title;
    out.heading(c.name + ": " + c.title).line(c.formula, c.source);
    for (const auto &input : c.inputs) {
        const std::string otherwise = otherwise_words(input);
        out.item(input.name + ": " + input.help +
                 (input.words.empty() ? "" : " (" + listed(input.words, "or") + ")") +
                 (otherwise.empty() ? "" : "; " + otherwise));
    }
    return out;
}

Document document_of(const Calculated &calculated) {
    const auto &c = *calculated.calculation;
    Document out;
    out.title = c.title;
    out.heading(c.title).line(c.formula, c.source);
    std::string given;
    for (const auto &input : c.inputs)
        if (calculated.computed.inputs.has(input.name))
            given += (given.empty() ? "" : " ") + input.name + " " +
                     calculated.computed.inputs.word(input.name) + ";";
    out.line(given);
    for (const auto &r : calculated.computed.results) out.line(Words(r.name + ": " + r.text, Tone::strong));
    return out;
}

} // namespace beadbook
