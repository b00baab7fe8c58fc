#include "report/bench_document.hpp"

namespace beadbook {

Document document_of(const BenchOpen &bench) {
    if (bench.person.empty())
        return Document{}.line(bench.link).line("tablets sign in there, through nginx. Ctrl-C ends it.");
    return Document{}
        .line(bench.link)
        .line("open this link in a browser of this machine; it lets one browser in, once. " + bench.person +
              " is at the bench until somebody else sits down there. Ctrl-C ends it.");
}

Document document_of(const WayIn &way) {
    return Document{}
        .line(way.origin + "/ is what tablets ask, once nginx runs ('sudo nginx -c " + way.configuration +
              "') and behind it the bench with sign-in for the folder " + way.folder + ".")
        .line((way.new_authority ? "The shop's own authority is new: "
                                 : "The authority is the one of before: ") +
              way.authority +
              ". Each tablet trusts it once: bring that file there and install it as a CA certificate. "
              "Compare its "
              "SHA-256 by 'openssl x509 -noout -fingerprint -sha256 -in " +
              way.authority + "'. Nobody else needs any other file of the folder.")
        .line("The certificate is good for 397 days; the same command makes the next one. "
              "'sudo nginx -c " +
              way.configuration + " -s reload' takes it.");
}

} // namespace beadbook
