#pragma once

#include "operations/writing.hpp"
#include "web/bench.hpp"
#include "web/route.hpp"

#include <map>
#include <optional>

namespace beadbook {

/// A whole number from 1 that was sent. Throws DataError.
int whole_number_in(const std::string &text);

/// Whether a field is the answer to "is that meant?".
inline bool is_question(std::string_view field) { return field == "sure" || field == "again"; }

/// One request of somebody at the bench, and what answers it: the record is opened on first use, for this
/// request alone.
class Visit {
public:
    Visit(Bench &bench, const Request &request, BenchSession session,
          std::map<std::string, std::string> words)
        : request(request), bench_(bench), session_(std::move(session)), words_(std::move(words)) {}
    Visit(const Visit &) = delete;

    const Request &request;

    /// A word of the path by its name in the pattern.
    const std::string &word(const std::string &name) const { return words_.at(name); }
    /// A whole number of the path. Throws DataError.
    int number(const std::string &name) const { return whole_number_in(word(name)); }
    /// A field of the form, without blanks around it.
    std::string field(const std::string &name) const;
    bool ticked(const std::string &name) const { return !field(name).empty(); }
    /// Whether a question (field "sure", "again") was answered for these very words: the tick carries what
    /// they were when it was shown, so that a tick which stood since confirms nothing else.
    bool meant(const std::string &question) const { return field(question) == answer_to_questions(); }
    /// What such a tick is sent as.
    std::string answer_to_questions() const;
    bool writes() const { return request.method == "POST"; }

    /// Whether the path has a word of that name.
    bool has_word(const std::string &name) const { return words_.contains(name); }

    const std::string &person() const { return session_.person; }
    /// Who signed in; null at the bench of this machine.
    const SignedIn *account() const { return session_.account ? &*session_.account : nullptr; }
    /// Whether who is signed in may ask that way at all, though it be of what is his own alone.
    bool may(const std::string &method, const std::string &path) const;
    /// The page that this was asked on, else the one that it is of; the first page if it is none that may be
    /// looked at.
    std::string came_from() const;
    /// Sees only what is his own, these marks of a welder; null: sees all.
    const std::vector<std::string> *own() const { return own_ ? &*own_ : nullptr; }
    void only(std::vector<std::string> marks) { own_ = std::move(marks); }
    const std::string &token() const { return session_.token; }
    const std::string &session() const { return session_.id; }
    Bench &bench() { return bench_; }
    const Outside &outside() const { return bench_.world().outside; }
    Catalogue &catalogue() { return catalogue_; }
    /// The record, for reading; what is written goes through `enter`. Throws StoreError.
    Office &office();
    bool has_record() const;
    /// The record's head hash as it was when this visit opened it; empty before.
    const std::string &head() const { return head_; }
    /// This may be the first thing that is ever written: there need be no record yet.
    void may_begin_record() { begins_ = true; }

    /// Enters something in one transaction as the person at the bench: `work` takes a Writing and returns
    /// what to tell, a sentence each; it may be called twice (web/joined_writes.hpp). Then the browser goes
    /// on to `next` (read after `work`); a module gets the sentences at once. What is sent twice under one
    /// key is entered once.
    Answer enter(const std::string &next, const std::function<std::vector<std::string>(Writing &)> &work);
    /// A page says who sat here when it was opened ("sits"); what it sends goes under no other name. `enter`
    /// asks it; what writes beside the record asks it, too. Throws Refusal (field "sits").
    void must_sit_still() const;
    /// A form that holds all of something, and was opened before that was changed, would put back what it
    /// said then. Throws Refusal (field "seen"). `entry` is what stands now.
    void must_have_seen(std::int64_t entry, const std::string &what) const;
    /// The same for a page of many, which names the newest entry of all.
    void must_be_as_seen(std::int64_t entry, const std::string &what) const;
    /// Tells on the next page.
    void tell(std::vector<std::string> notes) { bench_.sessions().tell(session_.id, std::move(notes)); }
    std::vector<std::string> told() { return bench_.sessions().told(session_.id); }

private:
    /// What was entered, now or when it was sent before.
    struct Entered {
        std::string next;
        std::vector<std::string> notes;
        bool other_words = false; ///< nothing was: under the key other words were sent before
    };
    std::string key() const;
    std::string hash_of_sent() const;
    Entered enter_in(Office &office, const std::string &next,
                     const std::function<std::vector<std::string>(Writing &)> &work);

    Bench &bench_;
    BenchSession session_;
    std::map<std::string, std::string> words_;
    Catalogue catalogue_{bench_.world().outside};
    bool begins_ = false;
    std::optional<std::vector<std::string>> own_;
    std::optional<Book> book_;
    std::optional<Office> office_;
    std::string head_;
};

} // namespace beadbook
