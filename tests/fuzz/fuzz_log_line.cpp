// Any bytes as a line of a log: refused or read; what was read can be printed and read again.
#include "facts/log_line.hpp"

#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char *bytes, std::size_t size) {
    using namespace beadbook;
    const WeldLine tube{Length{12 * nm_per_inch}, true};
    const std::string_view line(reinterpret_cast<const char *>(bytes), size);
    try {
        const IndicationRecord once = parse_log_line(line, tube, Unit::inch);
        if (!(parse_log_line(print_log_line(once), tube, Unit::inch) == once)) std::abort();
    } catch (const InputError &) {
    } catch (const DataError &) {
    }
    return 0;
}
