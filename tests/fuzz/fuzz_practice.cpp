// Any bytes as a practice for exams: refused with issues or loaded, never a crash.
#include "technique/practice.hpp"

#include <string>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *data, std::size_t size) {
    const std::string text(reinterpret_cast<const char *>(data), size);
    const auto loaded = beadbook::load_practice(text);
    for (const auto &issue : loaded.issues) beadbook::print(issue, "f", text);
    return 0;
}
