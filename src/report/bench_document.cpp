#include "report/bench_document.hpp"

namespace beadbook {

Document document_of(const BenchOpen &bench) {
    return Document{}
        .line(bench.link)
        .line("open this link in a browser of this machine; it lets one browser in, once. " + bench.person +
              " is at the bench until somebody else sits down there. Ctrl-C ends it.");
}

} // namespace beadbook
