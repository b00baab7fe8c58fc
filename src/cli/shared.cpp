#include "cli/shared.hpp"

#include "criteria/shipped.hpp"
#include "measure/text.hpp"

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <fstream>
#include <pwd.h>
#include <unistd.h>

namespace beadbook {

std::string book_path(const Args &args, const Session &session) {
    if (args.has("book")) return args.text("book");
    if (const auto set = session.environment("BEADBOOK_BOOK"); !set.empty()) return set;
    std::string data = session.environment("XDG_DATA_HOME");
    if (data.empty()) {
        const std::string home = session.environment("HOME");
        if (home.empty()) throw StoreError("where is the record? give --book FILE or set BEADBOOK_BOOK");
        data = home + "/.local/share";
    }
    return data + "/beadbook/book.db";
}

Book open_book(const Args &args, const Session &session, Ledger::Mode mode) {
    return {book_path(args, session), mode};
}

Stamp stamp_of(const Args &args, const Session &session) {
    std::string who = args.text("by");
    if (who.empty()) who = session.environment("BEADBOOK_USER");
    if (who.empty())
        if (const passwd *entry = getpwuid(getuid())) who = entry->pw_name;
    return {session.now(), who};
}

Option by_option() { return {"by", "NAME", "who does this (else BEADBOOK_USER, else your login)"}; }
Option json_option() { return {"json", "", "print JSON for programs"}; }
Option why_option() { return {"why", "TEXT", "the reason; it is kept with the old entry"}; }

bool criteria_is_file(const std::string &name) {
    return name.find('/') != std::string::npos || name.ends_with(".yaml");
}

namespace {

[[noreturn]] void refuse_file(std::string_view what, const std::string &name, const std::string &text,
                              const std::vector<Issue> &issues) {
    std::string all;
    for (const auto &issue : issues)
        if (issue.severity == Severity::error) all += "\n" + print(issue, name, text);
    throw DataError("the " + std::string(what) + " has mistakes:" + all.substr(0, all.size() - 1));
}

bool holds_word(const std::vector<std::string> &words, const std::string &word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

} // namespace

std::shared_ptr<const CriteriaSet> open_criteria(const std::string &name) {
    if (!criteria_is_file(name)) {
        const auto shipped = shipped_sets();
        if (holds_word(shipped, name)) return shipped_criteria(name);
        throw DataError("there is no criteria set '" + shown(name) + "'" + did_you_mean(name, shipped) +
                        " ('criteria list' shows all; a file of your own ends in .yaml)");
    }
    const std::string text = read_file(name);
    Loaded loaded = load_criteria(text);
    if (!loaded.set) refuse_file("criteria file", name, text, loaded.issues);
    return loaded.set;
}

std::shared_ptr<const RangeRules> open_range_rules(const std::string &name) {
    if (!criteria_is_file(name)) {
        const auto shipped = shipped_range_rule_names();
        if (holds_word(shipped, name)) return shipped_range_rules(name);
        throw DataError("there are no rules '" + shown(name) + "'; expected " + listed(shipped, "or") +
                        did_you_mean(name, shipped) + ", or a file of your own that ends in .yaml");
    }
    const std::string text = read_file(name);
    LoadedRules loaded = load_range_rules(text);
    if (!loaded.rules) refuse_file("rules file", name, text, loaded.issues);
    return loaded.rules;
}

std::shared_ptr<const Practice> open_practice(const std::string &name) {
    if (!criteria_is_file(name)) {
        const auto shipped = shipped_practice_names();
        if (holds_word(shipped, name)) return shipped_practice(name);
        throw DataError("there is no practice '" + shown(name) + "'" + did_you_mean(name, shipped) +
                        " ('practice list' shows all; a file of your own ends in .yaml)");
    }
    const std::string text = read_file(name);
    LoadedPractice loaded = load_practice(text);
    if (!loaded.practice) refuse_file("practice file", name, text, loaded.issues);
    return loaded.practice;
}

std::shared_ptr<const RangeRules> needed_rules(const Args &args) {
    if (!args.has("rules"))
        throw UsageError("by which rules? give --rules " + listed(shipped_range_rule_names(), "or"));
    return open_range_rules(args.text("rules"));
}

Work open_work(const std::string &path, const std::string &rules, Session &session) {
    const std::string text = read_input(path, session);
    // Files that it names are looked for beside it.
    const auto beside = [&](const std::string &name) {
        const std::filesystem::path file(name);
        if (!criteria_is_file(name) || file.is_absolute() || path == "-") return name;
        return (std::filesystem::path(path).parent_path() / file).lexically_normal().string();
    };
    const auto open = [&](const std::string &name) {
        return open_range_rules(rules.empty() ? beside(name) : name);
    };
    LoadedWork loaded = load_work(text, rules, open);
    if (!loaded.work) refuse_file("work file", path, text, loaded.issues);
    loaded.work->criteria = beside(loaded.work->criteria);
    return std::move(*loaded.work);
}

Day day_of(const Args &args, const Session &session, const std::string &option) {
    return args.has(option) ? parse_day(args.text(option)) : session.today();
}

std::vector<Option> coupon_field_options() {
    std::vector<Option> out;
    for (const auto &field : coupon_fields()) out.push_back({field.name, "VALUE", field.help});
    return out;
}

void take_coupon_fields(CouponRecord &coupon, const Args &args) {
    // `units` stands first, because the others are read in it.
    for (const auto &field : coupon_fields())
        if (args.has(field.name)) coupon.set(field.name, args.text(field.name));
}

std::shared_ptr<const CriteriaSet> CriteriaShelf::take(const std::string &name) {
    auto &set = sets_[name];
    if (!set) set = open_criteria(name);
    return set;
}

std::shared_ptr<const CriteriaSet> CriteriaShelf::of(const Args &args, const CouponState &coupon) {
    const std::string name = args.text("criteria", coupon.record.get("criteria"));
    if (name.empty())
        throw DataError("coupon " + coupon.record.id +
                        " names no criteria; give --criteria SET, or 'change " + coupon.record.id +
                        " --criteria SET --why \"...\"'");
    return take(name);
}

std::optional<std::size_t> class_of(const Args &args, const CouponState &coupon, const CriteriaSet &set) {
    const std::string name = args.text("class", coupon.record.get("class"));
    const auto index = set.class_index(name);
    if (index) return index;
    // The coupon's class is one of its own set; another set need not have it.
    const bool of_another_set = args.has("criteria") && !args.has("class");
    if (!name.empty() && !of_another_set)
        throw DataError("criteria " + set.name + " have no class '" + shown(name) + "'; they have " +
                        listed(set.class_names()));
    return set.classes.size() == 1 ? std::optional<std::size_t>(0) : std::nullopt;
}

Judged judge_coupon(const CouponState &state, std::shared_ptr<const CriteriaSet> set) {
    Judged out;
    out.set = std::move(set);
    out.coupon = state.record.facts();
    out.exams = state.exams_done();
    out.indications = state.found();
    out.unit = state.record.unit();
    out.judgement = judge(*out.set, out.coupon, out.exams, out.indications);
    return out;
}

ExitCode code_of(const Judgement &judgement, std::optional<std::size_t> class_index) {
    Verdict best = Verdict::reject;
    for (const auto &c : judgement.classes) best = std::min(best, c.verdict);
    const Verdict v = class_index ? judgement.classes[*class_index].verdict : best;
    return v == Verdict::accept   ? ExitCode::done
           : v == Verdict::reject ? ExitCode::rejected
                                  : ExitCode::cannot_say;
}

namespace {

std::string read_text(std::istream &in, const std::string &name) {
    constexpr std::size_t most = std::size_t{64} << 20;
    std::string text;
    std::vector<char> block(std::size_t{1} << 16);
    while (in.read(block.data(), static_cast<std::streamsize>(block.size())) || in.gcount() > 0) {
        text.append(block.data(), static_cast<std::size_t>(in.gcount()));
        if (text.size() > most) throw DataError(shown(name) + ": larger than 64 MiB");
    }
    if (!valid_utf8(text)) throw DataError(shown(name) + ": not UTF-8 text");
    return text;
}

} // namespace

std::string read_file(const std::string &path) {
    std::error_code ignored;
    if (std::filesystem::is_directory(path, ignored))
        throw DataError(shown(path) + ": this is a folder, not a file");
    std::ifstream file(path, std::ios::binary);
    if (!file) throw DataError(shown(path) + ": cannot be read");
    return read_text(file, path);
}

std::string read_input(const std::string &path, Session &session) {
    return path == "-" ? read_text(session.in, path) : read_file(path);
}

int whole_number(const std::string &text, std::string_view what) {
    const std::string_view digits = text.starts_with("#") ? std::string_view(text).substr(1) : text;
    int value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (error != std::errc() || end != digits.data() + digits.size() || value < 1)
        throw UsageError("'" + shown(text) + "' is no " + std::string(what) +
                         "; expected a whole number such as 3");
    return value;
}

} // namespace beadbook
