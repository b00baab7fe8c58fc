#include "operations/log_sheet.hpp"

#include "facts/log_line.hpp"
#include "measure/text.hpp"
#include "operations/examining.hpp"
#include "operations/faults.hpp"
#include "operations/finishing.hpp"
#include "operations/logging.hpp"
#include "operations/marks.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <sstream>

namespace beadbook {
namespace {

/// "incomplete: why". Imperfections begin with the word too: without its colon it is none of these.
bool is_incomplete(std::string_view said) {
    constexpr std::string_view word = "incomplete";
    if (!said.starts_with(word)) return false;
    const std::string_view after = trimmed(said.substr(word.size()));
    return after.empty() || after.front() == ':';
}

/// What the sheet says of one method on one coupon.
struct Said {
    bool none = false;
    std::string incomplete;
    std::vector<std::pair<int, std::string>> finds; ///< line number; the line, blanks where its head stood

    bool anything() const { return none || !incomplete.empty() || !finds.empty(); }
};
struct CouponPart {
    std::string mark;
    int line = 0; ///< where it is named first
    std::map<Exam, Said> said;
};
struct Head {
    std::vector<Exam> methods;
    ExamRequest exam; ///< coupon and method are filled in for each
    std::vector<CouponPart> coupons;

    CouponPart &part(const std::string &mark, int line) {
        for (auto &one : coupons)
            if (one.mark == mark) return one;
        coupons.push_back({mark, line, {}});
        return coupons.back();
    }
};

/// Takes the first word off, and the blanks behind it.
std::string_view take_word(std::string_view &rest) {
    const std::size_t end = std::min(rest.find_first_of(" \t"), rest.size());
    const std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(rest.find_first_not_of(" \t", end), rest.size()));
    return word;
}

/// The methods before the first semicolon; empty if it is no head.
std::vector<Exam> methods_of(std::string_view line) {
    std::string names(line.substr(0, line.find(';')));
    std::replace(names.begin(), names.end(), ',', ' ');
    std::istringstream words(names);
    std::vector<Exam> out;
    for (std::string word; words >> word;) {
        const auto method = exam_named(word);
        if (!method) return {};
        out.push_back(*method);
    }
    return out;
}

/// How many bad lines of a sheet are named.
constexpr std::size_t most_faults = 40;

std::string place(const std::string &sheet, int line) { return sheet + ":" + std::to_string(line); }

class Reader {
public:
    Reader(const SheetRequest &request, Faults &faults) : faults_(faults) {
        std::istringstream lines{std::string(without_mark(request.text))};
        for (std::string line; std::getline(lines, line);) {
            ++number_;
            const std::string_view words = trimmed(line);
            if (words.empty() || words.front() == '#') continue;
            faults_.guard([&] { return place(request.name, number_); },
                          [&] {
                              if (auto methods = methods_of(words); !methods.empty())
                                  begin(std::move(methods), words);
                              else
                                  take(line);
                          });
        }
    }

    std::vector<Head> heads;

private:
    void begin(std::vector<Exam> methods, std::string_view line) {
        Head head;
        head.methods = std::move(methods);
        if (!heads.empty()) head.exam = heads.back().exam;
        head.exam.practice.clear();
        head.exam.conditions.clear();
        head.exam.equipment.clear();
        head.exam.as_before = false;
        last_ = "";
        heads.push_back(std::move(head));
        for (std::size_t at = line.find(';'); at != std::string_view::npos;) {
            const std::size_t end = line.find(';', at + 1);
            take_key(trimmed(line.substr(at + 1, end == line.npos ? end : end - at - 1)));
            at = end;
        }
    }
    void take_key(std::string_view said) {
        ExamRequest &exam = heads.back().exam;
        if (said.empty()) return;
        const std::string whole(said);
        if (const auto equals = whole.find('='); equals != std::string::npos) {
            exam.conditions.push_back(whole);
            return;
        }
        const std::string_view key = take_word(said);
        const std::string value(said);
        if (key == "by")
            exam.examiner = value;
        else if (key == "level")
            exam.level = value;
        else if (key == "date")
            exam.date = parse_day(value);
        else if (key == "practice")
            exam.practice = value;
        else if (key == "procedure")
            exam.procedure = value;
        else if (key == "with")
            exam.equipment.push_back(value);
        else if (whole == "as before")
            exam.as_before = true;
        else
            throw refused(
                "'" + shown(whole) +
                "' is not understood; expected by, level, date, practice, procedure, with "
                "EQUIPMENT, as before, "
                "or NAME=VALUE" +
                did_you_mean(std::string(key), {"by", "level", "date", "practice", "procedure", "with"}));
    }

