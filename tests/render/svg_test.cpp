#include "render/svg.hpp"

#include "catch.hpp"
#include "render/html.hpp"
#include "render/text.hpp"

#include <regex>
#include <set>

using namespace beadbook;

namespace {

const std::string hostile = "</text></svg><script>alert(\"x\")</script> & 'y'";

Picture sample() {
    Picture out;
    out.kind = "weld-map";
    out.title = hostile;
    out.told = hostile;
    out.width = 100;
    out.height = 50;
    out.data = {{"unit", hostile}};
    PictureGroup group{hostile, {{"number", hostile}}, {}};
    group.shapes.emplace_back(PictureText{1, 2, 12, hostile, Anchor::middle, true, false});
    group.shapes.emplace_back(PictureBox{Role::open, 1, 2, 3, 4});
    group.shapes.emplace_back(PictureEllipse{Role::rejects, 1.5, 2.25, 3, 4});
    out.shapes.emplace_back(std::move(group));
    out.shapes.emplace_back(PictureLine{Role::limit, 0, 0, 10, 10});
    out.shapes.emplace_back(PicturePath{Role::bracket, {{0, 0}, {5, 0.125}}, false});
    out.shapes.emplace_back(PictureCells{0, 0, 2, {{true, true, false}, {false, false, true}}});
    return out;
}

std::size_t times(const std::string &text, const std::string &part) {
    std::size_t n = 0;
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += part.size()) ++n;
    return n;
}

/// Ids that come twice, and references that lead nowhere.
std::string id_faults(const std::string &page) {
    std::set<std::string> ids;
    const std::regex id(" id=\"([^\"]+)\""),
        to("url\\(#([^)]+)\\)|aria-(?:labelledby|describedby)=\"([^\"]+)\"");
    for (std::sregex_iterator i(page.begin(), page.end(), id), end; i != end; ++i)
        if (!ids.insert((*i)[1].str()).second) return (*i)[1].str() + " comes twice";
    for (std::sregex_iterator i(page.begin(), page.end(), to), end; i != end; ++i) {
        const std::string name = (*i)[1].matched ? (*i)[1].str() : (*i)[2].str();
        if (ids.count(name) == 0) return name + " is nowhere";
    }
    return "";
}

} // namespace

TEST_CASE("every text of a picture is escaped, its title and what it shows are told") {
    const std::string out = svg(sample(), "p1");
    CHECK(times(out, "<script") == 0);
    CHECK(times(out, "</svg>") == 1);
    CHECK(times(out, "&lt;script&gt;alert(&quot;x&quot;)") == 6);
    CHECK_THAT(out, says("<title id=\"p1t\">") && says("<desc id=\"p1d\">") && says("role=\"img\"") &&
                        says("aria-labelledby=\"p1t\"") && says("class=\"picture weld-map\"") &&
                        says("viewBox=\"0 0 100 50\"") && says("data-unit=") && says("data-number="));
}

TEST_CASE("shapes stand where they are, by their roles and without any colour") {
    const std::string out = svg(sample(), "p1");
    CHECK_THAT(out, says("<line class=\"p-limit\" x1=\"0\" y1=\"0\" x2=\"10\" y2=\"10\"/>"));
    CHECK_THAT(out, says("<ellipse class=\"p-rejects\" cx=\"1.5\" cy=\"2.25\" rx=\"3\" ry=\"4\"/>"));
    CHECK_THAT(out, says("<path class=\"p-bracket\" d=\"M0 0L5 0.13\"/>") ||
                        says("<path class=\"p-bracket\" d=\"M0 0L5 0.12\"/>"));
    CHECK_THAT(out, says("d=\"M0 0h2v1h-2zM2 1h1v1h-1z\"")); // cells in runs
    CHECK_THAT(out, says("<rect class=\"p-open\" fill=\"url(#p1a)\"") && says("<pattern id=\"p1a\""));
    CHECK_FALSE(std::regex_search(out, std::regex("#[0-9a-f]{3,6}\"")));
}

TEST_CASE("a plain picture carries its own look and refers to nothing") {
    const std::string out = svg(sample(), "p1", SvgStyle::plain);
    CHECK(times(out, "url(") == 0);
    CHECK(times(out, "class=\"p-") == 0);
    CHECK_THAT(out, says("stroke=\"#a3161a\"") && says("stroke-dasharray"));
}

TEST_CASE("a file of its own has its style in it") {
    const std::string out = svg_file(sample());
    CHECK(out.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\""));
    CHECK_THAT(out, says("<style>") && says("prefers-color-scheme: dark") && says("width=\"100\""));
}

TEST_CASE("each role has a look of its own, not by colour alone") {
    // What must be told apart beside one another, in grey: fill, hatch or line differ.
    Picture picture;
    picture.shapes.emplace_back(PictureBox{Role::kept, 0, 0, 1, 1});
    picture.shapes.emplace_back(PictureBox{Role::rejects, 0, 0, 1, 1});
    picture.shapes.emplace_back(PictureBox{Role::open, 0, 0, 1, 1});
    const std::string style(picture_style()), out = svg(picture, "p");
    CHECK_THAT(style, says(".p-kept { fill: var(--p-paper)") && says(".p-rejects { fill: var(--p-reject)"));
    CHECK_THAT(style, says(".p-open") && says("stroke-dasharray"));
    CHECK_THAT(out, says("class=\"p-open\" fill=\"url(#pa)\""));
    for (const char *name : {"ink", "weld", "edge", "guide", "scale", "kept", "rejects", "open", "bracket",
                             "limit", "beyond", "within", "over", "bar", "part", "share", "interval"})
        CHECK_THAT(style, says(".p-" + std::string(name) + " {"));
}

TEST_CASE("ids on a page are unique, also of two fragments with names of their own") {
    Document doc;
    doc.add(Figure{sample(), sample(), "caption <b>", "drawn\n"}).add(Figure{sample(), {}, "", ""});
    doc.add(Tiles{{Figure{sample(), {}, "", "label"}}});
    const std::string page = html(doc);
    CHECK(times(page, "<svg") == 4);
    CHECK_THAT(page, says("<div class=\"wide\">") && says("<div class=\"narrow\">") &&
                         says("caption &lt;b&gt;") && says("figure .narrow { display: none }"));
    CHECK(id_faults(page) == "");
    CHECK(id_faults(fragment(doc, "a") + fragment(doc, "b")) == "");
    CHECK(id_faults(fragment(doc, "a") + fragment(doc, "a")) != "");
    CHECK(fragment(doc).find("<html") == std::string::npos);
    CHECK(text(doc) == "drawn\nlabel\n");
    // Paper has no narrow one, and every size of it its own line.
    CHECK(times(html(doc, SvgStyle::plain), "<svg") == 3);
    CHECK_THAT(html(doc, SvgStyle::plain, PaperSize::letter), says("@page { size: letter }"));
    CHECK_THAT(html(doc, SvgStyle::plain, PaperSize::a4), says("@page { size: A4 }"));
}
