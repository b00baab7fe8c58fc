// Which converter makes a PDF, and what is told where none does. The converters are small scripts.
#include "render/pdf_printer.hpp"

#include "catch.hpp"
#include "measure/refusal.hpp"
#include "temporary.hpp"

#include <filesystem>

using namespace beadbook;
using namespace beadbook::test;

namespace {

class Converters : private TemporaryFolder {
public:
    void put(const std::string &name, const std::string &script) {
        write_file(file(name), "#!/bin/sh\n" + script + "\n");
        std::filesystem::permissions(file(name), std::filesystem::perms::owner_all);
    }
    std::string made(std::chrono::milliseconds at_most = std::chrono::seconds(20)) const {
        return pdf_of("<p>page</p>", folder(), at_most);
    }
    std::string refusal() const {
        try {
            return "made: " + made();
        } catch (const DataError &e) {
            return e.what();
        }
    }

private:
    std::string folder() const { return std::filesystem::path(file("x")).parent_path().string(); }
};

/// As weasyprint is asked: a page, and the file that is to be made.
const char *const good = "printf '%%PDF-1.7 first' >\"$2\"";
/// As chromium is asked: an option names the file.
const char *const second =
    "for w; do case $w in --print-to-pdf=*) printf '%%PDF-1.7 second' >\"${w#--print-to-pdf=}\";; esac; done";

} // namespace

TEST_CASE(
    "the first converter makes the PDF, and the next one where it fails, hangs or makes something else") {
    Converters all;
    all.put("chromium", second);
    CHECK(all.made() == "%PDF-1.7 second");
    all.put("weasyprint", good);
    CHECK(all.made() == "%PDF-1.7 first");
    all.put("weasyprint", "echo no font >&2; exit 3");
    CHECK(all.made() == "%PDF-1.7 second");
    all.put("weasyprint", "echo hello >\"$2\"");
    CHECK(all.made() == "%PDF-1.7 second");
    // Half a file that it left behind is none of the next one's.
    all.put("weasyprint", "printf '%%PDF-1.7 half' >\"$2\"; exec /bin/sleep 100");
    CHECK(all.made(std::chrono::seconds(2)) == "%PDF-1.7 second");
}

TEST_CASE("where no converter makes a PDF each says why, and where none is there what to install") {
    Converters all;
    CHECK(all.refusal().find("install weasyprint or chromium") != std::string::npos);
    all.put("weasyprint", "printf '%%PDF-1.7 half' >\"$2\"; echo no font >&2; exit 3");
    CHECK(all.refusal() == "weasyprint made no PDF; it said: no font");
    all.put("chromium-browser", "exit 0");
    CHECK(all.refusal() == "weasyprint made no PDF; it said: no font; chromium-browser made no PDF");
    all.put("weasyprint", "exec /bin/sleep 100");
    CHECK_THROWS_WITH(all.made(std::chrono::seconds(1)),
                      "weasyprint made no PDF in 1 s; chromium-browser made no PDF");
}
