#include "operations/photos.hpp"

#include "catch.hpp"
#include "measure/sha256.hpp"
#include "measure/text.hpp"
#include "operations/coupons.hpp"
#include "operations/desk.hpp"
#include "operations/examining.hpp"
#include "operations/exported.hpp"
#include "operations/judging.hpp"
#include "operations/keeping.hpp"
#include "operations/logging.hpp"
#include "operations/moving.hpp"
#include "records/behind.hpp"

using namespace beadbook;
using namespace beadbook::test;

namespace {

const std::string jpeg = "\xff\xd8\xff\xe0 a crater", png = "\x89PNG\r\n\x1a\n a crater";

/// A desk with a coupon that has two finds.
class Bench1 : public Desk {
public:
    Bench1() {
        for (const char *mark : {"T-1", "T-2"})
            write([&](Writing &w) {
                register_coupon(
                    w, {mark, {{"criteria", "ufgs-15216n"}, {"joint", "groove"}, {"thickness", "0.2 in"}}});
                ExamRequest exam;
                exam.coupon = mark;
                record_exam(w, exam);
            });
        write([&](Writing &w) {
            log_lines(w, {.coupon = "T-1", .text = "undercut l 0.1 d 0.01\ncrack 0.2\n"});
        });
    }
    PhotoKept keep(const std::string &bytes, int find = 0, const std::string &coupon = "T-1") {
        return write([&](Writing &w) { return attach_photo(w, {coupon, bytes, find, "as cleaned"}).value; });
    }
    template <class F>
    std::string refusal(F what) {
        try {
            what();
        } catch (const Refusal &e) {
            return e.what();
        }
        return "";
    }
    std::string faults() {
        std::string all;
        for (const auto &fault : Ledger(path(), Ledger::Mode::inspect).verify().faults) all += fault + "\n";
        return all;
    }
    int rows_of_photos() {
        return SQLite::Database(path(), SQLite::OPEN_READONLY)
            .execAndGet("SELECT count(*) FROM photo")
            .getInt();
    }
};

} // namespace

TEST_CASE("a photo is kept by its content, with coupon and find, and read back whole", "[photo]") {
    Bench1 bench;
    const PhotoRecord kept = bench.keep(jpeg, 2).photo;
    CHECK(kept.number == 1);
    CHECK(kept.hash == sha256(jpeg));
    const CouponState coupon = bench.office.coupon("T-1");
    REQUIRE(coupon.photos.size() == 1);
    CHECK(coupon.photos[0].find == 2);
    CHECK(coupon.photos[0].kind == PhotoKind::jpeg);
    CHECK(coupon.photos[0].size == static_cast<std::int64_t>(jpeg.size()));
    CHECK(coupon.photos[0].remark == "as cleaned");
    CHECK(coupon.photos[0].stamp.who == "tester");
    for (const std::string &word : {std::string("1"), std::string("#1"), kept.hash, kept.hash.substr(0, 6)})
        CHECK(photo_called(bench.office, "T-1", word).bytes == jpeg);
    CHECK_THAT(bench.refusal([&] { photo_called(bench.office, "T-1", "2"); }), says("has no photo 2"));
    CHECK_THAT(bench.refusal([&] { photo_called(bench.office, "T-1", "abcdefab"); }),
               says("no photo of coupon T-1"));
    CHECK_THAT(bench.refusal([&] { photo_called(bench.office, "T-1", "one"); }), says("names no photo"));
    CHECK(bench.faults().empty());
}

TEST_CASE("the same photo is stored once, and refused where it is already", "[photo]") {
    Bench1 bench;
    bench.keep(jpeg, 1);
    CHECK_THAT(bench.refusal([&] { bench.keep(jpeg, 1); }), says("has this photo already, as photo 1"));
    CHECK(bench.keep(jpeg, 2).photo.number == 2);
    CHECK(bench.keep(jpeg, 0, "T-2").photo.number == 1);
    CHECK(bench.rows_of_photos() == 1);
    bench.keep(png);
    CHECK(bench.rows_of_photos() == 2);
    CHECK(bench.faults().empty());
}

TEST_CASE("what is no photo, too large, or of a find that is not there leaves nothing behind", "[photo]") {
    Bench1 bench;
    CHECK_THAT(bench.refusal([&] { bench.keep("%PDF-1.7"); }), says("is a PDF; expected JPEG, PNG or WebP"));
    CHECK_THAT(bench.refusal([&] { bench.keep(jpeg + std::string(largest_photo, 'x')); }),
               says("larger than 8 MB"));
    CHECK_THAT(bench.refusal([&] { bench.keep(jpeg, 3); }), says("has no indication #3"));
    CHECK_THAT(bench.refusal([&] { bench.keep(jpeg, 0, "T-9"); }), says("T-9"));
    CHECK(bench.rows_of_photos() == 0);
    const std::string largest = jpeg + std::string(largest_photo - jpeg.size(), 'x');
    CHECK(bench.keep(largest).photo.size == static_cast<std::int64_t>(largest_photo));
}

TEST_CASE("a photo that is taken back stays with its bytes and says why", "[photo]") {
    Bench1 bench;
    bench.keep(jpeg);
    const auto withdraw = [&](const std::string &why) {
        return bench.write([&](Writing &w) { return withdraw_photo(w, "T-1", 1, why); });
    };
    CHECK_THAT(bench.refusal([&] { withdraw(""); }), says("needs a reason"));
    withdraw("another coupon");
    CHECK(bench.office.coupon("T-1").photos[0].withdrawn == "another coupon");
    CHECK_THAT(bench.refusal([&] { withdraw("again"); }), says("withdrawn already: another coupon"));
    CHECK(photo_called(bench.office, "T-1", "1").bytes == jpeg);
    CHECK(bench.keep(jpeg).photo.number == 2); // it may come again, for another reason
    CHECK(bench.faults().empty());
}

