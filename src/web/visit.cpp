#include "web/visit.hpp"

#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "operations/coupon_lines.hpp"
#include "web/page.hpp"
#include "web/roles.hpp"

#include <charconv>
#include <cstdlib>
#include <filesystem>

namespace beadbook {
namespace {

std::vector<std::string> split_lines(const std::string &text) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        out.push_back(text.substr(at, end - at));
        at = end + 1;
    }
    return out;
}

/// A picture, a part of a page, or a file to keep.
bool is_no_page(const std::string &pattern) {
    return pattern.ends_with("/:photo") || pattern.ends_with("/reading") || pattern == "/head" ||
           pattern == "/keeper/backup";
}

Refusal changed_since(const std::string &what) {
    return refused(what + " was changed after this page was opened; nothing is stored. Open the page again, "
                          "and look at what it says now")
        .at("seen");
}

} // namespace

int whole_number_in(const std::string &text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc() || end != text.data() + text.size() || value < 1)
        throw DataError("'" + shown(text) + "' is no number; expected a whole one from 1");
    return value;
}

std::string Visit::field(const std::string &name) const {
    return std::string(trimmed(request.form.text(name)));
}

bool Visit::has_record() const {
    std::error_code ignored;
    return std::filesystem::exists(bench_.world().book, ignored);
}

Office &Visit::office() {
    if (!office_) {
        book_.emplace(bench_.world().book,
                      begins_ && !has_record() ? Ledger::Mode::create : Ledger::Mode::read);
        office_.emplace(*book_, catalogue_);
        // Before anything is read: what comes in between is then shown twice, never missed.
        head_ = book_->ledger().head();
    }
    return *office_;
}

bool Visit::may(const std::string &method, const std::string &path) const {
    if (!account()) return true;
    const std::string asked = path.substr(0, path.find('?'));
    for (const auto &family : page_families())
        for (const auto &route : family.routes)
            if (route.method == method && words_by(route.pattern, asked))
                return access_to(method, route.pattern, account()->roles) != Access::none;
    return false;
}

std::string Visit::came_from() const {
    const auto is_page = [&](const std::string &path) {
        if (path.empty() || (path == request.path && !writes())) return false;
        for (const auto &family : page_families())
            for (const auto &route : family.routes)
                if (route.method == "GET" && !is_no_page(route.pattern) &&
                    words_by(route.pattern, path.substr(0, path.find('?'))))
                    return may("GET", path);
        return false;
    };
    if (const std::string from = bench_.page_in(request.from); is_page(from)) return from;
    if (!writes()) return "/";
    std::string path = request.path;
    while (!path.empty() && !is_page(path))
        path.resize(path.rfind('/') == std::string::npos ? 0 : path.rfind('/'));
    return path.empty() ? "/" : path;
}

std::string Visit::answer_to_questions() const {
    std::string all = request.path;
    for (const auto &[name, value] : request.form.pairs())
        if (!is_question(name) && name != "token" && name != "key") {
            // A browser sends the ends of lines in its own way.
            std::string words(trimmed(value));
            std::erase(words, '\r');
            all += "\n" + url_word(name) + "=" + url_word(words);
        }
    return sha256(all).substr(0, 32);
}

std::string Visit::key() const { return request.key.empty() ? field("key") : request.key; }

std::string Visit::hash_of_sent() const {
    std::string all = request.path;
    for (const auto &[name, value] : request.form.pairs())
        if (name != "token" && name != "key" && name != "sits")
            all += "\n" + url_word(name) + "=" + url_word(value);
    for (const auto &file : request.files) all += "\n" + file.field + " " + sha256(file.bytes);
    return sha256(all);
}

Visit::Entered Visit::enter_in(Office &office, const std::string &next,
                               const std::function<std::vector<std::string>(Writing &)> &work) {
    Writing writing(office, person(), account() ? Writing::Known::by_sign_in : Writing::Known::by_typed_name);
    const std::string key = this->key();
    if (const auto before = key.empty() ? std::nullopt : writing.ledger().sent(key)) {
        if (before->hash != hash_of_sent()) return {"", {}, true};
        auto lines = split_lines(before->answer);
        const std::string went = lines.front();
        lines.erase(lines.begin());
        return {went, std::move(lines)};
    }
    auto notes = carry_out(writing, work);
    if (!key.empty()) {
        std::string answer = next;
        for (const auto &note : notes) answer += "\n" + note;
        writing.ledger().keep_sent(key, {hash_of_sent(), answer});
    }
    commit(writing);
    return {next, std::move(notes)};
}

Answer Visit::enter(const std::string &next, const std::function<std::vector<std::string>(Writing &)> &work) {
    must_sit_still();
    Entered entered;
    bench_.joined_writes().enter({[&](Office &office) { entered = enter_in(office, next, work); }, begins_});
    if (entered.other_words)
        return bare_page(409, "Nothing was stored",
                         "This form was sent before with other words. Reload the page and enter it anew.");
    if (request.part) {
        Answer out{200};
        out.body = notes_html(entered.notes);
        return out;
    }
    tell(std::move(entered.notes));
    return see_other(entered.next);
}

void Visit::must_sit_still() const {
    const std::string then = field("sits");
    if (!request.form.has("sits") || then == trimmed(person())) return;
    throw refused((then.empty() ? "nobody" : then) + " sat here when this page was opened, and " +
                  (person().empty() ? "nobody does" : person() + " sits here") +
                  " now; nothing is stored, so that nothing goes under another name than the page showed. " +
                  (then.empty() ? "" : "If it is entered by " + then + ", sit down as " + then + " first. ") +
                  (person().empty() ? "" : "If it is entered by " + person() + ", send it again"))
        .at("sits");
}

void Visit::must_have_seen(std::int64_t entry, const std::string &what) const {
    if (request.form.has("seen") && field("seen") != std::to_string(entry)) throw changed_since(what);
}

void Visit::must_be_as_seen(std::int64_t entry, const std::string &what) const {
    if (request.form.has("seen") && std::strtoll(field("seen").c_str(), nullptr, 10) < entry)
        throw changed_since(what);
}

} // namespace beadbook