    void take(const std::string &line) {
        if (heads.empty())
            throw refused("no exam is named yet; expected a line such as 'VT MT; by A. Field; level II'");
        Head &head = heads.back();
        std::string_view rest = line;
        rest.remove_prefix(rest.find_first_not_of(" \t"));
        const std::string word(take_word(rest));
        const bool ditto = word == "\"" || word == "\"\"" || word == "''" || word == "\xE2\x80\x9D";
        if (ditto && last_.empty())
            throw refused(word + " repeats a coupon, and none is named yet; write its mark");
        const auto marks = marks_in(ditto ? last_ : word);
        last_ = ditto ? last_ : word;
        std::vector<Exam> methods;
        for (std::string_view next = rest; !next.empty();) {
            const auto method = exam_named(std::string(take_word(next)));
            if (!method) break;
            if (std::find(head.methods.begin(), head.methods.end(), *method) == head.methods.end())
                throw refused(std::string(name_of(*method)) + " is not of this head, which names " +
                              methods_text(head) + "; write a head that names it");
            methods.push_back(*method);
            rest = next;
        }
        const bool none = trimmed(rest) == "none", incomplete = is_incomplete(rest);
        if (methods.empty() && (none || head.methods.size() == 1)) methods = head.methods;
        if (methods.empty())
            throw refused("by which method? the head names " + methods_text(head) +
                          "; it stands behind the coupon, as in '" + shown(word) + " " +
                          std::string(name_of(head.methods.front())) + " " + shown(trimmed(rest)) + "'");
        if (trimmed(rest).empty())
            throw refused("what did it find? expected a find such as 'pore 0.04 at 3', or none");
        if (!none && (marks.size() > 1 || methods.size() > 1))
            throw refused(incomplete ? "this is said of one exam of one coupon"
                                     : "a find is of one coupon and one method");
        for (const auto &mark : marks)
            for (const Exam method : methods)
                say(head.part(mark, number_).said[method], line, rest, none, incomplete);
    }
    static std::string methods_text(const Head &head) {
        std::vector<std::string> names;
        for (const Exam method : head.methods) names.emplace_back(name_of(method));
        return listed(names);
    }
    void say(Said &said, const std::string &line, std::string_view rest, bool none, bool incomplete) {
        if (said.none || (none && !said.finds.empty()))
            throw refused("it is said to have found none, and here is a find or none again");
        if (none) {
            said.none = true;
        } else if (incomplete) {
            rest.remove_prefix(std::string_view("incomplete").size());
            if (rest.starts_with(":")) rest.remove_prefix(1);
            said.incomplete = trimmed(rest);
            if (said.incomplete.empty()) throw refused("why was it not complete? incomplete: WHY");
        } else {
            // Blanks before it keep the columns of mistakes right.
            said.finds.emplace_back(number_, std::string(line.size() - rest.size(), ' ') + std::string(rest));
        }
    }

    Faults &faults_;
    int number_ = 0;
    std::string last_;
};

/// The lines at their own numbers, so that mistakes name these.
std::string placed(const std::vector<std::pair<int, std::string>> &finds) {
    std::string out;
    int number = 1;
    for (const auto &[line, text] : finds) {
        out.append(static_cast<std::size_t>(line - number), '\n');
        out += text;
        number = line;
    }
    return out + "\n";
}

class Taking {
public:
    Taking(Writing &writing, const SheetRequest &request, Faults &faults)
        : writing_(writing), request_(request), faults_(faults) {}

