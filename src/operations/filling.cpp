// What a shop enters from its own copy: confirmations and fillings.
#include "criteria/class_order.hpp"
#include "criteria/doubts.hpp"
#include "facts/name_likeness.hpp"
#include "facts/person_name.hpp"
#include "measure/parse.hpp"
#include "measure/print.hpp"
#include "measure/text.hpp"
#include "operations/copy_edition.hpp"
#include "operations/owners_copy.hpp"
#include "operations/vouching.hpp"
#include "operations/welder_names.hpp"
#include "records/codecs/owners_copy.hpp"

#include <algorithm>
#include <set>

namespace beadbook {
namespace {

std::string short_text(const std::string &given, const char *field, const std::string &asked) {
    std::string out = checked_text(given, field);
    if (out.empty()) throw lacking(field, asked);
    if (out.size() > 120) throw refused("the " + std::string(field) + " is longer than 120 bytes").at(field);
    return out;
}

/// Two signatures are of two people: a welder's mark hides who it is.
void check_is_no_mark(Office &office, const std::string &who, const char *field) {
    if (const std::string name = welder_name(office.book(), who); !name.empty())
        throw refused("'" + shown(who) + "' is the mark of welder " + shown(name) +
                      "; who reads the copy is named in full")
            .at(field);
}

/// One letter apart: as with examiners, that is asked about.
void ask_whether_another(const std::string &first, const std::string &second, bool sure) {
    if (!sure && may_be_misspelt(first, second))
        throw Unsure("is that meant? '" + shown(second) + "' is nearly '" + shown(first) +
                     "', and two people are to read the copy; is it another person?");
}

/// Who read it where, and who countersigns.
CopyRead read_of(Writing &writing, const std::string &copy, const std::string &page,
                 const std::string &second, bool sure) {
    CopyRead out;
    out.copy = short_text(copy, "edition", "which edition of the printed standard is the copy?");
    out.page = short_text(page, "page", "on which page of the copy does it stand?");
    out.by = writing.stamp().who;
    out.second = checked_text(second, "second");
    out.on = writing.outside().today();
    check_is_no_mark(writing.office(), out.by, "by");
    check_is_no_mark(writing.office(), out.second, "second");
    check_vouches(writing.office(), out.by, "", "reads the copy");
    check_no_fellow(writing.office(), out.by, "reads the copy", "by");
    if (out.second.empty()) return out;
    check_vouches(writing.office(), out.second, "", "is the second who reads it", "second");
    check_no_fellow(writing.office(), out.second, "is the second who reads it", "second");
    if (may_be_same_person(out.by, out.second))
        throw refused(
            "'" + shown(out.second) + "' " +
            (same_person(out.by, out.second) ? "is the person" : "may be '" + shown(out.by) + "',") +
            " who enters it; a second, different one is asked" +
            (same_person(out.by, out.second) ? "" : ", with both names written in full"))
            .at("second");
    ask_whether_another(out.by, out.second, sure);
    return out;
}

/// The classes that are meant, of those that can be.
std::vector<std::string> classes_meant(const CriteriaSet &set, const std::vector<std::string> &asked,
                                       const std::vector<std::string> &possible, const std::string &what) {
    std::vector<std::string> out;
    for (const auto &id : asked) {
        if (!set.class_index(id))
            throw refused("criteria " + set.name + " have no class '" + shown(id) + "'; they have " +
                          listed(set.class_names()) + did_you_mean(id, set.class_names()))
                .at("class");
        if (std::find(possible.begin(), possible.end(), id) == possible.end())
            throw refused(what + " says nothing for class " + id).at("class");
        if (std::find(out.begin(), out.end(), id) == out.end()) out.push_back(id);
    }
    return out;
}

/// The entry that stands for the same part and class, if there is one.
template <class List, class Same>
auto standing_in(const List &list, Same same) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const auto &one) { return same(one.record); });
    return found == list.end() ? nullptr : &*found;
}

