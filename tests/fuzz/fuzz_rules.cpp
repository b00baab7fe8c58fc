// Whatever stands in a rules or work file, reading it neither crashes nor throws.
#include "qualify/work.hpp"

#include <string>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *data, std::size_t size) {
    const std::string text(reinterpret_cast<const char *>(data), size);
    beadbook::load_range_rules(text);
    static const auto rules = beadbook::shipped_range_rules("asme-ix");
    beadbook::load_work(text, "asme-ix", [](const std::string &) { return rules; });
    return 0;
}