    void take(const Head &head, const CouponPart &coupon) {
        for (const Exam method : head.methods) {
            const auto said = coupon.said.find(method);
            if (said == coupon.said.end() || !said->second.anything()) {
                faults_.add(at(coupon.line), coupon.mark + ": what did " + std::string(name_of(method)) +
                                                 " find? say '" + coupon.mark + " " +
                                                 std::string(name_of(method)) + " none', or its finds");
                continue;
            }
            const auto &finds = said->second.finds;
            faults_.guard(at(finds.empty() ? coupon.line : finds.front().first),
                          [&] { take(head, coupon, method, said->second); });
        }
    }

    Done<SheetTaken> out;

private:
    void take(const Head &head, const CouponPart &coupon, Exam method, const Said &said) {
        const CouponState &state = writing_.coupon(coupon.mark);
        if (trimmed(head.exam.examiner).empty())
            throw refused(
                "who examined? the head above names no examiner; write 'by' and the name into it, as in 'VT; "
                "by A. Field'");
        if (!lines_are_good(state.record, said)) return;
        ExamRequest exam = head.exam;
        exam.coupon = coupon.mark;
        exam.method = method;
        exam.incomplete = said.incomplete;
        exam.sure = request_.sure;
        if (said.finds.empty()) exam.found = 0;
        if (!request_.again) check_new(state, exam);
        auto recorded = record_exam(writing_, exam);
        const int number = recorded.value.number;
        SheetTaken::Part part{coupon.mark, std::move(recorded.value), {}};
        add_notes(out.notes, std::move(recorded.notes));
        if (!said.finds.empty()) {
            auto logged =
                log_lines(writing_, {coupon.mark, number, placed(said.finds), request_.name, request_.sure});
            add_notes(out.notes, std::move(logged.notes));
            part.found = std::move(logged.value.indications);
            part.exam = finish_exam(writing_, {coupon.mark, number, {}, true}).value;
        }
        out.value.parts.push_back(std::move(part));
    }
    bool lines_are_good(const CouponRecord &coupon, const Said &said) {
        const std::size_t before = faults_.count();
        const WeldLine weld = coupon.facts().line;
        for (const auto &[line, text] : said.finds) {
            try {
                read_log_line(text, weld, coupon.fixed_unit());
            } catch (const InputError &e) {
                faults_.add(at(line, ":" + std::to_string(e.column + 1)), e.what());
            }
        }
        return faults_.count() == before;
    }
    std::function<std::string()> at(int line, const std::string &column = "") const {
        return [=, this] { return place(request_.name, line) + column; };
    }
    void check_new(const CouponState &state, const ExamRequest &exam) const {
        const Day day = exam.date.value_or(writing_.outside().today());
        for (const auto &one : state.exams)
            if (one.method == exam.method && one.date == day && same_word(one.examiner, exam.examiner))
                throw refused("coupon " + exam.coupon + " has " + named({&one}) + " of " + print(day) +
                              " by " + exam.examiner + " already")
                    .give("again");
    }
    Writing &writing_;
    const SheetRequest &request_;
    Faults &faults_;
};

} // namespace

Done<SheetTaken> take_sheet(Writing &writing, const SheetRequest &request) {
    Faults faults(most_faults);
    const Reader reader(request, faults);
    Taking taking(writing, request, faults);
    for (const auto &head : reader.heads)
        for (const auto &coupon : head.coupons) taking.take(head, coupon);
    faults.check(counted(faults.count(), "line") + " of the sheet");
    if (taking.out.value.parts.empty())
        throw refused(
            "the sheet" + (request.name == "-" ? "" : " " + shown(request.name)) +
            " names no exam of a coupon; expected a head such as 'VT MT; by A. Field; level II', and "
            "below it lines such as 'T-1 VT none'");
    return std::move(taking.out);
}

} // namespace beadbook