class Confirming {
public:
    Confirming(Writing &writing, const ConfirmRequest &request)
        : writing_(writing), request_(request), set_(writing.catalogue().criteria(request.criteria)),
          entered_(writing.book().owners_copy(set_->name)) {}

    Confirmed all() {
        Confirmed out{set_->name, set_->edition, request_.part, {}};
        const auto rule = std::find_if(set_->rules.begin(), set_->rules.end(),
                                       [&](const Rule &r) { return r.id == request_.part; });
        const CopyRead read = read_of(writing_, request_.copy, request_.page, request_.second, request_.sure);
        check_edition(*set_, read.copy);
        writing_.ledger().keep_criteria(set_->hash, set_->name, set_->text);
        if (rule == set_->rules.end()) {
            check_other_part();
            out.confirmations.push_back(one(read, ""));
            return out;
        }
        std::vector<std::string> possible;
        for (std::size_t c = 0; c < set_->classes.size(); ++c) {
            const Limit::Kind kind = rule->limits[c].kind;
            if (kind != Limit::Kind::not_said && kind != Limit::Kind::other)
                possible.push_back(set_->classes[c].id);
        }
        auto classes = classes_meant(*set_, request_.classes, possible, "rule " + rule->id);
        if (classes.empty()) classes = possible;
        for (const auto &id : classes) {
            if (const auto open = set_->blanks_of(*rule, *set_->class_index(id)); !open.empty())
                throw refused("the limit of rule " + rule->id + " for class " + id + " is blank " +
                              set_->blanks[open.front()].id + ": it is filled, not confirmed")
                    .at("rule");
            out.confirmations.push_back(one(read, id));
        }
        return out;
    }

private:
    void check_other_part() {
        std::vector<std::string> ids;
        const auto add = [&](const auto &list) {
            for (const auto &part : list) ids.push_back(part.id);
        };
        add(set_->rules);
        add(set_->scope);
        add(set_->relevance);
        add(set_->merges);
        add(set_->required);
        if (std::find(ids.begin(), ids.end(), request_.part) == ids.end())
            throw refused("criteria " + set_->name + " have no rule or clause '" + shown(request_.part) +
                          "'" + did_you_mean(request_.part, ids))
                .at("rule");
        if (!request_.classes.empty())
            throw refused("'" + request_.part + "' is one for all classes").at("class");
    }

    ConfirmationRecord one(CopyRead read, const std::string &class_id) {
        ConfirmationRecord now{set_->name, set_->edition, set_->hash, request_.part, class_id, read};
        const auto *was = standing_in(entered_.confirmations, [&](const ConfirmationRecord &r) {
            return r.part == request_.part && r.class_id == class_id;
        });
        std::string reason;
        if (was) {
            const CopyRead &before = was->record.read;
            const bool same_place =
                was->record.hash == set_->hash && before.copy == read.copy && before.page == read.page;
            if (same_place && before.second.empty() && read.second.empty() &&
                !may_be_same_person(before.by, read.by)) {
                ask_whether_another(before.by, read.by, request_.sure);
                now.read.second = read.by;
                now.read.by = before.by;
                reason = "countersigned";
            } else if (same_place && may_be_same_person(before.by, read.by) && before.second == read.second) {
                throw refused("rule " + request_.part + (class_id.empty() ? "" : " of class " + class_id) +
                              " is confirmed so already; this changes nothing");
            } else {
                reason = needed_reason(was->record.hash != set_->hash && request_.why.empty()
                                           ? "the text of the set is another one"
                                           : request_.why);
            }
        }
        Entry entry = codec::entry_of(now);
        if (was) {
            entry.supersedes = was->seq;
            entry.reason = std::move(reason);
        }
        writing_.add(std::move(entry));
        return now;
    }

    Writing &writing_;
    const ConfirmRequest &request_;
    std::shared_ptr<const CriteriaSet> set_;
    OwnersCopyState entered_;
};

