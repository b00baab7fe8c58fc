#include "catch.hpp"
#include "render/html.hpp"
#include "render/text.hpp"

using namespace beadbook;

namespace {

const std::string nasty = "</title></pre><script>alert(\"x\") & 'y'</script>";

std::size_t count(const std::string &text, const std::string &part) {
    std::size_t n = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++n;
    return n;
}

} // namespace

TEST_CASE("every text of every block is escaped on a page") {
    Document document;
    document.title = nasty;
    document.heading(nasty).line(nasty, nasty).item(nasty, nasty, {{nasty, nasty, {}}});
    document.add(Grid{{{nasty}}, {{Words(nasty, Tone::reject)}}}).pair(nasty, nasty, nasty);
    document.add(Drawing{nasty}).add(Signatures{{nasty}}).caution();
    const std::string page = html(document);
    CHECK(count(page, "<script") == 0);
    CHECK(count(page, "&lt;script&gt;alert(&quot;x&quot;)") == 15);
    CHECK(count(page, "</title>") == 1);
    CHECK(count(page, "</pre>") == 1);
}

TEST_CASE("a page is complete in itself and fits the printer's paper") {
    Document document;
    document.title = "Record 2";
    const std::string page = html(document.heading("Record 2"));
    CHECK(page.starts_with("<!DOCTYPE html>"));
    CHECK(page.ends_with("</html>\n"));
    CHECK_THAT(page, says("<title>Record 2</title>"));
    CHECK_THAT(page, says("<h1>Record 2</h1>"));
    CHECK_THAT(page, says("@page { margin"));
    // Nothing is fetched from anywhere, and nothing runs.
    for (const char *part : {"http", "//", " src=", "href=", "url(", "@import", "<link", "<script", "<img",
                             "<iframe", "<object", "<meta http-equiv"})
        CHECK(count(page, part) == 0);
    CHECK(count(page, "size: A4") == 0); // nor any other paper than the one that is in the printer
}

TEST_CASE("blocks become the elements that fit them") {
    Document document;
    document.heading("Part", 2).line(Words("it is ") + Words("accept", Tone::accept), "Table 3, read");
    document.item("one", "", {{"below", "", {}}}).item("two");
    document.add(Grid{{{"coupon"}, {"n", true}}, {{"T-1", "2"}}}).pair("mark", "L1", "of two");
    document.add(Signatures{{"graded by", "for the employer"}}).caution();
    const std::string page = html(document);
    for (const char *part :
         {"<h2>Part</h2>",
          "<p>it is <span class=\"accept\">accept</span> <span class=\"source\">[Table 3, read]</span></p>",
          "<li>two</li>", "<th class=\"r\">n</th>", "<td class=\"r\">2</td>",
          "<td><span class=\"whole\">T-1</span></td>", "<td class=\"o\">of two</td>",
          "<span>graded by</span><span>for the employer</span>", "An aid, not the code"})
        CHECK_THAT(page, says(part));
    // No word and no day is cut in a cell; what is longer than any word may be.
    const std::string hash(64, 'a');
    const std::string cells = html(Document().add(Grid{{{""}}, {{"passed on 2026-11-25 by " + hash}}}));
    CHECK_THAT(cells, says("<td>passed on <span class=\"whole\">2026-11-25</span> by <span class=\"long\">" +
                           hash + "</span></td>"));
    CHECK(count(page, "overflow-wrap: anywhere") == 1); // of those alone
    CHECK(count(page, "<ul>") == 2);
    CHECK(count(page, "</ul>") == 2);
    CHECK(count(html(Document().add(Grid{{{""}}, {{"x"}}})), "<thead>") == 0);
}

