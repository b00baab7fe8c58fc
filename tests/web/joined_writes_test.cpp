// What many enter at the bench at once.
#include "web/joined_writes.hpp"

#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"

#include <atomic>
#include <csignal>
#include <sys/resource.h>
#include <thread>

using namespace beadbook;
using namespace beadbook::test;

namespace {

/// A record with coupon T-1, and what is entered there.
struct Shop {
    Shop() {
        desk.write([](Writing &w) { register_coupon(w, {"T-1", {{"thickness", "0.065 in"}}}); });
    }

    static JoinedWrites::Deed deed(std::function<void(Writing &)> work) {
        return {[work = std::move(work)](Office &office) {
            Writing writing(office, "A. Field");
            carry_out(writing, work);
            commit(writing);
        }};
    }
    static JoinedWrites::Deed remark(const std::string &text) {
        return deed([text](Writing &w) { remark_on(w, "T-1", text); });
    }

    /// Enters all of them so that the first is being stored while the others wait, which are then joined.
    /// Returns what was told of each; empty: it is stored.
    std::vector<std::string> at_once(std::vector<JoinedWrites::Deed> deeds) {
        std::vector<std::string> told(deeds.size());
        std::atomic<bool> first_is_in = false;
        const auto first = deeds.front().work;
        deeds.front().work = [&, first](Office &office) {
            first_is_in = true;
            while (writes.waiting() + 1 < deeds.size()) std::this_thread::yield();
            first(office);
        };
        std::vector<std::thread> threads;
        for (std::size_t n = 0; n < deeds.size(); ++n) {
            threads.emplace_back([&, n] {
                try {
                    writes.enter(deeds[n]);
                } catch (const Refusal &e) {
                    told[n] = e.what();
                }
            });
            while (n == 0 && !first_is_in) std::this_thread::yield();
        }
        for (auto &thread : threads) thread.join();
        return told;
    }

    std::vector<std::string> remarks() {
        Book book(desk.path(), Ledger::Mode::read);
        std::vector<std::string> out;
        for (const auto &one : book.coupon("T-1").remarks) out.push_back(one.text);
        std::sort(out.begin(), out.end());
        return out;
    }

    /// Write transactions that the file ever had, as its header counts them.
    unsigned commits() const {
        unsigned out = 0;
        const std::string bytes = test::read_file(desk.path());
        for (std::size_t at = 24; at < 28; ++at) out = out << 8 | static_cast<unsigned char>(bytes[at]);
        return out;
    }

    Desk desk;
    JoinedWrites writes{desk.path(), desk.outside};
};

using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("what waits while another is stored is committed together", "[joined]") {
    Shop shop;
    const unsigned before = shop.commits();
    std::vector<JoinedWrites::Deed> deeds;
    for (const char *text : {"a", "b", "c", "d", "e"}) deeds.push_back(Shop::remark(text));
    CHECK(shop.at_once(deeds) == Texts(5));
    CHECK(shop.commits() == before + 2);
    CHECK(shop.remarks() == Texts{"a", "b", "c", "d", "e"});
    CHECK(shop.desk.book.ledger().verify().faults.empty());
}

TEST_CASE("one that is refused after it wrote takes nothing of the others with it", "[joined]") {
    Shop shop;
    const auto half = Shop::deed([](Writing &w) {
        remark_on(w, "T-1", "half");
        w.ledger().keep_sent("key", {"hash", "answer"});
        throw DataError("no more of it");
    });
    // A second entry in the place of the same one is a failure inside SQLite.
    const auto twice = Shop::deed([](Writing &w) {
        Entry e;
        e.kind = "remark";
        e.subject = "T-1";
        e.supersedes = 1;
        e.reason = "why";
        e.body = "{}";
        w.ledger().append(e);
        w.ledger().append(e);
    });
    const auto told = shop.at_once(
        {Shop::remark("a"), Shop::remark("b"), half, Shop::remark("c"), twice, Shop::remark("d")});
    CHECK(told[2] == "no more of it");
    CHECK(told[4].find("UNIQUE") != std::string::npos);
    CHECK(Texts{told[0], told[1], told[3], told[5]} == Texts(4));
    CHECK(shop.remarks() == Texts{"a", "b", "c", "d"});
    CHECK_FALSE(shop.desk.book.ledger().sent("key"));
    CHECK(shop.desk.book.ledger().verify().faults.empty());
}

TEST_CASE("where they cannot be committed together each is stored by itself", "[joined]") {
    Shop shop;
    const auto xfsz = std::signal(SIGXFSZ, SIG_IGN); // else it ends the process
    rlimit free{};
    getrlimit(RLIMIT_FSIZE, &free);
    int calls = 0;
    // The first time the file may not grow any more, so that nothing of all can be committed.
    const auto too_much = Shop::deed([&](Writing &w) {
        rlimit tight = free;
        tight.rlim_cur = test::read_file(shop.desk.path()).size();
        setrlimit(RLIMIT_FSIZE, ++calls == 1 ? &tight : &free);
        for (int n = 0; n < 100; ++n) remark_on(w, "T-1", "x" + std::string(500, 'x'));
    });
    const auto told = shop.at_once({Shop::remark("a"), too_much, Shop::remark("b")});
    setrlimit(RLIMIT_FSIZE, &free);
    std::signal(SIGXFSZ, xfsz);
    CHECK(calls == 2);
    CHECK(told == Texts(3));
    CHECK(shop.remarks().size() == 102);
    CHECK(shop.desk.book.ledger().verify().faults.empty());
}

TEST_CASE("a record that cannot be opened is told to all", "[joined]") {
    const TemporaryFolder folder;
    const Outside outside = still_outside();
    JoinedWrites writes(folder.file("none.db"), outside);
    CHECK_THROWS_WITH(writes.enter(Shop::remark("a")), says("no record yet"));
    JoinedWrites::Deed begins = Shop::deed([](Writing &w) { register_coupon(w, {"T-1", {}}); });
    begins.begins_record = true;
    writes.enter(begins);
    writes.enter(Shop::remark("a"));
    CHECK(Book(folder.file("none.db"), Ledger::Mode::read).coupon("T-1").remarks.size() == 1);
}

TEST_CASE("what is kept of one that is refused is stored, alone and among others", "[joined]") {
    Shop shop;
    const auto refused_one = Shop::deed([](Writing &w) {
        w.keep_if_refused([](Writing &then) { remark_on(then, "T-1", "kept"); });
        remark_on(w, "T-1", "gone");
        throw refused("no");
    });
    SECTION("alone") {
        CHECK(shop.at_once({refused_one}) == Texts{"no"});
        CHECK(shop.remarks() == Texts{"kept"});
    }
    SECTION("among others") {
        CHECK(shop.at_once({Shop::remark("a"), refused_one, Shop::remark("b")}) == Texts{"", "no", ""});
        CHECK(shop.remarks() == Texts{"a", "b", "kept"});
    }
}
