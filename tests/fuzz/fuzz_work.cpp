// Any bytes as a work file: refused with issues or loaded, never a crash.
#include "qualify/work.hpp"

#include <string>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *data, std::size_t size) {
    const std::string text(reinterpret_cast<const char *>(data), size);
    static const auto rules = beadbook::shipped_range_rules("asme-ix");
    const auto loaded = beadbook::load_work(text, "asme-ix", [](const std::string &) { return rules; });
    for (const auto &issue : loaded.issues) beadbook::print(issue, "f", text);
    return 0;
}
