#include "cli/page.hpp"

#include "records/files.hpp"
#include "render/html.hpp"
#include "render/json_standing.hpp"

namespace beadbook {

Option page_option() { return {"html", "FILE", "write a page to print"}; }

ExitCode tell_page(Call &call, const Document &document) {
    write_new_file(call.text("html"), html(document));
    return call.tell(PaperWritten{"the page", call.text("html")});
}

} // namespace beadbook
