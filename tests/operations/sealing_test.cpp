#include "operations/sealing.hpp"

#include "case.hpp"
#include "catch.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/keeping.hpp"
#include "records/behind.hpp"
#include "records/codecs/seal.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

using State = CheckedSeal::State;

class Kept : public Desk {
public:
    explicit Kept(const std::string &mark = "T-1") {
        write([&](Writing &w) { register_coupon(w, {mark, {}}); });
    }
    void remark() {
        write([](Writing &w) { remark_on(w, "T-1", "x"); });
    }
    Seal seal() { return sealed(office, key, "K. Keeper"); }
    Verified verified(const Seal &seal, const std::string &signer = "") {
        return verify(office, {false, "", seal, signer});
    }

    const SigningKey key = SigningKey::fresh();
};

} // namespace

TEST_CASE("a seal holds as long as what it seals is on record, whatever is added") {
    Kept desk;
    const Seal seal = desk.seal();
    CHECK(seal.entries == 1);
    CHECK(seal.head == desk.book.ledger().head());
    CHECK(seal.stamp.who == "K. Keeper");
    desk.remark();
    desk.remark();
    const Verified v = desk.verified(seal, desk.key.public_key());
    CHECK(v.holds());
    CHECK(v.seal->signer_named);
    CHECK(v.seal->entries_after == 2);
    CHECK_FALSE(desk.verified(seal).seal->signer_named);
}

TEST_CASE("a record that is written anew, though its chain holds, is found out by its seal") {
    Kept desk, anew("T-2");
    const Verified v = anew.verified(desk.seal());
    CHECK(v.chain.faults.empty());
    CHECK(v.seal->state == State::not_on_record);
    CHECK_FALSE(v.holds());
}

TEST_CASE("whatever is changed in a seal, its signature is not of it any more") {
    Kept desk;
    const Seal seal = desk.seal();
    const std::string other_key = SigningKey::fresh().public_key();
    const std::function<void(Seal &)> changes[]{[](Seal &s) { ++s.entries; },
                                                [](Seal &s) { s.head[0] = s.head[0] == 'a' ? 'b' : 'a'; },
                                                [](Seal &s) { s.stamp.at = "2020"; },
                                                [](Seal &s) { s.stamp.who = "x"; },
                                                [&](Seal &s) { s.public_key = other_key; },
                                                [](Seal &s) { s.signature = ""; }};
    for (const auto &change : changes) {
        Seal changed = seal;
        change(changed);
        CHECK(desk.verified(changed).seal->state == State::altered);
    }
}

TEST_CASE("a seal by another key is not the shop's, where that is named") {
    Kept desk;
    const Seal forged = sealed(desk.office, SigningKey::fresh(), "K. Keeper");
    CHECK(desk.verified(forged).holds());
    CHECK(desk.verified(forged, desk.key.public_key()).seal->state == State::other_signer);
}

TEST_CASE("nothing is sealed that does not hold, or is not there") {
    Kept desk;
    behind(desk.path(), "UPDATE entry SET who = 'x' WHERE seq = 1");
    CHECK_THROWS_WITH(desk.seal(), says("does not hold"));
    Desk empty;
    CHECK_THROWS_WITH(sealed(empty.office, desk.key, "x"), says("nothing is on record"));
}

TEST_CASE("a seal is read back as it was written, and what is none is refused with its place") {
    Kept desk;
    const std::string text = codec::text_of(desk.seal());
    CHECK(codec::text_of(codec::seal_from(text)) == text);
    CHECK_THROWS_WITH(codec::seal_from("{}"), says("no seal"));
    CHECK_THROWS_WITH(codec::seal_from("[1]"), says("no seal"));
    CHECK_THROWS_AS(codec::seal_from("x"), DataError);
    const auto with = [&](const std::string &what, const std::string &instead) {
        std::string out = text;
        return out.replace(out.find(what), what.size(), instead);
    };
    CHECK_THROWS_WITH(codec::seal_from(with("\"beadbook seal\": 1", "\"beadbook seal\": 2")),
                      says("newer program"));
    CHECK_THROWS_WITH(codec::seal_from(with("\"entries\": 1", "\"entries\": \"1\"")), says("'entries'"));
    CHECK_THROWS_WITH(codec::seal_from(with("\"entries\": 1", "\"more\": 1, \"entries\": 1")),
                      says("more than a seal"));
    CHECK_THROWS_WITH(codec::seal_from(with("\"entries\": 1", "\"entries\": 1, \"entries\": 1")),
                      says("more than a seal"));
}
