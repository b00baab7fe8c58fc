#pragma once

#include "criteria/vocabulary.hpp"
#include "measure/text.hpp"
#include "operations/coupon_lines.hpp"
#include "operations/done.hpp"
#include "operations/shops.hpp"
#include "operations/source.hpp"
#include "records/private_folder.hpp"
#include "records/shop_copies.hpp"
#include "render/text.hpp"
#include "terminal/exit_code.hpp"
#include "terminal/options.hpp"
#include "terminal/session.hpp"

#include <deque>
#include <map>
#include <optional>
#include <set>

namespace beadbook {

/// One call of a command: its words, and what it works with. The record that --book names is opened on first
/// use.
class Call {
public:
    Call(Args args, Session &session);
    ~Call();
    Call(const Call &) = delete;

    // The words.
    const Args &args() const { return args_; }
    const std::vector<std::string> &words() const { return args_.positional(); }
    const std::string &at(std::size_t i) const { return args_.at(i); }
    bool has(const std::string &option) const { return args_.has(option); }
    std::string text(const std::string &option, const std::string &otherwise = "") const {
        return args_.text(option, otherwise);
    }
    std::vector<std::string> all(const std::string &option) const { return args_.all(option); }
    bool json() const { return args_.has("json"); }
    /// The text that an option gives, if it does; also an empty one.
    std::optional<std::string> text_if_given(const std::string &option) const;
    /// The day that an option gives, if it does. Throws InputError.
    std::optional<Day> day(const std::string &option) const;
    /// The whole number that an option gives. Throws UsageError.
    int number(const std::string &option, std::string_view what, int otherwise = 0) const;
    /// The number of days that --days gives; 0: today alone. Throws UsageError.
    int days(int otherwise) const;
    /// Fields of a coupon that the call gives.
    std::map<std::string, std::string> coupon_fields() const;
    /// Of these the names that only the settings filled in, and that it was they.
    std::set<std::string> coupon_fields_by_settings() const;
    std::vector<std::string> notes_on_settings() const;
    /// What a word names: a file, or the text of standard input for "-".
    Source source(const std::string &word) const;
    /// A whole file, or standard input for "-". Throws DataError as read_file does.
    std::string input(const std::string &path) const;

    // The world.
    Session &session() { return session_; }
    Catalogue &catalogue() { return catalogue_; }
    /// The record for reading; `mode` where a command means to write later. The first call opens it.
    Office &office(Ledger::Mode mode = Ledger::Mode::read);
    /// The same for a command that goes through all coupons: who watches a terminal is told of the wait.
    Office &whole_office(Ledger::Mode mode = Ledger::Mode::read);
    /// The record, or those of several shops where a folder joins them; for what goes through coupons.
    Shops shops();
    Shops whole_shops(); ///< as whole_office
    bool joins_shops() const;
    /// Whether the record that is meant is there, for what can be shown without one.
    bool has_record() const;
    /// Who acts: --by, else BEADBOOK_USER, else the login name.
    std::string actor() const;

    /// Runs an operation in one transaction and commits it.
    template <class Work>
    auto write(Work work, Ledger::Mode mode = Ledger::Mode::write) {
        Writing writing(office(mode), actor());
        if (has("dry-run")) return work(writing);
        auto out = carry_out(writing, work);
        commit(writing);
        session_.stored = true;
        return out;
    }

    /// Prints a result: as text made from its document, or as JSON; doubts go to the error stream, and into
    /// the JSON. `document_of` and `json_text` of the result's family must be included.
    template <class Result>
    ExitCode tell(const Result &result, const std::vector<std::string> &notes = {}) {
        auto all = notes;
        if (!begun_.empty()) all.insert(all.begin(), std::exchange(begun_, {}));
        if (has("dry-run")) all.push_back("nothing was stored: --dry-run");
        say(all);
        if (json())
            session_.out << json_text(result, all);
        else
            session_.print((has("dry-run") ? "it would be so (--dry-run):\n" : "") +
                           beadbook::text(document_of(result), session_.paint(), session_.width));
        return ExitCode::done;
    }
    /// Notes on the error stream, unless it is to be quiet.
    void say(const std::vector<std::string> &notes) const {
        if (!has("quiet"))
            for (const auto &note : notes) session_.err << "beadbook: note: " << visible(note) << "\n";
    }
    template <class T>
    ExitCode tell(const Done<T> &done) {
        return tell(done.value, done.notes);
    }

private:
    Args args_;
    Session &session_;
    Outside outside_;
    Catalogue catalogue_{outside_};
    std::optional<PrivateFolder> trial_; ///< folder of a record that a dry run would begin
    std::string begun_;                  ///< that a new record was begun, until it is told
    std::optional<Book> book_;
    std::optional<Office> office_;
    /// One of several, and what its office needs.
    struct OpenShop {
        OpenShop(const ShopCopy &copy, Catalogue &catalogue)
            : name(copy.shop), book(copy.path, Ledger::Mode::read), office(book, catalogue) {}
        std::string name;
        Book book;
        Office office;
    };
    std::deque<OpenShop> shops_;
};

/// A result under the name by which it is told; what is told before it comes first.
template <class Named, class T, class... Before>
Done<Named> as(Done<T> done, const Before &...before) {
    return {Named{before..., std::move(done.value)}, std::move(done.notes)};
}

/// --book, else BEADBOOK_BOOK, else beadbook/book.db in the user's data folder.
std::string book_path(const Args &args, const Session &session);

/// A whole number from 1, also written #3. Throws UsageError.
int whole_number(const std::string &text, std::string_view what);

} // namespace beadbook
