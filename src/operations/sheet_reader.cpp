#include "operations/sheet_reader.hpp"

#include "facts/commented_find.hpp"
#include "facts/log_line.hpp"
#include "facts/log_line_hints.hpp"
#include "facts/reason.hpp"
#include "measure/text.hpp"
#include "operations/faults.hpp"
#include "operations/marks.hpp"
#include "operations/sheet_head.hpp"

#include <algorithm>
#include <sstream>

namespace beadbook {
namespace {

bool is_incomplete(std::string_view said) { return incomplete_because(said).has_value(); }

/// "none", with or without a remark.
bool is_none(std::string_view said) { return says_none(said.substr(0, said.find('#'))); }

/// The coupon of the line before.
bool is_ditto(std::string_view word) {
    return word == "\"" || word == "\"\"" || word == "''" || word == "\xE2\x80\x9D";
}

bool may_be_slip_of(std::string_view word, const std::string &meant) {
    return word.substr(0, 2) == meant.substr(0, 2) && !nearest_word(word, {meant}).empty();
}

SheetCoupon &part_of(SheetHead &head, const std::string &mark, int line) {
    for (auto &one : head.coupons)
        if (one.mark == mark) return one;
    head.coupons.push_back({mark, line, {}});
    return head.coupons.back();
}

std::string methods_text(const SheetHead &head) {
    std::vector<std::string> names;
    for (const Exam method : head.methods) names.emplace_back(name_of(method));
    return listed(names);
}

class Reader {
public:
    Reader(const SheetRequest &request, const KnowsCoupon &knows, SheetFaults &faults)
        : knows_(knows), faults_(faults) {
        std::istringstream lines{std::string(without_mark(request.text))};
        for (std::string line; std::getline(lines, line);) {
            ++number_;
            const std::string_view words = trimmed(line);
            if (words.empty()) continue;
            faults_.guard(number_, [&] {
                if (words.front() == '#')
                    check_comment(words);
                else
                    read(line, words);
            });
        }
    }

    std::vector<SheetHead> heads;

private:
    /// A comment that hides a head, a find or what an exam found would be missed by nobody.
    void check_comment(std::string_view line) const {
        const std::string_view words = behind_hash(line);
        const auto not_a_remark = [&](const std::string &what, const std::string &way) {
            return refused("a remark that reads like " + what + "; write " + way +
                           ", or another word behind the # if it is none");
        };
        if (const std::string find = find_in_comment(line); !find.empty())
            throw not_a_remark("a find", "its coupon in front, as in 'T-1 " + shown(find) + "'");
        if (words.empty()) return;
        if (is_head(words)) throw not_a_remark("a head", "'" + shown(words) + "'");
        std::string_view rest = words;
        const std::string word(take_word(rest));
        if (is_ditto(word) || are_coupons(word)) {
            while (!rest.empty() && exam_named(rest.substr(0, rest.find_first_of(" \t")))) take_word(rest);
            if (is_none(rest) || is_incomplete(rest) || reads_as_find(rest))
                throw not_a_remark("what was found", "'" + shown(words) + "'");
        }
        if (const std::string why = find_told_in_comment(line); !why.empty()) throw refused(why);
    }
    bool is_head(std::string_view words) const {
        try {
            return !methods_of_head(words, knows_).empty();
        } catch (const Refusal &) {
            return true; // a head with a slip in it
        }
    }

    bool are_coupons(const std::string &word) const {
        try {
            const auto marks = marks_in(word);
            return std::all_of(marks.begin(), marks.end(), knows_);
        } catch (const Refusal &) {
            return false;
        }
    }

    void read(const std::string &line, std::string_view words) {
        std::vector<Exam> methods;
        try {
            methods = methods_of_head(words, knows_);
        } catch (const Refusal &) {
            unread_ = true;
            throw;
        }
        if (!methods.empty())
            begin(std::move(methods), words);
        else if (!unread_)
            take(line);
    }

