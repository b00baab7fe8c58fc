// Any bytes as rules for welders: refused with issues or loaded, never a crash.
#include "qualify/range_rules.hpp"

#include <string>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *data, std::size_t size) {
    const std::string text(reinterpret_cast<const char *>(data), size);
    const auto loaded = beadbook::load_range_rules(text);
    for (const auto &issue : loaded.issues) beadbook::print(issue, "f", text);
    return 0;
}
