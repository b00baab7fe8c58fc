#include "terminal/page.hpp"

#include "measure/text.hpp"
#include "records/files.hpp"
#include "render/html.hpp"
#include "render/json_standing.hpp"
#include "render/pdf_printer.hpp"
#include "report/paper_document.hpp"

namespace beadbook {

bool wants_page(const Call &call) { return call.has("html") || call.has("pdf"); }

ExitCode tell_bare_page(Call &call, const Document &document) {
    if (!wants_page(call)) throw UsageError("say where to: --html FILE or --pdf FILE");
    if (call.has("html") && call.has("pdf")) throw UsageError("one at a time: --html FILE or --pdf FILE");
    const bool pdf = call.has("pdf");
    if (call.has("paper") && !pdf) throw UsageError("--paper goes with --pdf");
    const std::string size = lowered(call.text("paper", "A4"));
    if (size != "a4" && size != "letter")
        throw UsageError("'" + shown(call.text("paper")) + "' is no size of paper; expected A4 or Letter");
    const std::string to = call.text(pdf ? "pdf" : "html");
    if (pdf)
        write_new_file(
            to, pdf_of(html(document, SvgStyle::plain, size == "a4" ? PaperSize::a4 : PaperSize::letter),
                       call.session().environment("PATH")));
    else
        write_new_file(to, html(document));
    return call.tell(PaperWritten{"the page", to});
}

ExitCode tell_page(Call &call, Document document, const std::vector<std::shared_ptr<const CriteriaSet>> &sets,
                   const std::vector<std::string> &signatures) {
    return tell_bare_page(call, on_paper(std::move(document), paper_foot(call.office(), sets), signatures));
}

} // namespace beadbook