    void begin(std::vector<Exam> methods, std::string_view line) {
        SheetHead head;
        head.line = number_;
        head.methods = std::move(methods);
        if (!heads.empty()) head.exam = heads.back().exam;
        head.exam.practice.clear();
        head.exam.note.clear();
        head.exam.incomplete.clear();
        head.exam.conditions.clear();
        head.exam.equipment.clear();
        head.exam.as_before = false;
        last_ = "";
        unread_ = false;
        heads.push_back(std::move(head));
        const std::size_t before = faults_.count();
        std::set<std::string_view> keys;
        for (std::size_t at = line.find(';'); at != std::string_view::npos;) {
            const std::size_t end = line.find(';', at + 1);
            const auto part = trimmed(line.substr(at + 1, end == line.npos ? end : end - at - 1));
            faults_.guard(number_, [&] {
                if (!takes_practice(part, heads.back())) take_head_part(part, heads.back().exam, keys);
            });
            at = end;
        }
        heads.back().good = faults_.count() == before;
    }

    /// Whether the part is the practice of one method, which is then taken.
    static bool takes_practice(std::string_view part, SheetHead &head) {
        const auto one = practice_of_one(part);
        if (!one) return false;
        if (std::find(head.methods.begin(), head.methods.end(), one->first) == head.methods.end())
            throw refused("'" + shown(part) + "': " + std::string(name_of(one->first)) +
                          " is not of this head, which names " + methods_text(head));
        if (!head.practices.insert(*one).second)
            throw refused("'" + shown(part) + "': this head says the practice of " +
                          std::string(name_of(one->first)) + " twice; which is meant?");
        return true;
    }

