#include "terminal/call.hpp"

#include "facts/coupon_record.hpp"
#include "measure/text.hpp"
#include "operations/outside_solver.hpp"
#include "records/files.hpp"
#include "records/record_file.hpp"

#include <charconv>
#include <filesystem>
#include <pwd.h>
#include <unistd.h>

namespace beadbook {
namespace {

bool names_book(const Args &args, const Session &session) {
    return args.has("book") || !session.environment("BEADBOOK_BOOK").empty();
}

/// 0 where they cannot be counted, as in a record that was changed: then that is told instead.
std::size_t coupons_in(Office &office) {
    try {
        return office.book().coupons().size();
    } catch (const Refusal &) {
        return 0;
    }
}

Refusal only_read(const std::string &folder, const ShopCopy &first) {
    return refused(
        visible(folder) +
        ": this folder joins the records of several shops to be read: coupons, summary, export and verify go "
        "through it. For anything else name one of them, such as " +
        visible(first.path) + "; what is entered goes into the shop's own record");
}

} // namespace

Call::Call(Args args, Session &session)
    : args_(std::move(args)),
      session_(session), outside_{session.now, session.today,
                                  [](const std::string &path) { return read_file(path); },
                                  [](const std::string &path) {
                                      return std::filesystem::absolute(path).lexically_normal().string();
                                  },
                                  outside_solver(session.environment("BEADBOOK_SOLVER"))} {}

std::optional<std::string> Call::text_if_given(const std::string &option) const {
    return has(option) ? std::optional(text(option)) : std::nullopt;
}

std::optional<Day> Call::day(const std::string &option) const {
    if (!has(option)) return std::nullopt;
    try {
        return parse_day(text(option));
    } catch (const InputError &e) {
        throw refused("--" + option + ": " + e.what()).at(option);
    }
}

int Call::number(const std::string &option, std::string_view what, int otherwise) const {
    return has(option) ? whole_number(text(option), what) : otherwise;
}

int Call::days(int otherwise) const {
    return text("days") == "0" ? 0 : number("days", "number of days", otherwise);
}

std::map<std::string, std::string> Call::coupon_fields() const {
    std::map<std::string, std::string> out;
    for (const auto &field : beadbook::coupon_fields())
        if (has(field.name)) out[field.name] = text(field.name);
    return out;
}

std::set<std::string> Call::coupon_fields_by_settings() const {
    std::set<std::string> out;
    for (const auto &[option, value] : args_.filled_in())
        if (coupon_field(option)) out.insert(option);
    return out;
}

std::vector<std::string> Call::notes_on_settings() const {
    std::vector<std::string> from;
    for (const auto &[option, value] : args_.filled_in())
        if (coupon_field(option)) from.push_back(option + " " + value);
    return from.empty() ? from : std::vector<std::string>{"from the settings: " + listed(from)};
}

Source Call::source(const std::string &word) const {
    if (word != "-") return {word};
    return {word, input(word)};
}

std::string Call::input(const std::string &path) const {
    return path == "-" ? read_text(session_.in, path) : read_file(path);
}

Call::~Call() {
    // Also where the command failed: an empty record stands there now, perhaps by a slip in its name.
    if (!begun_.empty() && !has("quiet")) session_.err << "beadbook: note: " << begun_ << "\n";
}

Office &Call::office(Ledger::Mode mode) {
    if (!office_) {
        std::string path = book_path(args_, session_);
        if (const auto copies = shop_copies(path); !copies.empty()) throw only_read(path, copies.front());
        if (has("dry-run") && mode == Ledger::Mode::create && !record_file::there(path)) {
            path = trial_.emplace("a dry run").file("book.db");
        }
        if (mode == Ledger::Mode::create && !names_book(args_, session_)) {
            std::error_code ignored; // the user's own folder of data; a folder that is named must be there
            std::filesystem::create_directories(std::filesystem::path(path).parent_path(), ignored);
        }
        book_.emplace(path, mode);
        if (book_->ledger().began() && !trial_) begun_ = "a new record begins: " + visible(path);
        office_.emplace(*book_, catalogue_);
    }
    return *office_;
}

Office &Call::whole_office(Ledger::Mode mode) {
    Office &out = office(mode);
    whole_shops();
    return out;
}

Shops Call::shops() {
    if (office_) return *office_;
    if (shops_.empty())
        for (const auto &copy : shop_copies(book_path(args_, session_)))
            shops_.emplace_back(copy, catalogue_);
    if (shops_.empty()) return office();
    std::vector<Shops::Shop> out;
    for (auto &shop : shops_) out.push_back({shop.name, &shop.office});
    return Shops(std::move(out));
}

bool Call::joins_shops() const { return !shop_copies(book_path(args_, session_)).empty(); }

Shops Call::whole_shops() {
    Shops out = shops();
    if (session_.many == Session::no_number) return out;
    std::size_t coupons = 0;
    for (const auto &shop : out.all()) coupons += coupons_in(*shop.office);
    if (coupons >= session_.many)
        session_.err << "beadbook: going through " << counted(coupons, "coupon") << " ...\n" << std::flush;
    return out;
}

bool Call::has_record() const {
    if (office_ || has("book")) return true;
    try {
        return record_file::there(book_path(args_, session_));
    } catch (const StoreError &) {
        return false; // there is no place where it could be
    }
}

std::string Call::actor() const {
    if (has("by")) return text("by");
    if (const std::string user = session_.environment("BEADBOOK_USER"); !user.empty()) return user;
    const passwd *entry = getpwuid(getuid());
    return entry ? entry->pw_name : "";
}

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