TEST_CASE("no verdict goes by a photo", "[photo]") {
    Bench1 bench;
    const auto verdicts = [&] {
        std::string out;
        for (const auto &one : judge_coupon(bench.office, bench.office.coupon("T-1"), {}).judgement.classes)
            out += std::string(name_of(one.verdict)) + std::to_string(one.findings.size());
        return out;
    };
    const std::string before = verdicts();
    bench.keep(jpeg, 1);
    bench.keep(png);
    CHECK(verdicts() == before);
}

TEST_CASE("a photo of a find stays on its coupon when the find goes to another one", "[photo]") {
    Bench1 bench;
    bench.keep(jpeg, 2);
    bench.write([](Writing &w) {
        MoveRequest move;
        move.coupon = "T-1";
        move.number = 2;
        move.to = "T-2";
        move.why = "wrong piece";
        return move_indication(w, move);
    });
    const PhotoList list = list_photos(bench.office, "T-1");
    REQUIRE(list.photos.size() == 1);
    CHECK(list.photos[0].find == 2);
    CHECK_FALSE(list.finds.contains(2));
    bench.write([](Writing &w) { return withdraw_coupon(w, "T-2", "melted"); });
    CHECK_THAT(bench.refusal([&] { bench.keep(png, 0, "T-2"); }), says("withdrawn"));
}

TEST_CASE("nobody changes a photo or takes it out, and verify finds it where somebody did", "[photo]") {
    Bench1 bench;
    bench.keep(jpeg);
    {
        SQLite::Database db(bench.path(), SQLite::OPEN_READWRITE);
        CHECK_THROWS_WITH(db.exec("UPDATE photo SET bytes = x'00'"), says("kept as they were"));
        CHECK_THROWS_WITH(db.exec("DELETE FROM photo"), says("kept as they were"));
    }
    back_up(bench.office, bench.file("copy.db"));
    OpenBook copy(bench.file("copy.db"), Ledger::Mode::read);
    CHECK(photo_called(copy.office, "T-1", "1").bytes == jpeg);
    behind(bench.path(), "UPDATE photo SET bytes = x'ffd8ff00'");
    CHECK_THAT(bench.faults(), says("photo " + sha256(jpeg).substr(0, 12) + " was changed"));
    CHECK_THAT(bench.refusal([&] { photo_called(bench.office, "T-1", "1"); }),
               says("was changed after it was kept"));
    behind(bench.path(), "DELETE FROM photo");
    CHECK_THAT(bench.faults(), says("the photo that it names is missing"));
}

TEST_CASE("an export names photos, and an import tells which it does not bring along", "[photo]") {
    Bench1 bench;
    bench.keep(jpeg, 1);
    bench.keep(png);
    bench.write([](Writing &w) { return withdraw_photo(w, "T-1", 2, "blurred"); });
    for (const bool lines : {false, true}) {
        const std::string text = exported(bench.office, {}, {}, lines).text;
        CHECK_THAT(text, says(sha256(jpeg)));
        CHECK_THAT(text, !says(sha256(png)));
        ImportRequest request;
        request.text = text;
        request.lines = lines;
        const auto take = [&](Desk &desk) {
            return desk.write(
                [&](Writing &w) { return store_import(w, prepare_import(desk.office, request)); });
        };
        Desk elsewhere;
        const auto taken = take(elsewhere);
        CHECK(taken.value.coupons == 2);
        CHECK(taken.value.photos == 0);
        REQUIRE(taken.notes.size() == 4); // two exams are open, and why a photo is gone does not go along
        CHECK_THAT(joined(taken.notes, "\n"), says("is not brought along"));
        CHECK(elsewhere.office.coupon("T-1").photos.empty());
        // Where its bytes are on record, it is kept with the coupon.
        Desk knows;
        knows.write([](Writing &w) {
            register_coupon(w, {"X-1", {}});
            return attach_photo(w, {"X-1", jpeg});
        });
        CHECK(take(knows).value.photos == 1);
        REQUIRE(knows.office.coupon("T-1").photos.size() == 1);
        CHECK(knows.office.coupon("T-1").photos[0].find == 1);
        CHECK(knows.book.ledger().verify().faults.empty());
    }
}

TEST_CASE("an import refuses a photo that is named wrongly", "[photo]") {
    Desk desk;
    const std::string hash(64, 'a');
    const std::pair<std::string, const char *> rows[] = {
        {R"({"photo": "x", "kind": "JPEG"})", "'x' is no hash of a photo"},
        {R"({"photo": ")" + hash + R"(", "kind": "GIF"})", "'GIF' is no kind of photo"},
        {R"({"photo": ")" + hash + R"("})", "a photo needs a \"kind\""},
        {R"({"photo": ")" + hash + R"(", "kind": "PNG", "bytes": "eA=="})", "unknown key 'bytes'"},
        {R"({"photo": ")" + hash + R"(", "kind": "PNG", "find": 4})",
         "photo of #4, which the coupon has not"},
        {R"("x")", "a photo is an object"},
    };
    for (const auto &[photo, fault] : rows) {
        ImportRequest request;
        request.text = R"({"id": "T-1", "photos": [)" + photo + "]}";
        request.lines = true;
        CHECK_THROWS_WITH(prepare_import(desk.office, request), says(fault));
    }
}
