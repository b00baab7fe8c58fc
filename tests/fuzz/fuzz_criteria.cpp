// Any bytes as a criteria file: refused with issues or loaded, never a crash.
#include "criteria/load.hpp"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *bytes, std::size_t size) {
    const std::string text(reinterpret_cast<const char *>(bytes), size);
    const auto loaded = beadbook::load_criteria(text);
    for (const auto &issue : loaded.issues) beadbook::print(issue, "f", text);
    return 0;
}