TEST_CASE("what folds stands open on paper, and is opened on a part of a page") {
    const Document document = Document().add(Fold{"What proves <it>", {{"one", "", {}}}});
    const std::string paper = html(document), part = fragment(document, "p");
    CHECK_THAT(paper, says("<h2>What proves &lt;it&gt;</h2>") && says("<li>one</li>"));
    CHECK(count(paper, "<details") == 0);
    CHECK_THAT(part, says("<summary>What proves &lt;it&gt;</summary>") && says("<li>one</li>"));
}

TEST_CASE("many short facts stand in two columns on paper, each once and in their order") {
    Document document;
    for (int k = 1; k <= 7; ++k) document.pair("n" + std::to_string(k), "v" + std::to_string(k));
    document.pair("long", std::string(40, 'a')).pair("last", "v9");
    const std::string paper = html(document), part = fragment(document, "p");
    CHECK_THAT(
        paper,
        says("<tr class=\"two\"><td class=\"n\">n1</td><td>v1</td><td class=\"n\">n5</td><td>v5</td></tr>"));
    CHECK_THAT(paper, says("<td class=\"n\">n4</td><td>v4</td><td></td><td></td></tr>"));
    for (const auto &text : {paper, part})
        for (const char *name : {">n1<", ">n4<", ">n7<", ">long<", ">last<"}) CHECK(count(text, name) == 1);
    CHECK(count(part, "class=\"two\"") == 0);
    CHECK(count(paper, "<tr") == 6);
}

TEST_CASE("tiles stand in lines, of which WeasyPrint prints as many sheets as they need") {
    Tiles tiles;
    tiles.figures.resize(2);
    const std::string page = html(Document().add(std::move(tiles)));
    CHECK(count(page, "<figure") == 2);
    CHECK_THAT(page, says("div.tiles figure { display: inline-block"));
    CHECK(count(page, "div.tiles { display: flex") == 0);
}

TEST_CASE("what names an exam leads to its page where there is one, and what only looks so does not") {
    const Document document = Document().item(Words::of_exam("Exam 2", 2) + ": VT").item("Exam 2: a remark");
    CHECK(fragment(document) == "<ul>\n<li>Exam 2: VT</li>\n<li>Exam 2: a remark</li>\n</ul>\n");
    CHECK(fragment(document, "p", [](int exam) { return "/exam/" + std::to_string(exam) + "\""; }) ==
          "<ul>\n<li><a href=\"/exam/2&quot;\">Exam 2</a>: VT</li>\n<li>Exam 2: a remark</li>\n</ul>\n");
}

TEST_CASE("what is typed at a command line stands on no page") {
    const Words words = Words("It is decided") + Words::to_type(": beadbook grade T-1 passed") + ".";
    CHECK(text(Document().line(words)) == "It is decided: beadbook grade T-1 passed.\n");
    const Document document = Document().line(words).add(Grid{{{""}}, {{words}}});
    for (const std::string &page : {html(document), fragment(document)}) {
        CHECK(count(page, "It is decided.") == 2);
        CHECK(count(page, "beadbook") == 0);
    }
}

TEST_CASE(
    "each cell of a list says what it is of, for a page too narrow for a table; numbers stay beside each "
    "other") {
    const std::vector<Words> row{"T-1", "VT", "2", "accept"};
    const std::string list =
        fragment(Document().add(Grid{{{"coupon"}, {"exam"}, {"found", true}, {"verdict"}}, {row}}));
    CHECK_THAT(list, says("<table class=\"list\">"));
    CHECK_THAT(list,
               says("<td>T-1</td><td data-of=\"exam\">VT</td><td class=\"r\" data-of=\"found\">2</td>"));
    for (const Grid &other : {Grid{{{"coupon"}, {"of", true}, {"found", true}, {"verdict"}}, {row}},
                              Grid{{{"coupon"}, {""}, {"found"}, {"verdict"}}, {row}},
                              Grid{{{"coupon"}, {"exam"}, {"found"}}, {{"T-1", "VT", "2"}}}})
        CHECK(count(fragment(Document().add(other)), "data-of") == 0);
}