const Blank &needed_blank(const CriteriaSet &set, const std::string &id) {
    if (const Blank *blank = set.blank(id)) return *blank;
    std::vector<std::string> ids;
    for (const auto &one : set.blanks) ids.push_back(one.id);
    throw refused("criteria " + set.name +
                  (ids.empty() ? " leave nothing blank"
                               : " have no blank '" + shown(id) + "'; they have " + listed(ids) +
                                     did_you_mean(id, ids)))
        .at("blank");
}

std::vector<std::string> classes_of(const CriteriaSet &set, const Blank &blank) {
    std::vector<std::string> out;
    for (std::size_t c = 0; c < set.classes.size(); ++c)
        if (blank.classes[c]) out.push_back(set.classes[c].id);
    return out;
}

Exact value_of(const Blank &blank, const CriteriaSet &set, const std::string &typed) {
    if (trimmed(typed).empty()) throw lacking("value", "what stands in the copy?");
    try {
        // A bare length could be read in either unit, and nobody sees the slip later.
        const Exact value = parse_measured(typed, blank.dimension(), std::nullopt).value;
        if (const std::string fault = blank.fault_of(value, set.unit); !fault.empty())
            throw refused(fault).at("value");
        return value;
    } catch (const InputError &e) {
        throw refused("blank " + blank.id + " is a " + std::string(name_of(blank.kind)) + ": " + e.what())
            .at("value");
    }
}

/// Numbers by which a stricter class lets more through than a looser one were taken from the wrong columns.
void check_columns(const CriteriaSet &filled, const std::string &blank) {
    if (!filled.ordered) return;
    Issues issues;
    Doubts doubts(filled, issues);
    check_order(filled, issues, doubts);
    for (const auto &issue : issues.all())
        if (issue.severity == Severity::error)
            throw refused("with this number of blank " + blank + " " +
                          issue.text.substr(0, issue.text.find(';')) +
                          "; are two columns of the copy exchanged?")
                .at("value");
}

std::set<std::string> beliefs_of(const CriteriaSet &set) {
    Issues issues;
    Doubts doubts(set, issues);
    check_belief(set, doubts);
    std::set<std::string> out;
    for (const auto &issue : issues.all())
        out.insert("rule " + issue.path.substr(issue.path.find('.') + 1) + ": " + issue.text);
    return out;
}

/// A number by which a limit comes to more than its wall or its window lets everything through.
void check_believed(const CriteriaSet &set, const CriteriaSet &filled, const std::string &blank) {
    const auto before = beliefs_of(set);
    for (const auto &one : beliefs_of(filled))
        if (!before.contains(one))
            throw refused("with this number of blank " + blank + ", " + one +
                          "; is it of the right line of the copy, and in its unit?")
                .at("value");
}

/// Rules whose limit, with this number, lies under what the set's relevance leaves out.
std::vector<std::string> left_out_by_relevance(const CriteriaSet &set, const CriteriaSet &filled,
                                               const std::string &blank) {
    Issues issues;
    Doubts before(set, issues), now(filled, issues);
    check_relevance(set, Vocabulary::shipped(), before);
    check_relevance(filled, Vocabulary::shipped(), now);
    std::vector<std::string> out;
    for (const auto &rule : filled.rules)
        if (now.told("relevance-over-limit", rule.id) && !before.told("relevance-over-limit", rule.id))
            out.push_back(
                "with this number of blank " + blank + ", the limit of rule " + rule.id +
                " lies under what the set's relevance leaves out, so what is over it may not count");
    return out;
}

} // namespace

Done<Confirmed> confirm_limit(Writing &writing, const ConfirmRequest &request) {
    return {Confirming(writing, request).all(), {}};
}

