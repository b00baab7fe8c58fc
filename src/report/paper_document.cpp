#include "report/paper_document.hpp"

#include "facts/log_line.hpp"
#include "measure/natural_order.hpp"
#include "measure/text.hpp"
#include "report/exam_words.hpp"
#include "report/own_file.hpp"
#include "report/weld_map.hpp"
#include "technique/known_conditions.hpp"

#include <algorithm>
#include <iterator>

namespace beadbook {
namespace {

std::string limits_words(const StandingCount &count) {
    std::vector<std::string> parts;
    const auto take = [&](std::size_t n, const std::string &words) {
        if (n > 0) parts.push_back(std::to_string(n) + " " + words);
    };
    take(count.read, "read");
    take(count.second_hand, "second hand");
    take(count.memory, "from memory");
    take(count.house, "of the house");
    take(count.common_practice, "common practice");
    take(count.own_copy, "held against the owner's copy");
    take(count.blank, "blank");
    return parts.empty() ? "no clause" : "clauses: " + listed(parts);
}

void add_exam_facts(Document &doc, const ExamRecord &e) {
    doc.pair("method", std::string(name_of(e.method)))
        .pair("date", print(e.date))
        .pair("examiner", e.examiner.empty() ? Words("not named", Tone::cannot_say) : Words(e.examiner),
              e.level.empty() ? "" : "level " + e.level_told());
    if (!e.procedure.empty()) doc.pair("procedure", e.procedure);
    if (!e.practice.empty()) {
        doc.pair("practice", practice_told(e), e.practice_hash.empty() ? "" : "SHA-256 " + e.practice_hash);
        doc.pair("valid by it", e.invalid.empty() ? Words("yes") : Words(e.invalid, Tone::cannot_say));
    }
    for (const auto &[name, value] : e.conditions) doc.pair(name, told_value(name, value));
    for (const auto &one : e.equipment) doc.pair(one.kind.empty() ? "equipment" : one.kind, one.serial);
    if (e.finished)
        doc.pair("found", std::to_string(e.finished->found), finished_words(e));
    else
        doc.pair("found", Words("not finished: nobody has said how many, or none", Tone::cannot_say));
    const ExamDone done = e.done();
    if (!done.counts) doc.pair("does not count", Words(done.why_not, Tone::cannot_say));
    if (!e.note.empty()) doc.pair("note", e.note);
}

/// A page begins with its title; what opens with it already is made the title.
void begin_with_title(Document &doc) {
    const auto *heading = doc.blocks.empty() ? nullptr : std::get_if<Heading>(&doc.blocks.front());
    if ((heading && heading->level == 1) || doc.title.empty()) return;
    const auto *line = doc.blocks.empty() ? nullptr : std::get_if<Paragraph>(&doc.blocks.front());
    if (line && line->words.plain().starts_with(doc.title))
        doc.blocks.front() = Heading{Words(line->words.plain()), 1};
    else
        doc.blocks.insert(doc.blocks.begin(), Heading{Words(doc.title), 1});
}

} // namespace

Document on_paper(Document document, const PaperFoot &foot, std::vector<std::string> signatures) {
    begin_with_title(document);
    bool signs = false;
    std::vector<Block> rest;
    for (auto &block : document.blocks) {
        if (std::holds_alternative<Caution>(block)) continue; // it stands at the end
        if (std::holds_alternative<Signatures>(block)) {
            signs = true;
            signatures = std::get<Signatures>(block).lines;
            continue;
        }
        rest.push_back(std::move(block));
    }
    document.blocks = std::move(rest);
    document.heading("What this page rests on", 2);
    for (const auto &set : foot.by)
        document.pair("criteria", set.title + " (" + set.edition + ")",
                      (set.own_file.empty() ? "" : set.own_file + "; ") + limits_words(set.limits) +
                          "; SHA-256 " + set.hash);
    document.pair("record", "its newest entry when this was printed", "SHA-256 " + foot.head)
        .pair("printed", print(foot.on));
    if (signs || !signatures.empty()) document.add(Signatures{std::move(signatures)});
    document.foot = "record " + foot.head.substr(0, 12) + ", " + print(foot.on);
    return std::move(document.caution());
}

Document each_on_its_sheets(std::string title, std::vector<Document> documents) {
    Document out;
    out.title = std::move(title);
    for (auto &one : documents) {
        out.foot = std::move(one.foot);
        out.add(NewSheet{std::move(one.title)});
        std::move(one.blocks.begin(), one.blocks.end(), std::back_inserter(out.blocks));
    }
    return out;
}

namespace {

bool said_in(const Document &document, const std::string &words) {
    return !words.empty() && std::any_of(document.blocks.begin(), document.blocks.end(), [&](const Block &b) {
        const auto *line = std::get_if<Paragraph>(&b);
        return line && line->words.plain() == words;
    });
}

} // namespace

Document coupon_page(const CouponSheet &sheet, const JudgedOrNot &judged,
                     const std::optional<Explained> &explained) {
    Document doc = document_of(sheet);
    if (explained) {
        Document verdict;
        add_explained(verdict, *explained);
        // Its map says more than the sheet's, and what both say stands once.
        std::erase_if(doc.blocks, [&](const Block &b) {
            const auto *line = std::get_if<Paragraph>(&b);
            return std::holds_alternative<Figure>(b) || (line && said_in(verdict, line->words.plain()));
        });
        doc.heading("Verdict", 2);
        std::move(verdict.blocks.begin(), verdict.blocks.end(), std::back_inserter(doc.blocks));
    } else if (judged.judged) {
        doc.heading("Verdict", 2);
        doc.line(verdicts_in_a_line(*judged.judged));
    } else {
        doc.heading("Verdict", 2).line(Words("Not judged: " + judged.why_not, Tone::cannot_say));
    }
    return doc.caution();
}

Document document_of(const ExamPaper &paper) {
    const ExamRecord &exam = paper.exam();
    Document doc;
    doc.title = "Examination " + std::to_string(exam.number) + " of coupon " + paper.coupon.record.id + ", " +
                std::string(name_of(exam.method));
    doc.heading(doc.title);
    doc.heading("Examined", 2);
    doc.pair("coupon", paper.coupon.record.id);
    add_facts(doc, paper.coupon.record, paper.welder_name);
    doc.heading("How", 2);
    add_exam_facts(doc, exam);
    for (const auto &caution : exam.cautions()) doc.line(Words("Caution, " + caution, Tone::cannot_say));
    doc.heading("Found", 2);
    Grid finds{{{"number"}, {"find"}}, {}};
    std::vector<int> numbers;
    for (const auto &find : paper.coupon.indications) {
        if (find.exam != exam.number) continue;
        numbers.push_back(find.number);
        finds.rows.push_back({"#" + std::to_string(find.number), print_log_line(find)});
    }
    if (finds.rows.empty())
        return std::move(doc.line(exam.finished ? "None found." : "Nothing is logged.").caution());
    doc.add(std::move(finds));
    auto found = paper.coupon.found();
    std::erase_if(found, [&](const Indication &i) {
        return std::find(numbers.begin(), numbers.end(), i.number) == numbers.end();
    });
    add_map(doc, weld_map(paper.coupon.record.facts(), found, paper.coupon.record.unit()), "");
    return doc.caution();
}

namespace {

/// By welder, so that each finds his own in one place.
Grid grades_of(const CouponList &coupons, const std::map<std::string, std::string> &names) {
    Grid out{{{"welder"}, {"coupon"}, {"class"}, {"grade"}, {"by"}, {"on"}}, {}};
    std::map<std::string, std::vector<const CouponLine *>, NaturalOrder> by_welder;
    for (const auto &one : coupons.coupons)
        if (one.record.withdrawn.empty()) by_welder[one.record.get("welder")].push_back(&one);
    for (const auto &[mark, lines] : by_welder) {
        const auto name = names.find(mark);
        const std::string welder = welder_words(mark, name == names.end() ? "" : name->second);
        for (const auto *one : lines)
            if (one->grade)
                out.rows.push_back({welder, one->record.id, one->grade->class_id, grade_cell(*one),
                                    who_words(one->grade->stamp), one->grade->stamp.at.substr(0, 10)});
            else
                out.rows.push_back({welder, one->record.id, one->record.get("class"),
                                    Words("not graded", Tone::cannot_say), "", ""});
    }
    return out;
}

} // namespace

Document cohort_page(const Summaries &summary, const CouponList &coupons,
                     const std::map<std::string, std::string> &names) {
    Document doc = document_of(summary);
    if (!doc.blocks.empty() && std::holds_alternative<Caution>(doc.blocks.back())) doc.blocks.pop_back();
    if (!summary.groups.empty()) doc.title = "Cohort " + summary.groups.front().of.cohort;
    doc.heading("Grades", 2);
    doc.add(grades_of(coupons, names));
    doc.heading("Coupons", 2);
    for (auto &block : document_of(coupons).blocks) doc.blocks.push_back(std::move(block));
    return doc.caution();
}

} // namespace beadbook
