#include "catch.hpp"
#include "render/text.hpp"

using namespace beadbook;

namespace {

std::string told(const Document &document, std::size_t width = 100) {
    return text(document, Paint(false), width);
}

} // namespace

TEST_CASE("a paragraph is broken at blanks, by characters and not by bytes") {
    CHECK(told(Document().line("one two three four"), 9) == "one two\n  three\n  four\n");
    // Each of these letters has two bytes.
    CHECK(told(Document().line("ööö ööö"), 7) == "ööö ööö\n");
    CHECK(told(Document().line("ööö ööö"), 6) == "ööö\n  ööö\n");
    CHECK(told(Document().line("a veryveryverylong b"), 8) == "a\n  veryveryverylong\n  b\n");
    CHECK(told(Document().line("one  two\nthree"), 80) == "one  two\n  three\n");
}

TEST_CASE("a change of tone neither joins two words nor parts one") {
    const Words parted = Words("12345 ") + Words("789", Tone::strong);
    CHECK(told(Document().line(parted), 9) == "12345 789\n");
    CHECK(told(Document().line(parted), 8) == "12345\n  789\n");
    const Words joined = Words("123 (") + Words("45", Tone::strong) + Words(")");
    CHECK(told(Document().line(joined), 8) == "123 (45)\n");
    CHECK(told(Document().line(joined), 7) == "123\n  (45)\n");
    CHECK(told(Document().line(Words("1 ") + Words(" ") + Words("2"))) == "1  2\n");
}

TEST_CASE("no line is wider than asked unless one word is, and none ends with blanks") {
    const std::string prose = "the sum of the lengths of all indications in any 6 inches of weld ";
    const Document document = Document()
                                  .heading(prose + prose)
                                  .line(Words(prose) + Words(prose, Tone::quiet), prose)
                                  .item(prose + prose, prose + prose, {{prose, prose, {}}})
                                  .pair("name", prose, prose);
    for (const std::size_t width : {30U, 41U, 60U, 100U}) {
        const std::string all = told(document, width);
        for (std::size_t at = 0, end = 0; at < all.size(); at = end + 1) {
            end = all.find('\n', at);
            INFO(width << ": '" << all.substr(at, end - at) << "'");
            CHECK(end - at <= width);
            CHECK((end == at || all[end - 1] != ' '));
        }
    }
}

TEST_CASE("items stand below each other with their sources and what is under them") {
    const Document document =
        Document().item("first", "Table 3, read").item("second", "", {{"below", "house", {}}});
    CHECK(told(document) == "  - first\n    [Table 3, read]\n  - second\n    - below\n      [house]\n");
    CHECK(told(Document().item("one two three", "four five six"), 11) ==
          "  - one two\n    three\n    [four\n     five\n     six]\n");
}

TEST_CASE("a grid is aligned; numbers to the right; without titles it has no head") {
    const std::vector<std::vector<Words>> rows{{"T-1", "2", "gas pöre"}, {"Tube-10", "10", ""}};
    CHECK(told(Document().add(Grid{{{"coupon"}, {"n", true}, {"found"}}, rows})) ==
          "coupon    n  found\nT-1       2  gas pöre\nTube-10  10\n");
    CHECK(told(Document().add(Grid{{{""}, {"", true}, {""}}, rows})) ==
          "T-1       2  gas pöre\nTube-10  10\n");
}

TEST_CASE("names stand in one column, values in the next, notes in brackets") {
    CHECK(told(Document().pair("mark", "L1").pair("a very long name", "x", "by A. Field")) ==
          "  mark              L1\n  a very long name  x  (by A. Field)\n");
    CHECK(told(Document().pair("größe", "5 mm").pair("weld", "ö")) ==
          "  größe           5 mm\n  weld            ö\n");
}

TEST_CASE("a part is set off, the caution stands last, a drawing stays as it is, a signature is for paper") {
    CHECK(told(Document().heading("Whole").line("a").heading("Part", 2).line("b").caution()) ==
          "Whole\na\n\nPart\nb\n\n" + std::string(caution));
    CHECK(told(Document().add(Drawing{"    #1   #2\n    --   --\n"}).add(Signatures{{"graded by"}})) ==
          "    #1   #2\n    --   --\n");
    CHECK(told(Document().line("a").gap().line("b")) == "a\n\nb\n");
    CHECK(told({}).empty());
}

TEST_CASE("colour comes only with the paint, and says nothing that the words do not") {
    const Document document =
        Document().heading("Class B").line(Words("it is: ") + Words("reject", Tone::reject), "Table 3");
    const std::string plain = text(document), coloured = text(document, Paint(true));
    CHECK(plain.find('\033') == std::string::npos);
    CHECK(coloured.find("\033[31mreject\033[0m") != std::string::npos);
    CHECK(coloured.find("\033[1mClass") != std::string::npos);
    std::string bare;
    for (std::size_t i = 0; i < coloured.size(); ++i)
        if (coloured[i] == '\033')
            i = coloured.find('m', i);
        else
            bare += coloured[i];
    CHECK(bare == plain);
}