    void take(const std::string &line) {
        if (heads.empty()) {
            unread_ = true;
            throw refused("no exam is named yet; expected a line such as 'VT MT; by A. Field; level II'");
        }
        SheetHead &head = heads.back();
        std::string_view rest = line;
        rest.remove_prefix(rest.find_first_not_of(" \t"));
        const std::string word = take_marks(rest);
        const bool ditto = is_ditto(word);
        if (ditto && last_.empty())
            throw refused(word + " repeats a coupon, and none is named yet; write its mark");
        if (exam_named(word) && !knows_(word))
            throw refused("the coupon stands before its method, as in 'T-1 " + shown(trimmed(line)) + "'");
        if (const std::string mark = word.substr(0, word.size() - 1);
            !ditto && word.ends_with(':') && !knows_(word) && are_coupons(mark))
            throw refused("there is no coupon '" + shown(word) + "'; did you mean '" + shown(mark) +
                          "', with no sign behind it?");
        const auto marks = marks_in(ditto ? last_ : word);
        last_ = ditto ? last_ : word;
        std::vector<Exam> methods = methods_before(rest, head);
        const bool none = is_none(rest), incomplete = is_incomplete(rest);
        if (!none && !incomplete) check_meant(rest);
        if (methods.empty() && (none || incomplete || head.methods.size() == 1)) methods = head.methods;
        if (methods.empty()) {
            std::vector<std::string> either;
            for (const Exam one : head.methods)
                either.push_back("'" + shown(word) + " " + std::string(name_of(one)) + " " +
                                 shown(trimmed(rest)) + "'");
            throw refused("by which method? the head names " + methods_text(head) +
                          "; it stands behind the coupon: " + listed(either, "or"));
        }
        if (trimmed(rest).empty())
            throw refused("what did it find? expected a find such as 'pore 0.04 at 3', or none");
        if (!none && !incomplete && (marks.size() > 1 || methods.size() > 1))
            throw refused("a find is of one coupon and one method");
        for (const auto &mark : marks)
            for (const Exam method : methods)
                say(part_of(head, mark, number_).said[method], line, rest, none, incomplete);
    }
    /// Refuses what was meant as none or incomplete, and is written otherwise.
    static void check_meant(std::string_view rest) {
        const std::string_view said = trimmed(rest.substr(0, rest.find('#')));
        const std::string_view word = trimmed(said.substr(0, said.find_first_of(" \t:")));
        if (word.empty() || type_named(said, Vocabulary::shipped())) return;
        const auto refuse = [&](const std::string &meant) {
            return refused("'" + shown(said) + "' is no find; did you mean '" + meant + "'?");
        };
        if (reads_as_none(said))
            throw refused("'" + shown(said) + "' is no find; if none was found, write none");
        if (word.size() == said.size() && may_be_slip_of(word, "none")) throw refuse("none");
        if (may_be_slip_of(word, "incomplete"))
            throw refuse("incomplete: " + (said.find(':') == said.npos
                                               ? std::string("WHY")
                                               : shown(trimmed(said.substr(said.find(':') + 1)))));
    }
    /// Coupons with commas between, blanks about these or not.
    static std::string take_marks(std::string_view &rest) {
        std::string out(take_word(rest));
        while (!rest.empty() && (out.ends_with(',') || rest.front() == ',')) {
            std::string_view behind = rest;
            const std::string next(take_word(behind));
            if (exam_named(next) || is_none(rest) || is_incomplete(rest) || reads_as_find(rest)) break;
            out += next;
            rest = behind;
        }
        if (out.size() > 1 && out.ends_with(',')) out.pop_back();
        return out;
    }
    /// The methods that a line says, which are taken off it.
    static std::vector<Exam> methods_before(std::string_view &rest, const SheetHead &head) {
        std::vector<Exam> out;
        for (std::string_view next = rest; !next.empty();) {
            const auto method = exam_named(std::string(take_word(next)));
            if (!method) break;
            if (std::find(head.methods.begin(), head.methods.end(), *method) == head.methods.end())
                throw refused(std::string(name_of(*method)) + " is not of this head, which names " +
                              methods_text(head) + "; write a head that names it");
            out.push_back(*method);
            rest = next;
        }
        return out;
    }
    void say(SheetSaid &said, const std::string &line, std::string_view rest, bool none, bool incomplete) {
        if (!incomplete && (said.none || (none && !said.finds.empty())))
            throw refused("it is said to have found none, and here is a find or none again");
        if (none) {
            const std::string_view remark = rest.substr(std::min(rest.find('#'), rest.size()));
            if (const std::string why = not_behind_none(remark); !why.empty()) throw refused(why);
            said.none = true;
            said.remark = trimmed(remark.substr(std::min<std::size_t>(1, remark.size())));
        } else if (incomplete) {
            if (!said.incomplete.empty())
                throw refused("it is said already why it was not complete: " + shown(said.incomplete));
            said.incomplete = *incomplete_because(rest);
            if (!gives_reason(said.incomplete)) throw refused("why was it not complete? incomplete: WHY");
        } else {
            // Blanks before it keep the columns of mistakes right.
            said.finds.emplace_back(number_, std::string(line.size() - rest.size(), ' ') + std::string(rest));
        }
    }

    const KnowsCoupon &knows_;
    SheetFaults &faults_;
    int number_ = 0;
    std::string last_;
    bool unread_ = false; ///< whose exams the lines are of nobody knows, until the next head
};

} // namespace

void SheetFaults::add(int line, const std::string &what, const std::string &lacking, std::size_t column) {
    if (told_.emplace(line, std::to_string(column) + what).second)
        all_.push_back({line, column, what, lacking});
}

void SheetFaults::check() const {
    auto in_order = all_;
    std::stable_sort(in_order.begin(), in_order.end(), [](const Fault &a, const Fault &b) {
        return std::pair(a.line, a.column) < std::pair(b.line, b.column);
    });
    constexpr std::size_t most_shown = 40;
    Faults faults(most_shown);
    std::set<int> lines;
    for (const auto &one : in_order) {
        lines.insert(one.line);
        const std::string at = one.column > 0 ? ":" + std::to_string(one.column) : "";
        faults.add([&] { return sheet_ + ":" + std::to_string(one.line) + at; }, one.what, one.lacking);
    }
    faults.check(counted(lines.size(), "line") + " of the sheet");
}

std::vector<SheetHead> read_sheet(const SheetRequest &request, const KnowsCoupon &knows,
                                  SheetFaults &faults) {
    return std::move(Reader(request, knows, faults).heads);
}

} // namespace beadbook