Done<Filled> fill_blank(Writing &writing, const FillRequest &request) {
    const auto set = writing.catalogue().criteria(request.criteria);
    const Blank &blank = needed_blank(*set, request.blank);
    const auto possible = classes_of(*set, blank);
    auto classes = classes_meant(*set, request.classes, possible, "blank " + blank.id);
    if (possible.empty()) throw refused("no limit hangs on blank " + blank.id).at("blank");
    if (classes.empty() && possible.size() > 1)
        throw lacking("class", "for which class? blank " + blank.id + " is one number for each of " +
                                   listed(possible));
    if (classes.empty()) classes = possible;
    const Exact value = value_of(blank, *set, request.value);
    const CopyRead read = read_of(writing, request.copy, request.page, request.second, request.sure);
    check_edition(*set, read.copy);
    if (read.second.empty())
        throw lacking("second", "a blank is filled by two people; who else read the number in the copy?");
    const OwnersCopyState entered = writing.book().owners_copy(set->name);
    writing.ledger().keep_criteria(set->hash, set->name, set->text);
    Filled out{set->name, set->edition, blank.id, blank.limits, {}, {}};
    for (const auto &id : classes) {
        FillingRecord now{set->name,
                          set->edition,
                          blank.id,
                          blank.clause,
                          std::string(name_of(blank.kind)),
                          id,
                          declared_words(blank),
                          blank.use,
                          std::string(trimmed(request.value)),
                          value,
                          read};
        const auto *was = standing_in(entered.fillings, [&](const FillingRecord &r) {
            return r.blank == blank.id && r.class_id == id;
        });
        Entry entry = codec::entry_of(now);
        if (was) {
            FillingRecord before = was->record;
            before.read.on = now.read.on;
            if (before == now)
                throw refused("blank " + blank.id + " of class " + id +
                              " is filled so already; this changes nothing");
            entry.supersedes = was->seq;
            const std::string fell = why_it_fell(was->record, *set);
            entry.reason = needed_reason(request.why.empty() ? fell : request.why);
        }
        writing.add(std::move(entry));
        out.fillings.push_back(std::move(now));
    }
    const OwnersCopyState after = writing.book().owners_copy(set->name);
    const OwnersCopy bearing = copy_that_bears(after, *set);
    for (const auto &id : possible)
        if (std::none_of(bearing.fillings.begin(), bearing.fillings.end(),
                         [&](const Filling &f) { return f.blank == blank.id && f.class_id == id; }))
            out.still_open.push_back(id);
    const auto filled = with_owners_copy(set, bearing);
    check_believed(*set, *filled, blank.id);
    check_columns(*filled, blank.id);
    auto notes = other_editions(after, *set, read.copy);
    for (auto &note : left_out_by_relevance(*set, *filled, blank.id)) notes.push_back(std::move(note));
    return {std::move(out), std::move(notes)};
}

Done<CopyRetracted> retract_copy(Writing &writing, const RetractCopyRequest &request) {
    // By the name alone, so that what was said of a file that is gone can be taken back too.
    const bool known_file = means_file(request.criteria);
    const std::string set =
        known_file ? writing.catalogue().criteria(request.criteria)->name : request.criteria;
    const OwnersCopyState entered = writing.book().owners_copy(set);
    CopyRetracted out{set, request.part, false, {}};
    std::vector<std::int64_t> entries;
    const auto take = [&](const auto &list, const std::string &class_id, const std::string &part,
                          std::int64_t seq, bool blank) {
        const bool meant = list.empty() || std::find(list.begin(), list.end(), class_id) != list.end();
        if (part != request.part || !meant) return;
        entries.push_back(seq);
        out.blank = blank;
        if (!class_id.empty()) out.classes.push_back(class_id);
    };
    for (const auto &one : entered.fillings)
        take(request.classes, one.record.class_id, one.record.blank, one.seq, true);
    if (entries.empty())
        for (const auto &one : entered.confirmations)
            take(request.classes, one.record.class_id, one.record.part, one.seq, false);
    if (entries.empty())
        throw refused("nothing of '" + shown(request.part) + "'" +
                      (request.classes.empty() ? "" : " for class " + listed(request.classes)) +
                      " is filled or confirmed in criteria " + shown(set))
            .at("rule");
    for (const std::int64_t seq : entries)
        writing.add(
            withdrawal_of(seq, out.blank ? "filling" : "confirmation", set, std::nullopt, request.why));
    return {std::move(out), {}};
}

} // namespace beadbook
